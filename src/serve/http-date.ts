/** Dates in HTTP headers. Source: RFC 9110, section 5.6.7. */

const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
const TIME = String.raw`(\d{2}):(\d{2}):(\d{2})`;
const PREFERRED = new RegExp(String.raw`^[A-Z][a-z]{2}, (\d{2}) ([A-Z][a-z]{2}) (\d{4}) ${TIME} GMT$`);
const OLD = new RegExp(String.raw`^[A-Z][a-z]{5,8}, (\d{2})-([A-Z][a-z]{2})-(\d{2}) ${TIME} GMT$`);
const OLDEST = new RegExp(String.raw`^[A-Z][a-z]{2} ([A-Z][a-z]{2}) ([ \d]\d) ${TIME} (\d{4})$`);

/** Returns an instant in milliseconds since 1970 in the preferred form, whole seconds. */
export function httpDate(ms: number): string {
  return new Date(Math.floor(ms / 1000) * 1000).toUTCString();
}

/** Returns the seconds since 1970 of a date in any of the three forms; null where it is none. */
export function parseHttpDate(text: string): number | null {
  const preferred = PREFERRED.exec(text);
  if (preferred) return secondsOf(preferred.slice(3), preferred[2], preferred[1], preferred[3]);
  const old = OLD.exec(text);
  if (old) return secondsOf(old.slice(3), old[2], old[1], fullYear(Number(old[3])));
  const oldest = OLDEST.exec(text);
  if (oldest) return secondsOf(oldest.slice(2), oldest[1], oldest[2]?.trim(), oldest[6]);
  return null;
}

/** Two digits stand for a year from 1970 to 2069. */
function fullYear(year: number): string {
  return String(year < 70 ? 2000 + year : 1900 + year);
}

function secondsOf(
  [, hours, minutes, seconds]: readonly (string | undefined)[],
  monthName: string | undefined,
  dayOfMonth: string | undefined,
  year: string | undefined,
): number | null {
  const month = MONTHS.indexOf(monthName ?? '');
  const [day, h, m, s] = [Number(dayOfMonth), Number(hours), Number(minutes), Number(seconds)];
  if (month < 0 || h > 23 || m > 59 || s > 60) return null;
  const date = new Date(0);
  date.setUTCFullYear(Number(year), month, day);
  if (date.getUTCMonth() !== month) return null;
  return date.getTime() / 1000 + h * 3600 + m * 60 + s;
}
