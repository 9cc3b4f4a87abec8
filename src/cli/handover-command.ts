/** The sitter's sheet and calendar for given dates, put beside the household's other results. */
import { epochDay } from '../basics/calendar-day.ts';
import { Log } from '../diagnostics/log.ts';
import { emitIcs } from '../emit/ics/ics.ts';
import { handoverPdf } from '../emit/pdf/handover-file.ts';
import { handoverSitter, sitterOn } from '../layout/handover-sitter.ts';
import { eventsWithin } from '../plan/events-within.ts';
import type { Language, Plan } from '../plan/plan.ts';
import { type HouseholdRun, runHousehold } from './household-run.ts';
import { underLock } from './lock.ts';
import { checkNamedDate } from './named-date.ts';
import { fontFiles } from './page-options.ts';
import { guardName, type Product, publish, standingFiles } from './publish.ts';
import { exitCodeOf, sayDiagnostics } from './run-messages.ts';
import { type CommonOptions, UsageError } from './usage.ts';
import { EXIT, type World } from './world.ts';

export interface HandoverOptions extends CommonOptions {
  readonly out: string;
  readonly from: string;
  readonly to: string;
  readonly language?: Language;
  readonly largePrint?: boolean;
  readonly font?: readonly string[];
}

/** A sheet for longer would be out of date before it ends. */
const DAYS_AT_MOST = 92;

/** Writes the sitter's sheet and calendar for given dates. Returns the exit code. */
export async function run(
  args: readonly string[],
  options: HandoverOptions,
  world: World,
  version: string,
): Promise<number> {
  const [file = ''] = args;
  checkDates(options);
  const fonts = fontFiles(options.font ?? [], world);
  const first = runHousehold(file, options, world, version);
  if (!first) return EXIT.unusable;
  const log = new Log();
  const found = first.compiled.plan && withSitter(first.compiled.plan, options, log);
  const household = found || !first.compiled.plan ? first : runAway(file, options, world, version);
  const plan = household?.compiled.plan;
  if (!household || !plan) {
    sayDiagnostics(household ?? first, world);
    return EXIT.unusable;
  }
  const sitter = found ?? sitterOn(plan, options.from, options.to) ?? 'sitter';
  const products = await productsOf(plan, sitter, options, fonts, log);
  const published = await put(household, products, options, world);
  const said = log.sorted();
  sayDiagnostics(withDiagnostics(household, said), world);
  world.out(
    options.json
      ? `${JSON.stringify({ folder: published.folder, sitter, files: products.map(({ path }) => path) })}\n`
      : products.map(({ path }) => `${published.folder}/${path}\n`).join(''),
  );
  return exitCodeOf([...blocking(household), ...said], options.strict === true);
}

function checkDates({ from, to }: HandoverOptions): void {
  checkNamedDate('--from', from);
  checkNamedDate('--to', to);
  if (to < from) throw new UsageError(`--to ${to} lies before --from ${from}`);
  const days = epochDay(to) - epochDay(from) + 1;
  if (days > DAYS_AT_MOST)
    throw new UsageError(
      `${from} to ${to} are ${days} days; a sheet is made for at most ${DAYS_AT_MOST}, so make several`,
    );
}

/** Returns the sitter of an absence of the file that holds the dates; where there is none, says so. */
function withSitter(plan: Plan, { from, to }: HandoverOptions, log: Log): string | null {
  if (from < plan.from || to > plan.to)
    throw new UsageError(`${from} to ${to} lies outside the plan (${plan.from} to ${plan.to})`);
  return handoverSitter(plan, from, to, log);
}

/** The household as it would be with an absence on these dates; nothing of it is written but the sheet. */
function runAway(file: string, options: HandoverOptions, world: World, version: string): HouseholdRun | null {
  return runHousehold(file, { ...options, absence: { from: options.from, to: options.to } }, world, version);
}

async function productsOf(
  plan: Plan,
  sitter: string,
  { from, to, largePrint }: HandoverOptions,
  fonts: readonly Uint8Array[],
  log: Log,
): Promise<readonly Product[]> {
  const wish = { sitter, from, to, largePrint: largePrint === true };
  const events = eventsWithin(plan.events, sitter, from, to);
  return [
    { path: `handover/${from}-${to}.pdf`, content: await handoverPdf(plan, wish, fonts, log) },
    { path: `handover/${from}-${to}.ics`, content: emitIcs({ ...plan, events }, sitter, 'subscribe') },
  ];
}

/** Puts the files beside all that stands there; one of the same dates is replaced. */
function put(household: HouseholdRun, products: readonly Product[], options: HandoverOptions, world: World) {
  guardName(household.name);
  const fresh = new Set(products.map(({ path }) => path));
  return underLock(options.out, household.name, world, async () => {
    const kept = standingFiles(options.out, household.name, world.disk).filter(({ path }) => !fresh.has(path));
    return publish(options.out, household.name, [...kept, ...products], world.disk);
  });
}

function withDiagnostics(household: HouseholdRun, said: HouseholdRun['compiled']['diagnostics']): HouseholdRun {
  return { ...household, compiled: { ...household.compiled, diagnostics: [...blocking(household), ...said] } };
}

function blocking({ compiled }: HouseholdRun): HouseholdRun['compiled']['diagnostics'] {
  return compiled.diagnostics.filter(({ weight }) => weight === 'error' || weight === 'refusal');
}
