import { plainMessages } from '../diagnostics/render.ts';
import type { JobEnd, JobReport } from './household-job.ts';
import type { World } from './world.ts';

/** The worst first. */
const WORST_FIRST = [70, 73, 2, 1, 3, 0];

/** Tells the reports of many households in their order, each as soon as all before it are there, and in the end sums them up. */
export class ManyTeller {
  /** Called before anything is said. */
  beforeSaying: () => void = () => undefined;
  readonly #count: number;
  readonly #isJson: boolean;
  readonly #world: World;
  readonly #waiting = new Map<number, JobReport>();
  readonly #ends = new Map<JobEnd, string[]>();
  readonly #exits = new Set<number>();
  #enclosures = 0;
  #warned = 0;
  #warnings = 0;
  #notes = 0;
  #next = 0;

  constructor(count: number, isJson: boolean, world: World) {
    this.#count = count;
    this.#isJson = isJson;
    this.#world = world;
  }

  tell(index: number, report: JobReport): void {
    this.#waiting.set(index, report);
    for (let next = this.#waiting.get(this.#next); next; next = this.#waiting.get(this.#next)) {
      this.#waiting.delete(this.#next);
      this.#next++;
      this.#tellNow(next);
    }
  }

  #tellNow(report: JobReport): void {
    const { end, file, exit, enclosures, diagnostics, said } = report;
    this.#ends.set(end, [...(this.#ends.get(end) ?? []), file]);
    this.#exits.add(exit);
    this.#enclosures += enclosures;
    const warnings = diagnostics.filter(({ weight }) => weight === 'warning').length;
    this.#warnings += warnings;
    this.#warned += warnings > 0 ? 1 : 0;
    this.#notes += diagnostics.filter(({ weight }) => weight === 'note').length;
    if (this.#isJson) {
      const { said: _words, diagnostics: _messages, ...told } = report;
      this.#world.out(`${JSON.stringify({ ...told, messages: plainMessages(diagnostics) })}\n`);
      if (diagnostics.length > 0 || said === '') return;
    }
    if (said === '') return;
    this.beforeSaying();
    this.#world.say(said);
  }

  /** Sums up, and returns the worst exit code. */
  end(): number {
    const exit = WORST_FIRST.find((code) => this.#exits.has(code)) ?? 0;
    this.#world.out(this.#isJson ? `${JSON.stringify({ summary: { ...this.#counts(), exit } })}\n` : this.#words());
    return exit;
  }

  #counts() {
    const count = (end: JobEnd): number => this.#ends.get(end)?.length ?? 0;
    return {
      households: this.#count,
      enclosures: this.#enclosures,
      written: count('written'),
      unchanged: count('unchanged') + count('kept'),
      notUsable: count('not usable') + count('refused'),
      notWritten: count('not written'),
      faults: count('fault'),
      warnings: this.#warnings,
      notes: this.#notes,
    };
  }

  #words(): string {
    const counts = this.#counts();
    const lines = [
      `${counted(counts.households, 'household')}, ${counted(counts.enclosures, 'enclosure')}`,
      ...some(counts.written, 'written'),
      ...some(counts.unchanged, 'unchanged'),
      ...this.#named(['not usable', 'refused'], 'cannot be used'),
      ...this.#named(['not written'], 'could not be written'),
      ...this.#named(['fault'], 'met a fault of this program'),
      ...(this.#warnings > 0
        ? [`  ${counted(this.#warnings, 'warning')} in ${counted(this.#warned, 'household')}`]
        : []),
      ...(this.#notes > 0 ? [`  ${counted(this.#notes, 'note')}; dewdial check FILE says them`] : []),
    ];
    return `${lines.join('\n')}\n`;
  }

  #named(ends: readonly JobEnd[], words: string): readonly string[] {
    const files = ends.flatMap((end) => this.#ends.get(end) ?? []).sort();
    return files.length === 0 ? [] : [`  ${files.length} ${words}:`, ...files.map((file) => `    ${file}`)];
  }
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

function some(count: number, words: string): readonly string[] {
  return count === 0 ? [] : [`  ${count} ${words}`];
}
