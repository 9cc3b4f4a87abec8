import { clockTimeOf } from '../basics/minute-of-day.ts';
import type { Words } from '../plan/words/words.ts';

/** Returns a time on both clocks, for instance `18:45 (6:45 pm)`; noon and midnight in words. */
export function bothClocks(minute: number, said: Words['pictures']): string {
  const hour = Math.floor(minute / 60);
  const twelve = `${hour % 12 === 0 ? 12 : hour % 12}:${String(minute % 60).padStart(2, '0')}`;
  const inWords =
    minute === 0
      ? said.midnight
      : minute === 720
        ? said.noon
        : hour < 12
          ? said.beforeNoon(twelve)
          : said.afterNoon(twelve);
  return `${clockTimeOf(minute)} (${inWords})`;
}
