/** One household of many: compiled, put in place and kept; everything that there is to tell comes back as plain data. */
import { isAbsolute, resolve } from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { renderText } from '../diagnostics/render.ts';
import { explainFault } from './faults.ts';
import { resultFolderName } from './files.ts';
import { compileHousehold } from './household-compile.ts';
import type { HouseholdOptions } from './household-options.ts';
import { keepResults, madeWith, notingDisk } from './kept-results.ts';
import { exitCodeOf } from './run-messages.ts';
import { EXIT, type World } from './world.ts';

export interface HouseholdJob {
  readonly file: string;
  readonly options: HouseholdOptions;
  readonly colour: boolean;
  readonly columns: number;
  readonly version: string;
}

/** kept: nothing had changed since the last run; refused: it was never begun. */
export type JobEnd = 'written' | 'unchanged' | 'kept' | 'refused' | 'not usable' | 'not written' | 'fault';

export interface JobReport {
  readonly file: string;
  readonly end: JobEnd;
  readonly exit: number;
  readonly folder: string | null;
  readonly files: readonly string[];
  readonly enclosures: number;
  readonly diagnostics: readonly Diagnostic[];
  /** For standard error. */
  readonly said: string;
}

/** Compiles one household; never throws. */
export async function runJob(job: HouseholdJob, world: World): Promise<JobReport> {
  const { file, options, version } = job;
  const heard: string[] = [];
  const { disk, inputs } = notingDisk(world, options.out, resultFolderName(file));
  const own: World = { ...world, disk, say: (text) => void heard.push(text) };
  const nothing = { file, folder: null, files: [], enclosures: 0, diagnostics: [] };
  try {
    const compiled = await compileHousehold(file, options, own, version);
    if (!compiled) return { ...nothing, end: 'not usable', exit: EXIT.unusable, said: heard.join('') };
    const { run, written } = compiled;
    const { diagnostics } = run.compiled;
    const said = `${heard.join('')}${saidOf(diagnostics, run.sources, job)}`;
    const exit = exitCodeOf(diagnostics, options.strict === true);
    if (!written) return { ...nothing, end: 'not usable', exit: EXIT.unusable, diagnostics, said };
    const products = written.products.map(({ path }) => path);
    const { plan, published } = written;
    const sources = [...run.sources].map(
      ([label, { shown }]) => [label, resolve(world.cwd, shown), isAbsolute(shown)] as const,
    );
    const kept = { inputs: inputs(), diagnostics, sources, products, enclosures: plan.enclosures.length };
    // What is said of a clock is said of this run alone.
    if (!diagnostics.some(({ code }) => code === 'clock-set-back'))
      keepResults(options.out, run.name, madeWith(version, options), published, kept, world.disk);
    const end = published.changed ? 'written' : 'unchanged';
    return {
      ...nothing,
      end,
      exit,
      folder: published.folder,
      files: products,
      enclosures: plan.enclosures.length,
      diagnostics,
      said,
    };
  } catch (error) {
    const { text, exit } = explainFault(error, options.debug === true);
    const end = exit === EXIT.cannotWrite ? 'not written' : exit === EXIT.usage ? 'not usable' : 'fault';
    return { ...nothing, end, exit, said: `${heard.join('')}dewdial: ${file}: ${text}` };
  }
}

/** Messages of many households: what is wrong or falls short; notes are only counted. */
export function saidOf(
  diagnostics: readonly Diagnostic[],
  sources: ReadonlyMap<string, { readonly shown: string; readonly text: string }>,
  { colour, columns }: Pick<HouseholdJob, 'colour' | 'columns'>,
): string {
  const shown = diagnostics.filter(({ weight }) => weight !== 'note');
  return shown.length === 0 ? '' : `${renderText(shown, sources, { colour, columns })}\n`;
}
