/** Starts as near to a rhythm's places as spacing and closed times allow. */
import { DAY_MINUTES } from '../../../basics/minute-of-day.ts';
import type { Slot } from './start-grid.ts';

/**
 * Returns one slot for each place, none farther from it than `within` minutes, at least `spacing` minutes apart around the day;
 * of all such the earliest one after the other, or null where there is none. Slots and places ascend by position.
 */
export function placedNear(
  slots: readonly Slot[],
  places: readonly number[],
  within: number,
  spacing: number,
): readonly Slot[] | null {
  const firstPlace = places[0];
  if (firstPlace === undefined) return [];
  for (const first of slots) {
    if (first.position < firstPlace - within) continue;
    if (first.position > firstPlace + within) return null;
    const chosen = placedAfter(first, slots, places, within, spacing);
    const last = chosen?.[chosen.length - 1];
    const around = last ? first.position + DAY_MINUTES - last.position : 0;
    if (chosen && (chosen.length === 1 || around >= spacing)) return chosen;
  }
  return null;
}

/** Takes for each further place the earliest slot that will do. */
function placedAfter(
  first: Slot,
  slots: readonly Slot[],
  places: readonly number[],
  within: number,
  spacing: number,
): readonly Slot[] | null {
  const chosen = [first];
  let after = first.position;
  for (const place of places.slice(1)) {
    const least = Math.max(place - within, after + Math.max(spacing, 1));
    const next = slots.find((slot) => slot.position >= least);
    if (!next || next.position > place + within) return null;
    chosen.push(next);
    after = next.position;
  }
  return chosen;
}
