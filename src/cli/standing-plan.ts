/**
 * The plan that stands, without compiling anything: beside the results of a compile is kept from which files the plan was made and what
 * there is to say of it. While these files read the same and the plan is the one that was written, nothing else can come of them.
 */
import { isAbsolute, join, relative, resolve } from 'node:path';
import { isoDateOf } from '../basics/calendar-day.ts';
import { type Today, todayIn } from '../basics/today.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { SourceTexts } from '../diagnostics/render.ts';
import type { Plan } from '../plan/plan.ts';
import { fittedPath, loadText, packageFolder, resultFolderName } from './files.ts';
import { areUnchanged, type InputFile, readEntry, writeEntry } from './kept-results.ts';
import type { Product } from './publish.ts';
import type { Told } from './run-messages.ts';
import { textDigest } from './text-digest.ts';
import type { World } from './world.ts';

interface KeptPlan {
  /** The household file first. */
  readonly inputs: readonly InputFile[];
  /** Stands for the bytes of plan.json. */
  readonly plan: string;
  readonly dates: PlanDates;
  readonly diagnostics: readonly Diagnostic[];
  /** The files that messages point into: their names in messages, the absolute paths, and whether those are what is shown. */
  readonly sources: readonly (readonly [label: string, path: string, isShownWhole: boolean])[];
}

/** What tells a clock that was set back. */
type PlanDates = Pick<Plan, 'made' | 'from' | 'timezone'>;

/** A run whose plan stands already. */
export interface StandingRun extends Told {
  /** The bytes of plan.json. */
  readonly planBytes: Uint8Array;
}

/** No name of a household's other entry ends like this. */
const entryOf = (name: string): string => `${name}.standing`;

/** Names the program, where its profiles stand, and the runtime: others may say something else. */
function madeWith(version: string): string {
  return JSON.stringify([version, packageFolder(), process.version, process.versions.tz, process.versions.icu]);
}

/** Of one run alone: the clock that it met, and how it placed the lamps. All else a run says again that finds the plan standing. */
const TOLD_ONCE: readonly string[] = ['clock-set-back', 'assignment-not-proven'];

/**
 * Keeps what a plan was made from, for the next check.
 *
 * @param inputs every file that it read, the household's first
 */
export function keepPlan(
  out: string,
  name: string,
  { content, plan }: { readonly content: Product['content']; readonly plan: PlanDates },
  run: Told,
  inputs: readonly InputFile[],
  world: World,
  version: string,
): void {
  const diagnostics = run.compiled.diagnostics.filter(({ code }) => !TOLD_ONCE.includes(code));
  const named = new Set(diagnostics.map(({ place }) => place?.file));
  const sources = [...run.sources]
    .filter(([label]) => named.has(label))
    .map(([label, { shown }]) => [label, resolve(world.cwd, shown), isAbsolute(shown)] as const);
  const { made, from, timezone } = plan;
  const kept: KeptPlan = { inputs, plan: textDigest(content), dates: { made, from, timezone }, diagnostics, sources };
  writeEntry(out, entryOf(name), madeWith(version), kept, world.disk);
}

/** Returns the plan that stands for a household file and what there is to say of it; null where it must be compiled. */
export function standingRun(
  file: string,
  out: string,
  today: Today,
  world: World,
  version: string,
): StandingRun | null {
  const name = resultFolderName(file);
  const kept = readEntry<KeptPlan>(out, entryOf(name), madeWith(version), world.disk);
  if (!kept || kept.inputs[0]?.[0] !== resolve(world.cwd, file) || !areUnchanged(kept.inputs, world.disk)) return null;
  const planBytes = bytesOf(join(out, name, 'plan.json'), world);
  if (!planBytes || textDigest(planBytes) !== kept.plan || isBefore(kept.dates, today)) return null;
  return { planBytes, compiled: { diagnostics: kept.diagnostics }, sources: sourcesOf(kept, file, world) };
}

function bytesOf(path: string, { disk }: World): Uint8Array | null {
  try {
    return disk.readFileSync(path);
  } catch {
    return null;
  }
}

/** Whether today lies before the day on which a plan was revised: a run then says so. */
function isBefore({ made, from, timezone }: PlanDates, today: Today): boolean {
  return made > from && isoDateOf(todayIn(timezone, today)) < made;
}

/** Shows the household file, and the values fitted to it, by the path that was asked for. */
function sourcesOf({ sources }: KeptPlan, file: string, world: World): SourceTexts {
  const asked = new Map([file, fittedPath(file)].map((path) => [resolve(world.cwd, path), path]));
  return new Map(
    sources.map(([label, path, isShownWhole]) => {
      const loaded = loadText(path, world.disk);
      const shown = asked.get(path) ?? (isShownWhole ? path : relative(world.cwd, path) || path);
      return [label, { shown, text: loaded.ok ? loaded.text : '' }] as const;
    }),
  );
}
