import { basename, join, relative } from 'node:path';
import { parseIsoDate } from '../basics/calendar-day.ts';
import type { Today } from '../basics/today.ts';
import { type Compiled, compile } from '../compile.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { renderText, type SourceTexts } from '../diagnostics/render.ts';
import type { Plan } from '../plan/plan.ts';
import { readPlan } from '../plan/read-plan.ts';
import { isProfilePath, loadText, profilePath, resultFolderName, shippedProfiles } from './files.ts';
import { type CommonOptions, UsageError } from './program.ts';
import { CannotWrite } from './publish.ts';
import { EXIT, type World } from './world.ts';

export interface HouseholdRun {
  readonly compiled: Compiled;
  readonly earlier: Plan | null;
  /** Name of the household's folder of results. */
  readonly name: string;
  /** Texts and shown paths of every file that a message may point into. */
  readonly sources: SourceTexts;
}

/** Reads and compiles one household file; what cannot be opened is a message like any other. */
export function runHousehold(
  file: string,
  options: CommonOptions & { readonly out?: string; readonly isWriting?: boolean },
  world: World,
  version: string,
): HouseholdRun | null {
  const loaded = loadText(file, world.disk);
  if (!loaded.ok) {
    world.say(`dewdial: cannot read ${file}: ${loaded.reason}\n`);
    return null;
  }
  const label = basename(file);
  const sources = new Map([[label, { shown: file, text: loaded.text }]]);
  const profile = (idOrPath: string): { file: string; text: string } | null => {
    const path = profilePath(idOrPath, file);
    const text = loadText(path, world.disk);
    if (!text.ok) return null;
    const name = isProfilePath(idOrPath) ? idOrPath : `profiles/${idOrPath}.yaml`;
    sources.set(name, { shown: isProfilePath(idOrPath) ? path : relative(world.cwd, path) || path, text: text.text });
    return { file: name, text: text.text };
  };
  const name = resultFolderName(file);
  const { plan: earlier, fault } = earlierPlan(options.out ?? 'out', name, world);
  if (fault !== null && options.isWriting) throw new CannotWrite(`${fault}; move it away, then run this again`);
  if (fault !== null) world.say(`dewdial: ${fault}; it is left alone and not used\n`);
  const compiled = compile({
    file: label,
    text: loaded.text,
    profile,
    profileIds: shippedProfiles(world.disk),
    earlier,
    today: todayOf(options.today, world),
    version,
  });
  return { compiled, earlier, name, sources };
}

interface Earlier {
  readonly plan: Plan | null;
  /** What is wrong with the file that stands where the plan should be; null where nothing is. */
  readonly fault: string | null;
}

function earlierPlan(out: string, name: string, world: World): Earlier {
  const path = join(out, name, 'plan.json');
  const loaded = loadText(path, world.disk);
  if (!loaded.ok) return { plan: null, fault: null };
  const read = readPlan(loaded.text);
  if (read.ok) return { plan: read.plan, fault: null };
  return { plan: null, fault: `${path} stands where the earlier plan should be, but ${read.reason}` };
}

/** Returns the day to take as today; throws UsageError where the text is no date. */
export function todayOf(text: string | undefined, world: World): Today {
  if (text === undefined) return { nowMs: world.nowMs() };
  if (parseIsoDate(text) === null)
    throw new UsageError(`--today ${text}: dates are written YYYY-MM-DD, for instance 2027-01-31`);
  return { date: text };
}

/** Says every message on standard error. */
export function sayDiagnostics(run: HouseholdRun, world: World, wanted: (d: Diagnostic) => boolean = () => true): void {
  const shown = run.compiled.diagnostics.filter(wanted);
  if (shown.length > 0)
    world.say(renderText(shown, run.sources, { colour: usesColour(world), columns: world.columns }));
}

export function usesColour(world: World): boolean {
  return world.isSayTerminal && !world.env.NO_COLOR;
}

/** Returns the exit code that the messages ask for. */
export function exitCodeOf(diagnostics: readonly Diagnostic[], strict: boolean): number {
  if (diagnostics.some(({ weight }) => weight === 'error' || weight === 'refusal')) return EXIT.unusable;
  return strict && diagnostics.some(({ weight }) => weight === 'warning') ? EXIT.strictWarnings : EXIT.done;
}
