import { nearestSpelling } from '../basics/nearest-spelling.ts';
import { why } from '../emit/text/why.ts';
import { dialChoices } from '../solve/light/dial-choices.ts';
import { runHousehold } from './household-run.ts';
import { type CommonOptions, UsageError } from './program.ts';
import { exitCodeOf, sayDiagnostics } from './run-messages.ts';
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
  if (!answer.found) {
    const nearest = nearestSpelling(what ?? '', answer.askable);
    throw new UsageError(
      `there is nothing called "${what}" to ask about${nearest === null ? '' : `; did you mean ${nearest}?`}\n  ${answer.askable.join('\n  ')}`,
    );
  }
  world.out(options.json ? `${JSON.stringify({ what: what ?? null, text: answer.text })}\n` : answer.text);
  return exitCodeOf(diagnostics, options.strict === true);
}
