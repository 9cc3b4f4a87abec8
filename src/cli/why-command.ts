import { nearestSpelling } from '../basics/nearest-spelling.ts';
import { why } from '../emit/text/why.ts';
import type { Care } from '../resolve/care.ts';
import { dialChoices } from '../solve/light/dial-choices.ts';
import { runHousehold } from './household-run.ts';
import { exitCodeOf, sayDiagnostics } from './run-messages.ts';
import { type CommonOptions, UsageError } from './usage.ts';
import { EXIT, type World } from './world.ts';

/** Prints why a value of the plan is what it is. Returns the exit code. */
export async function run(
  args: readonly string[],
  options: CommonOptions & { readonly out: string },
  world: World,
  version: string,
): Promise<number> {
  const [file = '', what] = args;
  const run = runHousehold(file, options, world, version);
  if (!run) return EXIT.unusable;
  const { plan, care, diagnostics } = run.compiled;
  if (!plan) {
    sayDiagnostics(run, world);
    return EXIT.unusable;
  }
  const answer = why(plan, what ?? null, (device) => (care ? dialChoices(care, plan, device) : []));
  const live = answer.found ? undefined : liveLamp(care, what ?? '');
  if (live !== undefined) {
    const text = `${what} hangs on a live socket${live}: no timer switches it, and there is no setting to explain\n`;
    world.out(options.json ? `${JSON.stringify({ what, text })}\n` : text);
    return exitCodeOf(diagnostics, options.strict === true);
  }
  if (!answer.found) {
    const nearest = nearestSpelling(what ?? '', answer.askable);
    throw new UsageError(
      `there is nothing called "${what}" to ask about${nearest === null ? '' : `; did you mean ${nearest}?`}\n  ${answer.askable.join('\n  ')}`,
    );
  }
  world.out(options.json ? `${JSON.stringify({ what: what ?? null, text: answer.text })}\n` : answer.text);
  return exitCodeOf(diagnostics, options.strict === true);
}

/** What regulates a lamp or heater that no timer switches; undefined where there is none of that name. */
function liveLamp(care: Care | null, what: string): string | undefined {
  const lamp = care?.enclosures
    .flatMap(({ id, lamps }) => lamps.map((each) => ({ ...each, name: `${id}/${each.id}` })))
    .find(({ name, outlet }) => name === what && outlet === 'always');
  return lamp && (lamp.thermostat === 'none' ? '' : ' behind its thermostat');
}
