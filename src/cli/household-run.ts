import { basename, join, relative } from 'node:path';
import type { IsoDate } from '../basics/civil.ts';
import { type Compiled, compile } from '../compile.ts';
import type { SourceTexts } from '../diagnostics/render.ts';
import type { Language, Plan } from '../plan/plan.ts';
import { readPlan } from '../plan/read-plan.ts';
import { foreignWords } from '../replan/foreign-plan.ts';
import { fittedPath, isProfilePath, loadText, profilePath, resultFolderName, shippedProfiles } from './files.ts';
import { CannotWrite } from './publish.ts';
import { textDigest } from './text-digest.ts';
import { todayOf } from './today-option.ts';
import type { CommonOptions } from './usage.ts';
import type { World } from './world.ts';

export interface HouseholdRun {
  readonly compiled: Compiled;
  readonly earlier: Plan | null;
  /** Stands for the bytes of the earlier plan's file; null where there is none. */
  readonly earlierDigest: string | null;
  /** Name of the household's folder of results. */
  readonly name: string;
  /** Texts and shown paths of every file that a message may point into. */
  readonly sources: SourceTexts;
}

export interface RunOptions {
  readonly out?: string;
  readonly isWriting?: boolean;
  /** False leaves out the values that were fitted to gauge logs. */
  readonly withFitted?: boolean;
  /** Instead of the file's. */
  readonly language?: Language;
  /** An absence that the file does not have. */
  readonly absence?: { readonly from: IsoDate; readonly to: IsoDate };
}

/** Reads and compiles one household file; what cannot be opened is a message like any other. */
export function runHousehold(
  file: string,
  options: CommonOptions & RunOptions,
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
  const fitted = fittedValues(file, options.withFitted ?? true, world);
  if (fitted === 'unreadable') return null;
  if (fitted) sources.set(fitted.file, { shown: fittedPath(file), text: fitted.text });
  const name = resultFolderName(file);
  const { plan, digest, fault } = earlierPlan(options.out ?? 'out', name, world);
  const leaveAlone = (what: string): void => {
    if (options.isWriting) throw new CannotWrite(`${what}; move it away, then run this again`);
    world.say(`dewdial: ${what}; it is left alone and not used\n`);
  };
  if (fault !== null) leaveAlone(fault);
  const compiledFrom = (earlier: Plan | null): Compiled =>
    compile({
      file: label,
      text: loaded.text,
      profile,
      profileIds: shippedProfiles(world.disk),
      fitted,
      earlier,
      today: todayOf(options.today, world),
      version,
      ...(options.language === undefined ? {} : { language: options.language }),
      ...(options.absence === undefined ? {} : { absence: options.absence }),
    });
  const compiled = compiledFrom(plan);
  const foreign = plan && compiled.care && foreignWords(plan, compiled.care);
  if (!foreign) return { compiled, earlier: plan, earlierDigest: digest, name, sources };
  leaveAlone(`${join(options.out ?? 'out', name, 'plan.json')} ${foreign}`);
  return { compiled: compiledFrom(null), earlier: null, earlierDigest: digest, name, sources };
}

/** Returns the fitted values beside a household file, null where there are none; what cannot be read is said. */
function fittedValues(
  file: string,
  isWanted: boolean,
  world: World,
): { readonly file: string; readonly text: string } | null | 'unreadable' {
  const path = fittedPath(file);
  if (!isWanted) return null;
  const loaded = loadText(path, world.disk);
  if (loaded.ok) return { file: basename(path), text: loaded.text };
  if (loaded.isMissing) return null;
  world.say(`dewdial: cannot read ${path}: ${loaded.reason}\n`);
  return 'unreadable';
}

interface Earlier {
  readonly plan: Plan | null;
  readonly digest: string | null;
  /** What is wrong with the file that stands where the plan should be; null where nothing is. */
  readonly fault: string | null;
}

function earlierPlan(out: string, name: string, world: World): Earlier {
  const path = join(out, name, 'plan.json');
  const loaded = loadText(path, world.disk);
  if (!loaded.ok) {
    const fault = `${path} stands where the earlier plan should be, and cannot be read: ${loaded.reason}`;
    return { plan: null, digest: null, fault: loaded.isMissing ? null : fault };
  }
  const read = readPlan(loaded.text);
  const digest = textDigest(loaded.text);
  if (read.ok) return { plan: read.plan, digest, fault: null };
  return { plan: null, digest, fault: `${path} stands where the earlier plan should be, but ${read.reason}` };
}

/** Returns what stands for the bytes of the plan that stands now; null where there is none. */
export function earlierDigest(out: string, name: string, world: World): string | null {
  const loaded = loadText(join(out, name, 'plan.json'), world.disk);
  return loaded.ok ? textDigest(loaded.text) : null;
}
