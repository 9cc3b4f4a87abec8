/** The file of fitted values that stands beside the household file. */
import { isoDateOf } from '../basics/calendar-day.ts';
import { type UtcOffsets, wallTimeAt } from '../basics/utc-offsets.ts';
import type { FittedTree, ReadFittedAir, ReadInterval } from '../read/fitted-tree.ts';
import type { AirKey } from './fit-air.ts';
import type { EnclosureFit } from './fit-enclosure.ts';

/** Returns what a fit leaves for later runs; numbers to four digits, as they are written. */
export function fittedEntry(
  fitted: EnclosureFit,
  log: { readonly file: string; readonly digest: string },
  shape: string,
  offsets: UtcOffsets,
): ReadFittedAir {
  const interval = (key: AirKey): ReadInterval | null => {
    const value = fitted.fit.values.find((each) => each.key === key);
    return value ? { best: digits(value.value), low: digits(value.low), high: digits(value.high) } : null;
  };
  const [changes, base, transfer] = [
    interval('airChangesPerHour'),
    interval('baseEvaporationGPerHour'),
    interval('transferMPerHour'),
  ];
  return {
    readings: log.file,
    from: wallTimeAt(offsets, fitted.firstUtcMinute).day,
    to: wallTimeAt(offsets, fitted.lastUtcMinute).day,
    count: fitted.count,
    residual: digits(fitted.fit.residual),
    shape,
    log: log.digest,
    ...(changes ? { changes_per_hour: changes } : {}),
    ...(base ? { base_evaporation: base } : {}),
    ...(transfer ? { transfer } : {}),
  };
}

function digits(value: number): number {
  return Number(value.toPrecision(4));
}

/** Returns the file's text, enclosures by id. */
export function fittedText(household: string, fitted: FittedTree['fitted']): string {
  const ids = Object.keys(fitted).sort();
  return [
    `# Air values that \`dewdial fit\` found in gauge readings; every command uses them beside ${household}.`,
    '# What an enclosure says itself under `air:` stands before them. 95 % of such intervals hold the true value.',
    `# To go back to the estimates: delete this file, or  dewdial fit ${household} --remove all`,
    'format: 1',
    'fitted:',
    ...ids.flatMap((id) => entryLines(id, fitted[id])),
    '',
  ].join('\n');
}

function entryLines(id: string, air: ReadFittedAir | undefined): readonly string[] {
  if (!air) return [];
  const line = (key: string, value: ReadInterval | undefined, unit: string) =>
    value ? [`    ${key}: { best: ${value.best}${unit}, low: ${value.low}${unit}, high: ${value.high}${unit} }`] : [];
  return [
    `  ${id}:`,
    `    readings: ${JSON.stringify(air.readings)}`,
    `    from: ${isoDateOf(air.from)}`,
    `    to: ${isoDateOf(air.to)}`,
    `    count: ${air.count}`,
    `    residual: ${Number((100 * air.residual).toPrecision(4))} %`,
    `    shape: ${JSON.stringify(air.shape)}`,
    `    log: ${JSON.stringify(air.log)}`,
    ...line('changes_per_hour', air.changes_per_hour, ''),
    ...line('base_evaporation', air.base_evaporation, ' g/h'),
    ...line('transfer', air.transfer, ' m/h'),
  ];
}
