/** The feeds, dustings and spacings of a stage, one line each. */
import type { TargetRecord } from '../../plan/plan.ts';
import { targetWords } from './target-value.ts';

export interface StageRow {
  readonly label: string;
  readonly value: string;
  /** The records that the line is made of. */
  readonly records: readonly TargetRecord[];
}

/** Returns the lines of one stage in the order of the records. */
export function stageRows(targets: readonly TargetRecord[], stage: string): readonly StageRow[] {
  const groups = new Map<string, TargetRecord[]>();
  for (const record of targets) {
    const [, name, part, index] = record.path.split('.');
    if (!record.path.startsWith('stages.') || name !== stage) continue;
    const key = `${part}.${index ?? ''}`;
    groups.set(key, [...(groups.get(key) ?? []), record]);
  }
  return [...groups].map(([key, records]) => rowOf(key.split('.')[0] ?? '', records));
}

const LABELS: Readonly<Record<string, string>> = { feeds: 'feed', dusting: 'dusting', apart: 'apart' };

/** A part that is said to be empty has one record, of the part itself. */
function rowOf(part: string, records: readonly TargetRecord[]): StageRow {
  const said = (name: string) => records.find(({ path }) => path.endsWith(`.${name}`));
  const words = (name: string) => {
    const record = said(name);
    return record ? targetWords(record.value, record.unit, false) : '';
  };
  if (records.some(({ path }) => path.endsWith(`.${part}`)))
    return { label: LABELS[part] ?? part, value: 'none', records };
  if (part === 'feeds') return { label: 'feed', value: feedWords(words), records };
  if (part === 'dusting') return { label: 'dusting', value: dustingWords(words), records };
  const pair = said('between')?.value;
  const ids = Array.isArray(pair) ? pair.map(String) : [];
  return {
    label: 'apart',
    value: `${ids[0]} and ${ids[1] === ids[0] ? 'the next' : ids[1]}: ${words('days')}`,
    records,
  };
}

type Words = (name: string) => string;

function feedWords(words: Words): string {
  const rhythm = words('per_week')
    ? `${words('per_week')} a week`
    : words('every')
      ? `every ${words('every')}`
      : words('days');
  const times = words('times_a_day') ? `, ${words('times_a_day')} times a day` : '';
  const left = words('remove_after') ? `, what is left taken out after ${words('remove_after')}` : '';
  return `${words('food')}, ${rhythm}${times}: ${portionWords(words)}${left}`;
}

function portionWords(words: Words): string {
  if (words('portion')) return words('portion');
  if (words('pieces'))
    return `${words('pieces')}${words('no_longer_than') ? `, no longer than ${words('no_longer_than')}` : ''}`;
  return `as much as is eaten in ${words('as_eaten')}${words('at_most') ? `, at most ${words('at_most')}` : ''}`;
}

function dustingWords(words: Words): string {
  if (words('at')) return `${words('id')} on ${words('at')}`;
  if (words('every')) return `${words('id')} every ${words('every')} feeds`;
  return `${words('id')}, ${words('times')} times in ${words('weeks')} weeks`;
}
