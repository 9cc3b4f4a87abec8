/** Fits the air model to a gauge log and keeps what it finds beside the household file; or takes it away again. */
import { basename } from 'node:path';
import { nearestSpelling } from '../basics/nearest-spelling.ts';
import { todayIn } from '../basics/today.ts';
import type { UtcOffsets } from '../basics/utc-offsets.ts';
import { zoneOffsets } from '../basics/zone.ts';
import { Log } from '../diagnostics/log.ts';
import { renderText } from '../diagnostics/render.ts';
import { paintSvg } from '../emit/paint-svg.ts';
import { type EnclosureFit, fitEnclosure } from '../fit/fit-enclosure.ts';
import { fitPicture } from '../fit/fit-picture.ts';
import { type FitOutcome, fitData, fitReport } from '../fit/fit-report.ts';
import { fittedEntry } from '../fit/fitted-text.ts';
import { UNTESTED } from '../fit/gauge.ts';
import { readReadings } from '../fit/read-readings.ts';
import type { Readings } from '../fit/readings.ts';
import { shapeDigest } from '../resolve/fitted-of.ts';
import { fittedPath } from './files.ts';
import { type FitOptions, gaugeCorrection, logForm } from './fit-options.ts';
import { changeFitted, removeFitted } from './fitted-file.ts';
import { type HouseholdRun, runHousehold } from './household-run.ts';
import { underLock } from './lock.ts';
import { guardName, publish, standingFiles } from './publish.ts';
import { type LoadedLog, loadLog } from './readings-file.ts';
import { exitCodeOf, sayDiagnostics, usesColour } from './run-messages.ts';
import { todayOf } from './today-option.ts';
import { UsageError } from './usage.ts';
import { EXIT, type World } from './world.ts';
import { writeWhole } from './write-whole.ts';

/** Fits the air of an enclosure to gauge logs. Returns the exit code. */
export async function run(
  args: readonly string[],
  options: FitOptions,
  world: World,
  version: string,
): Promise<number> {
  const [file = '', readings] = args;
  if (options.remove !== undefined) return removeFitted(file, options.remove, options, world);
  if (readings === undefined)
    throw new UsageError(`fit ${file}: name the log of the gauge too, for instance dewdial fit ${file} readings.csv`);
  const form = logForm(options);
  const gauge = options.salt === undefined ? UNTESTED : gaugeCorrection(options.salt, options.saltAt);
  const household = runHousehold(file, { ...options, withFitted: false }, world, version);
  if (!household) return EXIT.unusable;
  const { plan, care } = household.compiled;
  if (!plan || !care) {
    sayDiagnostics(household, world);
    return EXIT.unusable;
  }
  const loaded = loadLog(readings, world.disk);
  if (!loaded.ok) {
    world.say(`dewdial: cannot read ${readings}: ${loaded.reason}\n`);
    return EXIT.unusable;
  }
  const enclosure = care.enclosures.find(({ id }) => id === enclosureId(household, options));
  if (!enclosure) return EXIT.usage;
  const offsets = zoneOffsets(care.site.timezone, care.plan.from, care.plan.days);
  const log = new Log();
  const today = todayIn(care.site.timezone, todayOf(options.today, world));
  const read = readReadings(basename(readings), loaded.text, form, offsets, today + 1, log);
  const fitted = read && fitEnclosure({ care, plan, enclosure, offsets, gauge }, read, log);
  sayLog(household, read, { shown: readings, text: loaded.text }, log, world);
  if (!fitted) return EXIT.unusable;
  const outcome = await keep(household, file, readings, loaded, fitted, offsets, options, world);
  world.out(
    options.json
      ? `${JSON.stringify(fitData(fitted, gauge, offsets, outcome))}\n`
      : fitReport(fitted, gauge, offsets, care.language, outcome),
  );
  return exitCodeOf(log.sorted(), options.strict === true);
}

/** Returns the enclosure that is asked for, or the only one. */
function enclosureId({ compiled }: HouseholdRun, { enclosure }: FitOptions): string {
  const ids = (compiled.care?.enclosures ?? []).map(({ id }) => id);
  const [only, other] = ids;
  if (enclosure === undefined && only !== undefined && other === undefined) return only;
  if (enclosure === undefined)
    throw new UsageError(
      `the household has several enclosures; say which the gauge stands in: --enclosure ${ids.join(' | ')}`,
    );
  if (ids.includes(enclosure)) return enclosure;
  const nearest = nearestSpelling(enclosure, ids);
  throw new UsageError(
    `there is no enclosure called "${enclosure}"${nearest === null ? '' : `; did you mean ${nearest}?`}\n  ${ids.join('\n  ')}`,
  );
}

function sayLog(
  household: HouseholdRun,
  read: Readings | null,
  source: { readonly shown: string; readonly text: string },
  log: Log,
  world: World,
): void {
  const diagnostics = log.sorted();
  if (diagnostics.length === 0) return;
  const sources = new Map([...household.sources, [read?.file ?? basename(source.shown), source]]);
  world.say(renderText(diagnostics, sources, { colour: usesColour(world), columns: world.columns }));
}

/** Writes the fitted values and the picture; under `--dry` the picture alone, where it is asked for. */
async function keep(
  household: HouseholdRun,
  file: string,
  readings: string,
  loaded: LoadedLog,
  fitted: EnclosureFit,
  offsets: UtcOffsets,
  options: FitOptions,
  world: World,
): Promise<FitOutcome> {
  const { id } = fitted.enclosure;
  const language = household.compiled.care?.language ?? 'en';
  const svg = paintSvg(fitPicture(fitted, offsets, language));
  const said = household.compiled.household?.tree.enclosures.find((each) => each.id === id);
  if (options.picture !== undefined) writeWhole(options.picture, svg, world.disk);
  if (options.dry || !said) return { household: file, fittedFile: null, picture: options.picture ?? null };
  const entry = fittedEntry(fitted, { file: basename(readings), digest: loaded.digest }, shapeDigest(said), offsets);
  guardName(household.name);
  const picture = await underLock(options.out, household.name, world, async () => {
    changeFitted(file, (standing) => ({ ...standing, [id]: entry }), world);
    if (options.picture !== undefined) return options.picture;
    const path = `fit/${id}.svg`;
    const kept = standingFiles(options.out, household.name, world.disk).filter((each) => each.path !== path);
    const { folder } = publish(options.out, household.name, [...kept, { path, content: svg }], world.disk);
    return `${folder}/${path}`;
  });
  return { household: file, fittedFile: fittedPath(file), picture };
}
