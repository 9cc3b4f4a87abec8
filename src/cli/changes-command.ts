import { changesText } from '../emit/text/changes.ts';
import { sheetDate } from '../emit/text/settings-section.ts';
import { changeSheet } from '../plan/change-sheet.ts';
import { revisionsOf } from '../plan/kept-revisions.ts';
import type { Plan } from '../plan/plan.ts';
import { runHousehold } from './household-run.ts';
import { checkNamedDate } from './named-date.ts';
import { exitCodeOf, sayDiagnostics } from './run-messages.ts';
import { type CommonOptions, UsageError } from './usage.ts';
import { EXIT, type World } from './world.ts';

export interface ChangesOptions extends CommonOptions {
  readonly out: string;
  readonly since?: string;
}

/** Prints what has changed since an earlier plan. Returns the exit code. */
export async function run(
  args: readonly string[],
  options: ChangesOptions,
  world: World,
  version: string,
): Promise<number> {
  const [file = ''] = args;
  if (options.since !== undefined) checkNamedDate('--since', options.since);
  const run = runHousehold(file, options, world, version);
  if (!run) return EXIT.unusable;
  const { plan, diagnostics } = run.compiled;
  sayDiagnostics(run, world, ({ weight }) => weight === 'error' || weight === 'refusal');
  if (!plan) return EXIT.unusable;
  const before = options.since === undefined ? plan.previous : revisionMadeBy(plan, options.since);
  const on = sheetDate(plan);
  world.out(
    options.json ? `${JSON.stringify(changeSheet(before, plan, on), null, 2)}\n` : changesText(plan, before, on),
  );
  return exitCodeOf(diagnostics, options.strict === true);
}

/** The newest revision made on or before a date. */
function revisionMadeBy(plan: Plan, since: string): Plan {
  const kept = revisionsOf(plan);
  const found = kept.find(({ made }) => made <= since);
  if (found) return found;
  const dates = [...new Set(kept.map(({ made }) => made))].sort().join(', ');
  throw new UsageError(
    `no revision made by ${since} is kept${kept.length === 0 ? '' : `; there are those of ${dates}`}`,
  );
}
