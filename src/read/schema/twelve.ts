/** Values by month. */
import { type Field, isRawMap, list, pick } from '../field.ts';

/** Twelve values, January first. */
export function twelve(item: Field<number>, example: string): Field<readonly number[]> {
  const months = list(item, example, 0);
  return pick(
    () => months,
    () => [months],
    (raw, say) => {
      if (Array.isArray(raw) && raw.length !== 12) say('not-twelve', { found: raw.length });
    },
  );
}

/** One value for the whole year, or twelve. */
export function oneOrTwelve(item: Field<number>, example: string): Field<number | readonly number[]> {
  const months = twelve(item, example);
  return pick<number | readonly number[]>(
    (raw) => (Array.isArray(raw) || isRawMap(raw) ? months : item),
    () => [item, months],
  );
}
