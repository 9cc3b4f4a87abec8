/** Which column of a log holds what, by its heading in English or Spanish, or by its position. */

const ROLES = ['time', 'date', 'clock', 'humidity', 'temperature', 'mist'] as const;
export type Role = (typeof ROLES)[number];

/** Position of each column that is used, and the unit that its heading names. */
export interface Columns {
  readonly at: Readonly<Partial<Record<Role, number>>>;
  readonly units: Readonly<Partial<Record<Role, string>>>;
}

/** Names as they stand once accents, capitals, units and marks are gone. */
const NAMES: Readonly<Record<Exclude<Role, 'clock'>, RegExp>> = {
  time: /^(time ?stamp|date ?time|date and time|date time|time|when|fecha (y )?hora|fechahora|instante|momento|marca de tiempo)\b/u,
  date: /^(date|day|fecha|dia)$/u,
  humidity: /(^|\b)(humidity|relative humidity|humedad|rh|hr|rel hum|hum)(\b|$)/u,
  temperature: /(^|\b)(temp|temperature|temperatura|air temp|t|celsius|fahrenheit)(\b|$)/u,
  mist: /(^|\b)(mist|mists|misting|mister|spray|pump|niebla|nebulizacion|nebulizador|riego|rociado|pulverizacion|bomba)(\b|$)/u,
};
const CLOCK = /^(time|hour|hora|clock)$/u;
/** Quantities that share a word with what is looked for. */
const OTHER =
  /absolut|dew|rocio|room|ambient|outdoor|outside|exterior|habitacion|sala|min|max|set|target|objetivo|alarm/u;

/** Returns a heading's words and its unit; the unit is empty where none stands. */
function heading(text: string): { readonly words: string; readonly unit: string } {
  const plain = text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .toLowerCase();
  const unit = /[([]\s*([^)\]]*?)\s*[)\]]/u.exec(plain)?.[1] ?? /(%|°\s?[cf]|º\s?[cf])\s*$/u.exec(plain)?.[1] ?? '';
  const words = plain
    .replace(/[([][^)\]]*[)\]]/gu, ' ')
    .replace(/[%°º]\s?[cf]?\b/gu, ' ')
    .replace(/[_\-./:]+/gu, ' ')
    .replace(/\s+/gu, ' ')
    .trim();
  return { words, unit: unit.replace(/\s/gu, '').replace('º', '°') };
}

export type ColumnsFound =
  | { readonly ok: true; readonly columns: Columns }
  /** `several`: positions that could each be the humidity. */
  | { readonly ok: false; readonly missing: 'time' | 'humidity'; readonly several: readonly number[] };

/** Returns the columns that headings name; null where the row is no heading. */
export function columnsByHeading(cells: readonly string[]): ColumnsFound | null {
  const headings = cells.map(heading);
  const isOwn = (words: string) => !OTHER.test(words);
  const find = (pattern: RegExp): readonly number[] =>
    headings.flatMap(({ words }, index) => (pattern.test(words) && isOwn(words) ? [index] : []));
  const humidity = find(NAMES.humidity);
  const dates = find(NAMES.date);
  const clocks = find(CLOCK);
  const times = find(NAMES.time).filter((index) => dates.length === 0 || !clocks.includes(index));
  const isHeading = humidity.length + dates.length + times.length + clocks.length > 0;
  if (!isHeading || cells.some((cell) => /\d{2}[:/.-]\d{2}/u.test(cell))) return null;
  if (humidity.length !== 1) return { ok: false, missing: 'humidity', several: humidity };
  const time = times[0] ?? (dates.length > 0 && clocks.length === 0 ? dates[0] : undefined);
  if (time === undefined && dates.length === 0) return { ok: false, missing: 'time', several: [] };
  const at: Partial<Record<Role, number>> = {
    ...(time === undefined ? { ...given('date', dates[0]), ...given('clock', clocks[0]) } : { time }),
    ...given('humidity', humidity[0]),
    ...given('temperature', find(NAMES.temperature)[0]),
    ...given('mist', find(NAMES.mist)[0]),
  };
  const units = Object.fromEntries(Object.entries(at).map(([role, index]) => [role, headings[index]?.unit ?? '']));
  return { ok: true, columns: { at, units } };
}

function given(role: Role, index: number | undefined): Partial<Record<Role, number>> {
  return index === undefined ? {} : { [role]: index };
}

/** Returns the columns of a log without headings: time (or date, then time), humidity, temperature, mist. */
export function columnsByPosition(isSplit: boolean): Columns {
  return isSplit
    ? { at: { date: 0, clock: 1, humidity: 2, temperature: 3, mist: 4 }, units: {} }
    : { at: { time: 0, humidity: 1, temperature: 2, mist: 3 }, units: {} };
}

/** Returns the columns that a list of words names, `-` for one that is passed over; null where a word is none of them. */
export function columnsByList(text: string): Columns | null {
  const words = text.split(',').map((word) => word.trim().toLowerCase());
  const at: Partial<Record<Role, number>> = {};
  for (const [index, word] of words.entries()) {
    if (word === '-' || word === '') continue;
    const role = ROLES.find((each) => each === word);
    if (!role || at[role] !== undefined) return null;
    at[role] = index;
  }
  const hasTime = at.time !== undefined || at.date !== undefined;
  return hasTime && at.humidity !== undefined ? { at, units: {} } : null;
}
