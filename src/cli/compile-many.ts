/** Compiles many households: what is kept from the last run at once, the rest on all cores; told in the order of the files. */
import { join, relative } from 'node:path';
import type { SourceTexts } from '../diagnostics/render.ts';
import { loadText, resultFolderName } from './files.ts';
import { householdFiles, type NamedFile, partOf } from './household-files.ts';
import { type HouseholdJob, type JobReport, saidOf } from './household-job.ts';
import type { HouseholdOptions } from './household-options.ts';
import { type KeptResults, keptResults, madeWith } from './kept-results.ts';
import { ManyTeller } from './many-teller.ts';
import { checkPageOptions } from './page-options.ts';
import { Progress } from './progress.ts';
import { guardName } from './publish.ts';
import { exitCodeOf, usesColour } from './run-messages.ts';
import { todayOf } from './today-option.ts';
import { UsageError } from './usage.ts';
import { type JobRunner, workerPool } from './worker-pool.ts';
import { EXIT, type World } from './world.ts';

export interface ManyOptions extends HouseholdOptions {
  readonly part?: string;
  readonly jobs?: string;
}

export type StartPool = (jobs: number | null, work: number) => Promise<JobRunner>;

/** Returns the worst exit code of all files. Problems of one never stop another. */
export async function compileMany(
  args: readonly string[],
  options: ManyOptions,
  world: World,
  version: string,
  startPool: StartPool = workerPool,
): Promise<number> {
  todayOf(options.today, world);
  checkPageOptions(options);
  const jobs = jobsOf(options.jobs);
  const files = partOf(householdFiles(args, world), options.part);
  const left: { readonly index: number; readonly job: HouseholdJob; readonly work: number }[] = [];
  const teller = new ManyTeller(files.length, options.json === true, world);
  for (const [index, named] of files.entries()) {
    const job = jobOf(named.file, options, world, version);
    const report = refusedReport(named) ?? keptReport(job, world);
    if (report) teller.tell(index, report);
    else left.push({ index, job, work: sizeOf(named.file, world) });
  }
  if (left.length > 0) await compileLeft(left, jobs, teller, world, startPool);
  return teller.end();
}

type Left = readonly { readonly index: number; readonly job: HouseholdJob; readonly work: number }[];

/** The longest first, so that no core is left with a long one at the end. */
async function compileLeft(left: Left, jobs: number | null, teller: ManyTeller, world: World, startPool: StartPool) {
  const progress = new Progress(
    world,
    left.length,
    left.reduce((sum, { work }) => sum + work, 0),
  );
  teller.beforeSaying = () => progress.clear();
  const pool = await startPool(jobs, left.length);
  try {
    const longestFirst = [...left].sort((a, b) => b.work - a.work || a.index - b.index);
    await Promise.all(
      longestFirst.map(async ({ index, job, work }) => {
        const report = await pool.run(job).catch((error: unknown) => lostReport(job, error));
        teller.tell(index, report);
        progress.done(work);
      }),
    );
    progress.clear();
  } finally {
    await pool.end();
  }
}

function jobsOf(text: string | undefined): number | null {
  if (text === undefined) return null;
  if (!/^[1-9]\d{0,2}$/.test(text)) throw new UsageError(`--jobs ${text}: a whole number from 1 to 999`);
  return Number(text);
}

function jobOf(file: string, wishes: ManyOptions, world: World, version: string): HouseholdJob {
  const { part: _part, jobs: _jobs, ...options } = wishes;
  return { file, options, colour: usesColour(world), columns: world.columns, version };
}

function sizeOf(file: string, world: World): number {
  try {
    return world.disk.statSync(file).size;
  } catch {
    return 0;
  }
}

const NOTHING = { folder: null, files: [], enclosures: 0, diagnostics: [] } as const;

function refusedReport({ file, refused }: NamedFile): JobReport | null {
  if (refused === null) return null;
  return { ...NOTHING, file, end: 'refused', exit: EXIT.usage, said: `dewdial: ${file}: ${refused}\n` };
}

/** A worker that was lost, for instance for want of memory. */
function lostReport({ file, options }: HouseholdJob, error: unknown): JobReport {
  const why = error instanceof Error ? ((options.debug ? error.stack : undefined) ?? error.message) : String(error);
  const said = `dewdial: ${file}: a fault of this program, not of your file: ${why}\n  compile it alone with --debug for details, and report them\n`;
  return { ...NOTHING, file, end: 'fault', exit: EXIT.fault, said };
}

function keptReport(job: HouseholdJob, world: World): JobReport | null {
  const { file, version } = job;
  const { out, strict } = job.options;
  const name = resultFolderName(file);
  try {
    guardName(name);
  } catch {
    return null;
  }
  const kept = keptResults(out, name, file, madeWith(version, job.options), world);
  if (!kept) return null;
  return {
    file,
    end: 'kept',
    exit: exitCodeOf(kept.diagnostics, strict === true),
    folder: join(out, name),
    files: kept.products,
    enclosures: kept.enclosures,
    diagnostics: kept.diagnostics,
    said: saidOf(kept.diagnostics, sourcesOf(kept, job, world), job),
  };
}

function sourcesOf({ sources }: KeptResults, { file }: HouseholdJob, world: World): SourceTexts {
  return new Map(
    sources.map(([label, path, isShownWhole], index) => {
      const loaded = loadText(path, world.disk);
      const shown = index === 0 ? file : isShownWhole ? path : relative(world.cwd, path) || path;
      return [label, { shown, text: loaded.ok ? loaded.text : '' }] as const;
    }),
  );
}
