/** Targets as printable records: a path, a value with its unit, and who said it. */
import { isoDateOf } from '../basics/calendar-day.ts';
import { clockTimeOf } from '../basics/minute-of-day.ts';
import type { OriginRecord, TargetRecord } from '../plan/plan.ts';
import type { FilePath } from '../read/placed-file.ts';
import type { ReadSource } from '../read/targets.ts';
import type { Leaf } from './merge-targets.ts';

/** The sources of a profile, and the key under which each is listed in the plan. */
export interface SourceBook {
  readonly sources: Readonly<Record<string, ReadSource>>;
  readonly listedAs: (key: string) => string;
}

/** A target that nobody said and this tool took. */
export interface DefaultTarget {
  readonly path: string;
  readonly value: unknown;
  readonly unit: string;
  readonly why: string;
}

/** First match wins; what matches none is a text. */
const UNITS: readonly (readonly [RegExp, string])[] = [
  [/^range\.latitude$|^photoperiod\.latitude$/, '°'],
  [/^day\./, 'clock'],
  [/^photoperiod\.season\.from$/, 'date'],
  [/^photoperiod\.season\.over$/, 'd'],
  [/^photoperiod\.season/, 'text'],
  [/^(photoperiod|basking)\.|^uvb\.(after|before|hours|spans)/, 'min'],
  [/^uvb\.ferguson_zone$/, '1'],
  [/^temperature\./, '°C'],
  [/^humidity\.soaked_at_most$/, 'h'],
  [/^humidity\./, '1'],
  [/\.(when|favour|between\.\d+|between|food|id|no_longer_than|days\.\d+)$/, 'text'],
  [/^water\.drink\.at_least$|^misting\.seconds$/, 's'],
  [/^water\.(dry_out\.at_least|soak\.minutes|no_mist)/, 'min'],
  [/\.(change_every|dampen_every)$|^may_go_without\./, 'd'],
  [/^feeding\.|^misting\.gap$/, 'min'],
  [/\.apart\.\d+\.days$|\.feeds\.\d+\.every$/, 'd'],
  [/\.as_eaten$/, 'min'],
  [/\.remove_after$/, 'h'],
  [/\.feeds\.\d+\.days$/, 'text'],
];

/** Returns the unit of a value at a path: `1`, `°C`, `min`, `s`, `h`, `d`, `°`, or `text`. */
function unitOfTarget(path: string, value: unknown): string {
  if (value === 'none') return 'text';
  return UNITS.find(([pattern]) => pattern.test(path))?.[1] ?? (isNumeric(value) ? '1' : 'text');
}

/** Returns the record of one value. */
export function recordOf(leaf: Leaf, book: SourceBook): TargetRecord {
  const path = leaf.path.join('.');
  const unit = unitOfTarget(path, leaf.value);
  return {
    path,
    value: printableValue(leaf.value, unit),
    unit: unit === 'clock' || unit === 'date' ? 'text' : unit,
    origin: originOf(leaf, unit, book),
  };
}

/** Returns the record of a target that neither file nor profile says. */
export function recordOfDefault(target: DefaultTarget): TargetRecord {
  return {
    path: target.path,
    value: target.value,
    unit: target.unit,
    origin: { kind: 'default', source: 'ours', why: target.why },
  };
}

function originOf(leaf: Leaf, unit: string, book: SourceBook): OriginRecord {
  const said = leaf.speaker.saidAt(leaf.spokenAt);
  const source = said.source === null ? undefined : book.sources[said.source];
  return {
    kind: leaf.speaker.kind,
    file: leaf.speaker.file,
    line: leaf.speaker.placeOf(leaf.spokenAt).line,
    ...(said.source === null ? {} : { source: book.listedAs(said.source) }),
    ...(source ? { citation: source.cite, read: source.read } : {}),
    ...(said.why === null ? {} : { why: said.why }),
    ...(said.also.length === 0 ? {} : { also: said.also.map((other) => alsoOf(other, unit, book)) }),
  };
}

function alsoOf(
  other: { readonly value: unknown; readonly source: string | null },
  unit: string,
  book: SourceBook,
): { value: unknown; source: string } {
  return { value: printableValue(other.value, unit), source: other.source === null ? '' : book.listedAs(other.source) };
}

function printableValue(value: unknown, unit: string): unknown {
  if (typeof value === 'number' && unit === 'clock') return clockTimeOf(value);
  if (typeof value === 'number' && unit === 'date') return isoDateOf(value);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  if ('of' in value && 'minutes' in value) return { [String(value.of)]: value.minutes };
  if ('minute' in value && typeof value.minute === 'number') return clockTimeOf(value.minute);
  return value;
}

/** Returns whether a value is a number or holds one. */
export function isNumeric(value: unknown): boolean {
  if (typeof value === 'number') return true;
  if (Array.isArray(value)) return value.some(isNumeric);
  return typeof value === 'object' && value !== null && Object.values(value).some(isNumeric);
}

/** Returns the records ordered by path, list positions by number. */
export function byPath(records: readonly TargetRecord[]): readonly TargetRecord[] {
  return [...records].sort((a, b) => comparePaths(a.path.split('.'), b.path.split('.')));
}

function comparePaths(a: FilePath, b: FilePath): number {
  for (const [index, part] of a.entries()) {
    const other = b[index];
    if (other === undefined) return 1;
    if (part === other) continue;
    const difference = Number(part) - Number(other);
    if (Number.isFinite(difference) && difference !== 0) return difference;
    return part < other ? -1 : 1;
  }
  return a.length - b.length;
}
