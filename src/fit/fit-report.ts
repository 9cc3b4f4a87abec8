/** What a fit found, in words and as plain data. */
import { isoDateOf } from '../basics/calendar-day.ts';
import { clockTimeOf } from '../basics/minute-of-day.ts';
import { cellWidth } from '../basics/printable.ts';
import { type UtcMinute, type UtcOffsets, wallTimeAt } from '../basics/utc-offsets.ts';
import type { Language } from '../plan/plan.ts';
import { words } from '../plan/words/words.ts';
import { AIR_KEYS, type AirKey } from './fit-air.ts';
import type { EnclosureFit } from './fit-enclosure.ts';
import type { GaugeCorrection } from './gauge.ts';

/** Where things went; null: nothing was written. */
export interface FitOutcome {
  readonly household: string;
  readonly fittedFile: string | null;
  readonly picture: string | null;
}

/** A clock that seems less than this off is not spoken of, min. */
const CLOCK_TOLD_MINUTES = 2;

/** Returns the report, one fact a line. */
export function fitReport(
  fitted: EnclosureFit,
  gauge: GaugeCorrection,
  offsets: UtcOffsets,
  language: Language,
  outcome: FitOutcome,
): string {
  const said = words(language).fit;
  const { fit, past, count, lost, gapHours, enclosure } = fitted;
  const moment = (utc: UtcMinute): string => momentWords(offsets, utc);
  const ahead = Math.round(fit.clockAheadMinutes);
  const points = gauge.points.map(([truth, read]) => `${percent(truth)} = ${percent(read)}`).join(', ');
  const lines = [
    [
      said.summary(enclosure.name, count, moment(fitted.firstUtcMinute), moment(fitted.lastUtcMinute)),
      ...(lost > 0 ? [said.lost(lost)] : []),
      ...(gapHours.length > 0 ? [said.gaps(gapHours.length, String(Math.round(Math.max(...gapHours))))] : []),
    ].join('; '),
    '',
    ...table(fitted, language),
    '',
    said.residual((100 * fit.residual).toFixed(1)),
    said.taken.room,
    said.taken.temperature[past.temperatureFrom],
    past.mistsFrom === 'none' ? said.taken.mists.none : said.taken.mists[past.mistsFrom](past.mistCount),
    gauge.points.length > 0 ? said.taken.gauge.tested(points) : said.taken.gauge.untested,
    ...(Math.abs(ahead) >= CLOCK_TOLD_MINUTES ? [said.taken.clock(String(Math.abs(ahead)), ahead > 0)] : []),
    '',
    ...(outcome.picture === null ? [] : [said.picturedIn(outcome.picture)]),
    ...(outcome.fittedFile === null
      ? [said.notWritten]
      : [said.written(outcome.fittedFile, outcome.household, enclosure.id), said.next(outcome.household)]),
  ];
  return `${lines.join('\n')}\n`;
}

function momentWords(offsets: UtcOffsets, utc: UtcMinute): string {
  const { day, minute } = wallTimeAt(offsets, Math.floor(utc));
  return `${isoDateOf(day)} ${clockTimeOf(Math.floor(minute))}`;
}

function percent(share: number): string {
  return `${Number((100 * share).toFixed(1))} %`;
}

function table({ fit, estimate, heldByFile }: EnclosureFit, language: Language): readonly string[] {
  const said = words(language).fit;
  const row = (key: AirKey): readonly string[] => {
    const value = fit.values.find((each) => each.key === key);
    const before = digits(estimate[key]);
    if (value)
      return [said.values[key], digits(value.value), `${digits(value.low)} ${said.and} ${digits(value.high)}`, before];
    return [said.values[key], '-', heldByFile.includes(key) ? said.saidByFile : said.kept, before];
  };
  const rows = [said.columns, ...AIR_KEYS.map(row)];
  const widths = [0, 1, 2, 3].map((column) => Math.max(...rows.map((cells) => cellWidth(cells[column] ?? ''))));
  return rows.map((cells) =>
    cells
      .map((cell, column) => `${cell}${' '.repeat((widths[column] ?? 0) - cellWidth(cell))}`)
      .join('  ')
      .trimEnd(),
  );
}

function digits(value: number): string {
  return String(Number(value.toPrecision(value < 1 ? 2 : 3)));
}

/** Returns the same as plain data; humidity as fractions. */
export function fitData(
  fitted: EnclosureFit,
  gauge: GaugeCorrection,
  offsets: UtcOffsets,
  outcome: FitOutcome,
): Readonly<Record<string, unknown>> {
  const { fit, past, enclosure } = fitted;
  return {
    enclosure: enclosure.id,
    values: Object.fromEntries(fit.values.map(({ key, value, low, high }) => [key, { value, low, high }])),
    estimates: fitted.estimate,
    heldByFile: fitted.heldByFile,
    untold: fit.untold,
    alike: fit.alike,
    residual: fit.residual,
    inflation: fit.inflation,
    clockAheadMinutes: fit.clockAheadMinutes,
    readings: {
      count: fitted.count,
      lost: fitted.lost,
      gapHours: fitted.gapHours,
      from: momentWords(offsets, fitted.firstUtcMinute),
      to: momentWords(offsets, fitted.lastUtcMinute),
    },
    temperatureFrom: past.temperatureFrom,
    mistsFrom: past.mistsFrom,
    mists: past.mistCount,
    gauge: { gain: gauge.gain, offset: gauge.offset },
    fittedFile: outcome.fittedFile,
    picture: outcome.picture,
  };
}
