import { isoDateOf, parseIsoDate } from '../basics/calendar-day.ts';
import { todayIn } from '../basics/today.ts';
import { changesText } from '../emit/text/changes.ts';
import { changeSheet } from '../plan/change-sheet.ts';
import type { Plan } from '../plan/plan.ts';
import { exitCodeOf, runHousehold, sayDiagnostics, todayOf } from './household-run.ts';
import { type CommonOptions, UsageError } from './program.ts';
import { EXIT, type World } from './world.ts';

export interface ChangesOptions extends CommonOptions {
  readonly out: string;
  readonly since?: string;
}

export async function run(
  args: readonly string[],
  options: ChangesOptions,
  world: World,
  version: string,
): Promise<number> {
  const [file = ''] = args;
  if (options.since !== undefined && parseIsoDate(options.since) === null)
    throw new UsageError(`--since ${options.since}: dates are written YYYY-MM-DD, for instance 2027-01-31`);
  const run = runHousehold(file, options, world, version);
  if (!run) return EXIT.unusable;
  const { plan, diagnostics } = run.compiled;
  sayDiagnostics(run, world, ({ weight }) => weight === 'error' || weight === 'refusal');
  if (!plan) return EXIT.unusable;
  const before =
    options.since === undefined ? comparedWith(plan, run.earlier) : revisionOf(plan, run.earlier, options.since);
  const on = clamped(isoDateOf(todayIn(plan.timezone, todayOf(options.today, world))), plan);
  world.out(
    options.json ? `${JSON.stringify(changeSheet(before, plan, on), null, 2)}\n` : changesText(plan, before, on),
  );
  return exitCodeOf(diagnostics, options.strict === true);
}

/** The plan that stands in the folder; where this plan is that one, the revision before it. */
function comparedWith(plan: Plan, earlier: Plan | null): Plan | null {
  return earlier && earlier.revision !== plan.revision && earlier.made < plan.made ? earlier : plan.previous;
}

/** The newest revision made on or before a date. */
function revisionOf(plan: Plan, earlier: Plan | null, since: string): Plan | null {
  const kept = [earlier, plan.previous, earlier?.previous ?? null].flatMap((each) =>
    each === null || each === plan ? [] : [each],
  );
  const found = kept.filter(({ made }) => made <= since).sort((a, b) => (a.made < b.made ? 1 : -1))[0];
  if (found) return found;
  throw new UsageError(
    `no revision made by ${since} is kept${kept.length === 0 ? '' : `; there are those of ${[...new Set(kept.map(({ made }) => made))].sort().join(', ')}`}`,
  );
}

function clamped(date: string, plan: Plan): string {
  return date < plan.from ? plan.from : date > plan.to ? plan.to : date;
}
