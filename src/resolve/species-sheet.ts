/** A profile as a sheet to read: every target beside who says it, disagreements, and how many of its numbers are whose. */
import type { TargetRecord } from '../plan/plan.ts';
import type { NumberCounts, SpeciesSheet } from '../plan/species-sheet.ts';
import type { ReadProfile } from '../read/profile.ts';
import { FERGUSON_ZONES_SOURCE, fergusonZone } from '../science/ferguson-zones.ts';
import { collectLeaves, type Leaf, mergeTargets, profileSpeaker } from './merge-targets.ts';
import { isNumeric, recordOf, type SourceBook } from './target-records.ts';

/** Returns the sheet of one profile, as its file says it: nothing added, no default taken. */
export function speciesSheet(profile: ReadProfile): SpeciesSheet {
  const { tree } = profile;
  const sources = tree.sources ?? {};
  const book: SourceBook = { sources, listedAs: (key) => key };
  const records = profileLeaves(profile).map((leaf) => recordOf(leaf, book));
  return {
    id: tree.species,
    name: tree.name,
    scientific: tree.scientific,
    activity: tree.activity,
    file: profile.file,
    targets: records.filter(({ path }) => !path.startsWith('chores.')),
    stages: Object.entries(tree.stages ?? {}).map(([name, { like }]) => ({ name, like: like ?? null })),
    chores: choresOf(profile),
    uvIndex: uvIndexOf(profile),
    counts: countNumbers(records),
    sources: Object.entries(sources).map(([key, { cite, read }]) => ({ key, cite, read })),
  };
}

function profileLeaves(profile: ReadProfile): readonly Leaf[] {
  const speaker = profileSpeaker(profile);
  const leaves: Leaf[] = mergeTargets({ tree: profile.tree, speaker }, null).leaves.filter(
    ({ path }) => path[0] !== 'activity',
  );
  for (const [name, stage] of Object.entries(profile.tree.stages ?? {})) {
    for (const part of ['feeds', 'dusting', 'apart'] as const) {
      const path = ['stages', name, part];
      collectLeaves(stage[part], path, speaker, path, leaves);
    }
  }
  collectLeaves(profile.tree.chores, ['chores'], speaker, ['chores'], leaves);
  return leaves;
}

function choresOf(profile: ReadProfile): SpeciesSheet['chores'] {
  return (profile.tree.chores ?? []).map(({ title, every }, index) => ({
    title,
    every: `${every.count} ${every.unit}${every.count === 1 ? '' : 's'}`,
    source: profile.saidAt(['chores', index]).source ?? '',
  }));
}

function uvIndexOf({ tree }: ReadProfile): SpeciesSheet['uvIndex'] {
  const zone = tree.uvb === undefined || tree.uvb === 'none' ? undefined : tree.uvb.ferguson_zone;
  const found = zone === undefined ? null : fergusonZone(zone);
  return found && { ...found, source: FERGUSON_ZONES_SOURCE };
}

function countNumbers(records: readonly TargetRecord[]): NumberCounts {
  const numbers = records.filter(({ value, unit }) => isNumeric(value) || isClock(value, unit));
  const count = (has: (record: TargetRecord) => boolean) => numbers.filter(has).length;
  const isPublished = ({ origin }: TargetRecord) => origin.citation !== undefined;
  return {
    all: numbers.length,
    published: count(isPublished),
    remembered: count((record) => isPublished(record) && record.origin.read === 'memory'),
    practice: count(({ origin }) => origin.source === 'practice'),
    ours: count(({ origin }) => origin.source === 'ours'),
    unsaid: count(({ origin }) => origin.source === undefined),
    disputed: count(({ origin }) => (origin.also ?? []).length > 0),
  };
}

function isClock(value: unknown, unit: string): boolean {
  return unit === 'text' && typeof value === 'string' && /^\d{2}:\d{2}$/.test(value);
}
