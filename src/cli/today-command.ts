import { epochDay, isoDateOf } from '../basics/calendar-day.ts';
import { todayIn } from '../basics/today.ts';
import { utcOffsetMinutes } from '../basics/zone.ts';
import { todayJson } from '../emit/json/today-json.ts';
import { todayText } from '../emit/text/today.ts';
import { datesFrom, dayView } from '../plan/day-view.ts';
import type { Plan } from '../plan/plan.ts';
import { readPlan } from '../plan/read-plan.ts';
import { checkNamedDate } from './named-date.ts';
import { exitCodeOf, sayDiagnostics, type Told } from './run-messages.ts';
import { standingRun } from './standing-plan.ts';
import { todayOf } from './today-option.ts';
import { type CommonOptions, UsageError } from './usage.ts';
import { EXIT, showsUnicode, type World } from './world.ts';

export interface TodayOptions extends CommonOptions {
  readonly out: string;
  readonly on?: string;
  readonly days: string;
  readonly for?: string;
}

const DAYS_AT_MOST = 31;

/** Prints what the machines and people do on a day. Returns the exit code. */
export async function run(
  args: readonly string[],
  options: TodayOptions,
  world: World,
  version: string,
): Promise<number> {
  const [file = ''] = args;
  const days = Number(options.days);
  if (!Number.isInteger(days) || days < 1 || days > DAYS_AT_MOST)
    throw new UsageError(`--days ${options.days}: a whole number from 1 to ${DAYS_AT_MOST}`);
  if (options.on !== undefined) checkNamedDate('--on', options.on);
  const run = await planned(file, options, world, version);
  if (!run) return EXIT.unusable;
  const { plan } = run;
  const { diagnostics } = run.compiled;
  if (!plan) {
    sayDiagnostics(run, world);
    return EXIT.unusable;
  }
  sayDiagnostics(run, world, ({ weight }) => weight === 'error' || weight === 'refusal');
  const today = isoDateOf(todayIn(plan.timezone, todayOf(options.today, world)));
  const first = options.on ?? today;
  if (first < plan.from || first > plan.to)
    world.say(`dewdial: ${first} lies outside the plan (${plan.from} to ${plan.to}); ${outsideWords(first, plan)}\n`);
  if (first > plan.to) return EXIT.unusable;
  const person = personOf(options.for, plan);
  const views = datesFrom(first, days).map((date) =>
    dayView(plan, date, nowMinuteOf(plan, date, today, options, world), person),
  );
  world.out(
    options.json
      ? todayJson(views)
      : todayText(views, {
          unicode: showsUnicode(world),
          language: plan.language,
          units: plan.units,
          contacts: plan.contacts,
        }),
  );
  return exitCodeOf(diagnostics, options.strict === true);
}

/** The plan that stands where nothing has changed, else made anew; null where the file cannot be read, which has been said. */
async function planned(
  file: string,
  options: TodayOptions,
  world: World,
  version: string,
): Promise<(Told & { readonly plan: Plan | null }) | null> {
  const standing = standingRun(file, options.out, todayOf(options.today, world), world, version);
  const read = standing && readPlan(new TextDecoder().decode(standing.planBytes));
  if (standing && read?.ok) return { ...standing, plan: read.plan };
  const { runHousehold } = await import('./household-run.ts');
  const run = runHousehold(file, options, world, version);
  return run && { ...run, plan: run.compiled.plan };
}

/** A plan that is over says nothing of a day; the timers go on as they stand. */
function outsideWords(date: string, plan: Plan): string {
  return date > plan.to
    ? 'the timers go on as they stand: write more days or a later from in the file, and compile'
    : 'nothing is planned yet';
}

function personOf(id: string | undefined, plan: Plan): string | null {
  if (id === undefined) return null;
  const known = plan.people.map((person) => person.id);
  if (!known.includes(id)) throw new UsageError(`--for ${id}: the file's people are ${known.join(', ') || 'none'}`);
  return id;
}

/** The wall minute now, where the date is today and the clock was asked rather than told. */
function nowMinuteOf(plan: Plan, date: string, today: string, options: TodayOptions, world: World): number | null {
  if (date !== today || options.today !== undefined) return null;
  const nowMs = world.nowMs();
  const localMinutes = Math.floor(nowMs / 60_000) + utcOffsetMinutes(plan.timezone, nowMs);
  return localMinutes - epochDay(date) * 1440;
}
