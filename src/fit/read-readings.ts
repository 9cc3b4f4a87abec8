/** Reads a gauge's log: every problem with its line and column, all at once; a row that cannot be read is left out and said. */
import { DAY_MINUTES } from '../basics/minute-of-day.ts';
import { meaningOfWall, type UtcMinute, type UtcOffsets } from '../basics/utc-offsets.ts';
import type { Code, ValuesOf } from '../diagnostics/catalogue.ts';
import type { Place } from '../diagnostics/diagnostic.ts';
import type { Log } from '../diagnostics/log.ts';
import { type Columns, type ColumnsFound, columnsByHeading, columnsByPosition } from './columns.ts';
import { type CsvRow, csvRows, type Delimiter, placeOfCell } from './csv-rows.ts';
import { isNothing, temperatureScale, writtenNumber, writtenSeconds } from './measures.ts';
import { clockOf, type DateOrder, dayIn, ordersOf, type WrittenMoment, writtenMoment } from './moments.ts';
import type { GaugeReading, LoggedMist, Readings } from './readings.ts';

export interface LogForm {
  /** The order of day, month and year; null: to be found out. */
  readonly dates: DateOrder | null;
  /** null: by the headings, or by position. */
  readonly columns: Columns | null;
  /** The clock that the gauge's times are on, where they do not say so themselves. */
  readonly clock: 'wall' | 'standard' | 'utc';
  /** Added to every time. */
  readonly shiftMinutes: number;
}

/** Headings stand among the first lines, below what a logger says of itself. */
const PREAMBLE_ROWS = 40;
/** Messages about single rows; beyond them the rest is only counted. */
const ROW_MESSAGES = 60;
/** Above this share of rows that cannot be read the log is not believed. */
const UNREADABLE_SHARE = 0.2;

/**
 * Returns the readings of a log, or null where it cannot be used.
 *
 * @param lastDay no reading is later than this date (today): it helps to tell the day from the month
 */
export function readReadings(
  file: string,
  text: string,
  form: LogForm,
  offsets: UtcOffsets,
  lastDay: number,
  log: Log,
): Readings | null {
  const table = csvRows(text);
  if (!table.ok) {
    log.report('readings-quote', {}, { file, line: table.line, column: 1, length: 1 });
    return null;
  }
  const reader = new LogReader(file, table.delimiter, table.rows, form, offsets, lastDay, log);
  return reader.read();
}

interface DatedRow {
  readonly index: number;
  readonly row: CsvRow;
  readonly moment: WrittenMoment;
}

class LogReader {
  #columns: Columns = { at: {}, units: {} };
  #said = 0;
  #unreadable = 0;
  /** Days of which a time that does not exist has been told; its neighbours go without saying. */
  readonly #skippedDays = new Set<number>();

  constructor(
    readonly file: string,
    readonly delimiter: Delimiter,
    readonly rows: readonly CsvRow[],
    readonly form: LogForm,
    readonly offsets: UtcOffsets,
    readonly lastDay: number,
    readonly log: Log,
  ) {}

