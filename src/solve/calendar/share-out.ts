/** Shares out the dates that several parts hold, so that each date falls to one and every part is still a rule. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { type Part, partOf } from './rule-steps.ts';

/** Sharings tried before the cover is given up; beyond it the folding is not proven to be the smallest. */
const MOST_TRIALS = 20_000;

interface Sharing {
  readonly dates: readonly EpochDay[];
  readonly parts: number;
  /** The parts that may take a date, by its position. */
  readonly holders: readonly (readonly number[])[];
  /** The part that has it; -1 where that is open. */
  readonly owners: number[];
  trials: number;
}

/**
 * Returns the parts, null where there are none, or `unknown` where too many sharings were tried; `sets` are positions in `dates`
 * and cover them all.
 */
export function shareOut(
  dates: readonly EpochDay[],
  sets: readonly (readonly number[])[],
): readonly Part[] | 'unknown' | null {
  const holders = dates.map((_, index) => sets.flatMap((set, at) => (set.includes(index) ? [at] : [])));
  const owners = holders.map((of) => (of.length === 1 ? (of[0] ?? 0) : -1));
  const sharing = { dates, parts: sets.length, holders, owners, trials: 0 };
  const settled = sets.map((_, part) => part).filter((part) => isSettled(sharing, part));
  if (settled.some((part) => !isRule(sharing, part))) return null;
  return assign(sharing, 0) ?? (sharing.trials > MOST_TRIALS ? 'unknown' : null);
}

function assign(sharing: Sharing, from: number): readonly Part[] | null {
  const { owners, holders } = sharing;
  const next = owners.indexOf(-1, from);
  if (next < 0) return allParts(sharing);
  const candidates = holders[next] ?? [];
  for (const owner of candidates) {
    sharing.trials += 1;
    if (sharing.trials > MOST_TRIALS) break;
    owners[next] = owner;
    const settled = candidates.filter((part) => isSettled(sharing, part));
    const parts = settled.every((part) => isRule(sharing, part)) ? assign(sharing, next + 1) : null;
    if (parts) return parts;
  }
  owners[next] = -1;
  return null;
}

/** Whether no date that the part may take is still open. */
function isSettled({ owners, holders }: Sharing, part: number): boolean {
  return owners.every((owner, index) => owner !== -1 || !holders[index]?.includes(part));
}

function isRule(sharing: Sharing, part: number): boolean {
  const days = daysOf(sharing, part);
  return days.length === 0 || partOf(days) !== null;
}

function daysOf({ dates, owners }: Sharing, part: number): readonly EpochDay[] {
  return dates.filter((_, index) => owners[index] === part);
}

function allParts(sharing: Sharing): readonly Part[] {
  return Array.from({ length: sharing.parts }, (_, part) => partOf(daysOf(sharing, part))).filter(
    (part) => part !== null,
  );
}
