/** What a profile says, as data: the targets of one species beside their sources, whole and by themselves, without a household. */
import type { Range, TargetRecord } from './plan.ts';

export interface SpeciesName {
  readonly id: string;
  readonly name: string;
  readonly scientific: string;
  readonly activity: string;
}

/** How many of a profile's numbers are whose; a band, a time or a count is one number. */
export interface NumberCounts {
  readonly all: number;
  /** From a work under `sources`. */
  readonly published: number;
  /** Of the published, those that were recalled and not seen again. */
  readonly remembered: number;
  /** Common practice, no source. */
  readonly practice: number;
  /** Chosen for this tool. */
  readonly ours: number;
  /** Without any word on where it comes from. */
  readonly unsaid: number;
  /** Numbers beside which another source says something else. */
  readonly disputed: number;
}

export interface SpeciesSheet extends SpeciesName {
  readonly file: string;
  /** In the file's order; a stage that is like another repeats nothing. */
  readonly targets: readonly TargetRecord[];
  /** Names of stages, and the stage that each is like, or null. */
  readonly stages: readonly { readonly name: string; readonly like: string | null }[];
  readonly chores: readonly { readonly title: string; readonly every: string; readonly source: string }[];
  readonly uvIndex: {
    readonly fergusonZone: number;
    readonly mean: Range;
    readonly max: Range;
    readonly source: string;
  } | null;
  readonly counts: NumberCounts;
  readonly sources: readonly {
    readonly key: string;
    readonly cite: string;
    readonly read: 'opened' | 'excerpt' | 'memory';
  }[];
}