  read(): Readings | null {
    const first = this.#findColumns();
    if (first === null) return null;
    const rows = this.rows.slice(first);
    if (this.#tooManyCells(first)) return null;
    const dated = rows.flatMap((row, offset) => this.#dated(row, first + offset));
    if (this.#isUnbelievable(rows.length)) return null;
    if (dated.length === 0) {
      this.log.report('readings-empty', {}, this.#placeOfRow(0));
      return null;
    }
    const order = this.#order(dated);
    if (order === null) return null;
    const isPercent = this.#isPercent(rows);
    const isFahrenheit = this.#isFahrenheit(rows);
    const readings: GaugeReading[] = [];
    const mists: LoggedMist[] = [];
    let [before, lost] = [Number.NEGATIVE_INFINITY, this.#unreadable];
    for (const each of ascending(dated, order)) {
      const utcMinute = this.#instant(each, order, before);
      if (utcMinute === null) {
        lost++;
        continue;
      }
      before = utcMinute;
      const humidity = this.#humidity(each.row, isPercent);
      if (humidity === null) lost++;
      else readings.push({ utcMinute, humidity, celsius: this.#celsius(each.row, isFahrenheit), row: each.index });
      const seconds = this.#mist(each.row);
      if (seconds > 0) mists.push({ utcMinute, seconds });
    }
    if (this.#isUnbelievable(rows.length)) return null;
    const hasMists = this.#hasMists(rows);
    if (hasMists && this.#isState(mists, rows)) return null;
    return {
      file: this.file,
      readings: sortedOnce(readings),
      mists: hasMists ? mists.sort((a, b) => a.utcMinute - b.utcMinute) : null,
      lost,
      placeOfRow: (row) => this.#placeOfRow(row),
    };
  }

  /** Returns the index of the first row of data. */
  #findColumns(): number | null {
    const { rows, form, log } = this;
    let wrong: { readonly found: ColumnsFound & { readonly ok: false }; readonly index: number } | null = null;
    for (const [index, { cells }] of rows.slice(0, PREAMBLE_ROWS).entries()) {
      const isData = form.columns ? this.#momentOf(cells, form.columns) !== null : dataShape(cells) !== null;
      const found = isData ? null : columnsByHeading(cells);
      if (found?.ok) {
        this.#columns = form.columns ? { at: form.columns.at, units: found.columns.units } : found.columns;
        return index + 1;
      }
      if (found && cells.length > 1) wrong ??= { found, index };
      if (!isData) continue;
      if (wrong && !form.columns) break;
      this.#columns = form.columns ?? columnsByPosition(dataShape(cells) === 'split');
      return index;
    }
    if (wrong) {
      const { missing, several } = wrong.found;
      const names = rows[wrong.index]?.cells ?? [];
      const among = several.length > 0 ? several.map((at) => names[at] ?? '') : names;
      log.report('readings-columns', { missing, among, isSeveral: several.length > 0 }, this.#placeOfRow(wrong.index));
    } else if (rows.length === 0) log.report('readings-empty', {}, { file: this.file, line: 1, column: 1, length: 1 });
    else log.report('readings-without-time', {}, this.#placeOfRow(0));
    return null;
  }

  /** A row that is longer than its headings has most likely been cut at decimal commas. */
  #tooManyCells(first: number): boolean {
    const headings = this.rows[first - 1]?.cells.length ?? 0;
    if (first === 0 || this.form.columns) return false;
    const long = this.rows.slice(first, first + 200).findIndex(({ cells }) => cells.slice(headings).some(isCell));
    if (long < 0) return false;
    const cells = this.rows[first + long]?.cells.length ?? 0;
    const isComma = this.delimiter === ',';
    this.log.report('readings-too-many-cells', { headings, cells, isComma }, this.#placeOfRow(first + long));
    return true;
  }

  #dated(row: CsvRow, index: number): readonly DatedRow[] {
    const moment = this.#momentOf(row.cells, this.#columns);
    if (moment) return [{ index, row, moment }];
    const at = this.#columns.at.time ?? this.#columns.at.date ?? 0;
    if (!isNothing(row.cells[at] ?? '')) this.#sayRow('readings-time', { found: row.cells[at] ?? '' }, row, at);
    this.#unreadable++;
    return [];
  }

  #momentOf(cells: readonly string[], { at }: Columns): WrittenMoment | null {
    const whole = at.time === undefined ? null : writtenMoment(cells[at.time] ?? '');
    if (whole) return whole;
    const date = at.date === undefined ? null : writtenMoment(cells[at.date] ?? '');
    const clock = at.clock === undefined ? null : clockOf(cells[at.clock] ?? '');
    return date && clock ? { ...date, ...clock } : null;
  }

  #order(dated: readonly DatedRow[]): DateOrder | null {
    const { form, log, lastDay } = this;
    if (form.dates) return form.dates;
    const orders = ordersOf(
      dated.map(({ moment }) => moment),
      lastDay,
    );
    const [only, other] = orders;
    if (only !== undefined && other === undefined) return only;
    const row = dated[0];
    const place = row ? this.#placeOf(row.row, this.#columns.at.time ?? this.#columns.at.date ?? 0) : null;
    const found = row?.row.cells[this.#columns.at.time ?? this.#columns.at.date ?? 0] ?? '';
    log.report('dates-ambiguous', { found, orders }, place);
    return null;
  }

  /** Returns the instant of a row: of an hour that comes twice the second where the rows say so; null where the time does not exist. */
  #instant({ row, moment }: DatedRow, order: DateOrder, before: UtcMinute): UtcMinute | null {
    const at = this.#columns.at.time ?? this.#columns.at.date ?? 0;
    const day = dayIn(moment, order);
    if (day === null) {
      this.#sayRow('readings-time', { found: row.cells[at] ?? '' }, row, at);
      return null;
    }
    const minute = moment.minute ?? 0;
    const shift = this.form.shiftMinutes;
    if (moment.utcOffset !== null) return day * DAY_MINUTES + minute - moment.utcOffset + shift;
    if (this.form.clock === 'utc') return day * DAY_MINUTES + minute + shift;
    if (this.form.clock === 'standard') return day * DAY_MINUTES + minute - this.offsets.standardOffsetMinutes + shift;
    const meaning = meaningOfWall(this.offsets, day, minute);
    if (meaning.kind === 'skipped') {
      if (!this.#skippedDays.has(day))
        this.#sayRow('readings-time-skipped', { found: row.cells[at] ?? '', zone: this.offsets.zone }, row, at);
      this.#skippedDays.add(day);
      return null;
    }
    if (meaning.kind === 'once') return meaning.utcMinute + shift;
    return (meaning.first + shift > before ? meaning.first : meaning.second) + shift;
  }

  #isPercent(rows: readonly CsvRow[]): boolean {
    if (/%/u.test(this.#columns.units.humidity ?? '')) return true;
    const numbers = rows.flatMap(({ cells }) => writtenNumber(cells[this.#columns.at.humidity ?? -1] ?? '') ?? []);
    return numbers.some(({ value, unit }) => unit === '%' || value > 1.2);
  }

  #humidity(row: CsvRow, isPercent: boolean): number | null {
    const at = this.#columns.at.humidity ?? -1;
    const cell = row.cells[at] ?? '';
    if (isNothing(cell)) return null;
    const number = writtenNumber(cell);
    if (!number || !/^(%|rh|%rh|hr|%hr|)$/u.test(number.unit)) {
      this.#sayRow('readings-value', { found: cell, wanted: 'a humidity' }, row, at);
      this.#unreadable++;
      return null;
    }
    const humidity = isPercent ? number.value / 100 : number.value;
    if (humidity >= 0 && humidity <= 1.02) return Math.min(1, humidity);
    this.#sayRow('readings-out-of-range', { found: cell, range: '0 % to 100 %' }, row, at);
    return null;
  }

  /** Temperatures that say no scale are °F where half of them lie above 50. */
  #isFahrenheit(rows: readonly CsvRow[]): boolean {
    const scale = temperatureScale(this.#columns.units.temperature ?? '');
    if (scale === 'c' || scale === 'f') return scale === 'f';
    const at = this.#columns.at.temperature ?? -1;
    const values = rows
      .flatMap(({ cells }) => writtenNumber(cells[at] ?? '') ?? [])
      .flatMap(({ value, unit }) => (temperatureScale(unit) === 'unsaid' ? [value] : []))
      .sort((a, b) => a - b);
    const isHigh = (values[values.length >> 1] ?? 0) > 50;
    if (isHigh) this.log.report('readings-fahrenheit-taken', {}, this.#placeOfRow(0));
    return isHigh;
  }

  #celsius(row: CsvRow, isFahrenheit: boolean): number | null {
    const at = this.#columns.at.temperature ?? -1;
    const cell = row.cells[at] ?? '';
    if (isNothing(cell)) return null;
    const number = writtenNumber(cell);
    const scale = number && temperatureScale(number.unit);
    if (!number || scale === null) {
      this.#sayRow('readings-value', { found: cell, wanted: 'a temperature' }, row, at);
      return null;
    }
    const celsius = scale === 'f' || (scale === 'unsaid' && isFahrenheit) ? (number.value - 32) / 1.8 : number.value;
    if (celsius > -20 && celsius < 60) return celsius;
    this.#sayRow('readings-out-of-range', { found: cell, range: '-20 °C to 60 °C' }, row, at);
    return null;
  }

  /** Returns the seconds of a mist that began with this row; 0 where none did. */
  #mist(row: CsvRow): number {
    const at = this.#columns.at.mist ?? -1;
    const cell = row.cells[at] ?? '';
    if (isNothing(cell)) return 0;
    const isMinutes = /^min/u.test(this.#columns.units.mist ?? '');
    const seconds = writtenSeconds(cell);
    if (seconds === null || seconds > 24 * 3600) {
      this.#sayRow('readings-value', { found: cell, wanted: 'the seconds of a mist' }, row, at);
      return 0;
    }
    return isMinutes && writtenNumber(cell)?.unit === '' ? 60 * seconds : seconds;
  }

  #hasMists(rows: readonly CsvRow[]): boolean {
    const at = this.#columns.at.mist;
    return at !== undefined && rows.some(({ cells }) => !isNothing(cells[at] ?? ''));
  }

  /** A column of ones says that it misted, not for how long. */
  #isState(mists: readonly LoggedMist[], rows: readonly CsvRow[]): boolean {
    if (mists.length === 0 || mists.some(({ seconds }) => seconds > 1)) return false;
    const at = this.#columns.at.mist ?? 0;
    const row = rows.find(({ cells }) => (writtenSeconds(cells[at] ?? '') ?? 0) > 0);
    this.log.report('readings-mist-state', {}, row ? this.#placeOf(row, at) : null);
    return true;
  }

  #isUnbelievable(count: number): boolean {
    if (this.#unreadable <= UNREADABLE_SHARE * count) return false;
    this.log.report('readings-unreadable', { unreadable: this.#unreadable, rows: count }, null);
    return true;
  }

  #sayRow<C extends Code>(code: C, values: ValuesOf<C>, row: CsvRow, at: number): void {
    if (this.#said++ < ROW_MESSAGES) this.log.report(code, values, this.#placeOf(row, at));
  }

  #placeOf(row: CsvRow, at: number): Place {
    return placeOfCell(this.file, this.delimiter, row, at);
  }

  #placeOfRow(index: number): Place {
    const row = this.rows[index];
    return row ? placeOfCell(this.file, this.delimiter, row, -1) : { file: this.file, line: 1, column: 1, length: 1 };
  }
}

const isCell = (cell: string): boolean => cell !== '';

/** Whether a row without headings begins with a moment, or with a date and then a time. */
function dataShape(cells: readonly string[]): 'whole' | 'split' | null {
  const [first = '', second = ''] = cells;
  const moment = writtenMoment(first);
  if (!moment) return null;
  if (moment.minute !== null) return 'whole';
  return clockOf(second) ? 'split' : 'whole';
}

/** A log that runs backwards is turned around, so that an hour that comes twice comes in its order. */
function ascending(dated: readonly DatedRow[], order: DateOrder): readonly DatedRow[] {
  const at = ({ moment }: DatedRow) => (dayIn(moment, order) ?? 0) * DAY_MINUTES + (moment.minute ?? 0);
  const falls = dated.slice(1).filter((each, index) => at(each) < at(dated[index] ?? each)).length;
  return falls > dated.length / 2 ? dated.toReversed() : dated;
}

function sortedOnce(readings: readonly GaugeReading[]): readonly GaugeReading[] {
  return readings
    .toSorted((a, b) => a.utcMinute - b.utcMinute)
    .filter((each, index, all) => index === 0 || each.utcMinute - (all[index - 1]?.utcMinute ?? 0) > 1e-6);
}
