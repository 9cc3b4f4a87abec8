/** The list of species, and one species' targets beside their sources, as text for a terminal or a pipe. */
import type { TargetRecord } from '../../plan/plan.ts';
import type { NumberCounts, SpeciesName, SpeciesSheet } from '../../plan/species-sheet.ts';
import { type StageRow, stageRows } from './stage-rows.ts';
import { targetWords } from './target-value.ts';

const TEMPLATE = 'template: verify with your veterinarian';

/** Returns one line a species, in the order of ids; empty where there is none. */
export function speciesListText(species: readonly SpeciesName[]): string {
  const sorted = [...species].sort((a, b) => (a.id < b.id ? -1 : 1));
  const width = Math.max(0, ...sorted.map(({ id }) => id.length)) + 2;
  return sorted.map(({ id, name, scientific }) => `${id.padEnd(width)}${name} (${scientific})\n`).join('');
}

/** Returns the sheet of one species; every target has its source in the last column, a disagreement a line of its own. */
export function speciesText(sheet: SpeciesSheet): string {
  const blocks = [
    heading(sheet),
    ...groupBlocks(sheet),
    choreBlock(sheet),
    sourceBlock(sheet),
    countBlock(sheet.counts),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

function heading({ name, scientific, activity, id }: SpeciesSheet): readonly string[] {
  return [`${name} (${scientific}), ${activity}`, `profile ${id}; ${TEMPLATE}`];
}

/** Groups by the first part of the path, a stage a group of its own, in the order of a keeper's questions. */
const GROUPS: readonly (readonly [string, string])[] = [
  ['range', 'home'],
  ['photoperiod', 'day length'],
  ['day', 'place of the day'],
  ['basking', 'basking hours'],
  ['uvb', 'UV'],
  ['temperature', 'temperature'],
  ['humidity', 'relative humidity'],
  ['water', 'water'],
  ['misting', 'misting'],
  ['moist_hide', 'moist hide'],
  ['feeding', 'feeding hours'],
  ['may_go_without', 'may go without food'],
];

function groupBlocks(sheet: SpeciesSheet): readonly (readonly string[])[] {
  const named = GROUPS.map(([key, title]) => {
    const rows = rowsUnder(sheet.targets, key);
    return rows.length === 0 ? [] : block(title, key === 'uvb' ? [...rows, ...uvRows(sheet)] : rows);
  });
  const stages = sheet.stages.map(({ name, like }) => {
    const rows = stageRows(sheet.targets, name).map(stageRow);
    return block(`stage ${name}${like === null ? '' : `, like ${like}`}`, rows);
  });
  return [...named, ...stages];
}

interface Row {
  readonly label: string;
  readonly value: string;
  readonly source: string;
  readonly whys: readonly string[];
}

/** A title, its rows in three columns, and below a row each reason that no row above it gave. */
function block(title: string, rows: readonly Row[]): readonly string[] {
  const labelWidth = Math.max(0, ...rows.map(({ label }) => label.length));
  const valueWidth = Math.min(VALUE_WIDTH, Math.max(0, ...rows.map(({ value }) => value.length)));
  const given = new Set<string>();
  const lines = rows.flatMap(({ label, value, source, whys }) => {
    const news = whys.filter((why) => !given.has(why));
    for (const why of news) given.add(why);
    const line = `  ${label.padEnd(labelWidth)}  ${value.padEnd(valueWidth)}  ${source}`.trimEnd();
    return [line, ...news.map((why) => `  ${' '.repeat(labelWidth)}    ${why}`)];
  });
  return [title, ...lines];
}
const VALUE_WIDTH = 56;

function rowsUnder(targets: readonly TargetRecord[], prefix: string): readonly Row[] {
  return targets
    .filter(({ path }) => path === prefix || path.startsWith(`${prefix}.`))
    .flatMap((record) => recordRows(record, prefix));
}

function recordRows(record: TargetRecord, prefix: string): readonly Row[] {
  const { path, unit, origin } = record;
  const words = (value: unknown) => targetWords(value, unit, holdsShare(path));
  const whys = origin.why === undefined ? [] : [origin.why];
  return [
    { label: labelOf(path, prefix), value: words(record.value), source: sourceWords(origin), whys },
    ...otherRows(record, words),
  ];
}

function otherRows({ origin }: TargetRecord, words: (value: unknown) => string): readonly Row[] {
  return (origin.also ?? []).map(({ value, source }) => ({
    label: '',
    value: words(value),
    source: `says ${source === 'practice' ? 'common practice' : source}`,
    whys: [],
  }));
}

function stageRow({ label, value, records }: StageRow): Row {
  const sources = [...new Set(records.filter(isSourced).map(({ origin }) => sourceWords(origin)))];
  const others = records.flatMap((record) => otherRows(record, (other) => targetWords(other, record.unit, false)));
  const disputes = others.map((other) => `${other.value} ${other.source}`);
  const whys = [...new Set(records.flatMap(({ origin }) => origin.why ?? []))];
  return { label, value, source: sources.join(' / '), whys: [...whys, ...disputes] };
}

/** What a powder or a food is called needs no source, how often and how much does. */
function isSourced({ path }: TargetRecord): boolean {
  return !/\.(id|food|at|between(\.\d+)?)$/.test(path) || path.endsWith('.at');
}

function holdsShare(path: string): boolean {
  return /^humidity\.(?!peaks|soaked)|^moist_hide\.humidity$|\.below$/.test(path);
}

function labelOf(path: string, prefix: string): string {
  const label = path
    .slice(prefix.length + 1)
    .replace(/\.(\d+)(?=\.|$)/g, (_, index: string) => ` ${Number(index) + 1}`);
  return (label === '' ? prefix : label).replace(/[._]/g, ' ');
}

function sourceWords({ source, read }: TargetRecord['origin']): string {
  if (source === 'practice') return 'common practice, no source';
  if (source === 'ours') return 'ours';
  if (source === undefined) return 'no source named';
  return read === 'memory' ? `${source} (from memory)` : source;
}

function uvRows({ uvIndex }: SpeciesSheet): readonly Row[] {
  if (!uvIndex) return [];
  const range = ([low, high]: readonly [number, number]) => `UV index ${low.toFixed(1)} to ${high.toFixed(1)}`;
  const zone = `zone ${uvIndex.fergusonZone}`;
  return [
    { label: `${zone} mean`, value: range(uvIndex.mean), source: '', whys: [] },
    { label: `${zone} basking`, value: range(uvIndex.max), source: '', whys: [uvIndex.source] },
  ];
}

function choreBlock({ chores }: SpeciesSheet): readonly string[] {
  if (chores.length === 0) return [];
  const rows = chores.map(
    ({ title, every, source }): Row => ({
      label: title,
      value: `every ${every}`,
      source: sourceWords({ kind: 'profile', source }),
      whys: [],
    }),
  );
  return block('chores', rows);
}

function sourceBlock({ sources }: SpeciesSheet): readonly string[] {
  if (sources.length === 0) return [];
  const how = { opened: 'read', excerpt: 'an excerpt was read', memory: 'from memory' } as const;
  return ['sources', ...sources.map(({ key, cite, read }) => `  ${key}: ${cite} [${how[read]}]`)];
}

function countBlock(counts: NumberCounts): readonly string[] {
  const { all, published, remembered, practice, ours, unsaid, disputed } = counts;
  const parts = [
    `${published} published (${remembered} of them from memory)`,
    `${practice} common practice`,
    `${ours} ours`,
  ];
  return [
    `Of its ${all} numbers ${[...parts, ...(unsaid > 0 ? [`${unsaid} without a word`] : [])].join(', ')}; beside ${disputed} another source says otherwise.`,
    'No vitamin doses stand here: they are a matter of the label and your veterinarian.',
  ];
}
