/** Shares out the dates that several parts hold, so that each date falls to one and every part is still a rule. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { type Part, partOf } from './rule-steps.ts';

/** Sharings tried before the cover is given up; beyond it the folding is not proven to be the smallest. */
const MOST_TRIALS = 4096;

/**
 * Returns the parts, null where there are none, or `unknown` where too many sharings were tried; `sets` are positions in `dates`
 * and cover them all.
 */
export function shareOut(
  dates: readonly EpochDay[],
  sets: readonly (readonly number[])[],
): readonly Part[] | 'unknown' | null {
  const holders = dates.map((_, index) => sets.flatMap((set, at) => (set.includes(index) ? [at] : [])));
  const trials = { left: MOST_TRIALS };
  const owners = holders.map((of) => (of.length === 1 ? (of[0] ?? 0) : -1));
  return assign(dates, sets.length, holders, owners, 0, trials) ?? (trials.left > 0 ? null : 'unknown');
}

function assign(
  dates: readonly EpochDay[],
  count: number,
  holders: readonly (readonly number[])[],
  owners: number[],
  from: number,
  trials: { left: number },
): readonly Part[] | null {
  const next = owners.indexOf(-1, from);
  if (next < 0) return partsOf(dates, count, owners, trials);
  for (const owner of holders[next] ?? []) {
    owners[next] = owner;
    const parts = trials.left > 0 ? assign(dates, count, holders, owners, next + 1, trials) : null;
    if (parts) return parts;
  }
  owners[next] = -1;
  return null;
}

function partsOf(
  dates: readonly EpochDay[],
  count: number,
  owners: readonly number[],
  trials: { left: number },
): readonly Part[] | null {
  trials.left -= 1;
  const parts: Part[] = [];
  for (let part = 0; part < count; part += 1) {
    const days = dates.filter((_, index) => owners[index] === part);
    const found = partOf(days);
    if (!found && days.length > 0) return null;
    if (found) parts.push(found);
  }
  return parts;
}
