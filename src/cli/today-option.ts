import type { Today } from '../basics/today.ts';
import { checkNamedDate } from './named-date.ts';
import type { World } from './world.ts';

/** Returns the day to take as today; throws UsageError where the text is no date. */
export function todayOf(text: string | undefined, world: World): Today {
  if (text === undefined) return { nowMs: world.nowMs() };
  checkNamedDate('--today', text);
  return { date: text };
}
