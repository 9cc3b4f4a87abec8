/** Shelves of alike dials and lamps on `auto`, every enclosure with a day of its own kind; our own invention. */
import type { Care, Photoperiod } from '../../src/resolve/care.ts';
import type { LampTimer } from '../../src/solve/light/dial-group.ts';
import { historyOf } from '../../src/solve/light/dial-history.ts';
import { Seats } from '../../src/solve/light/seats.ts';
import { ShelfBound } from '../../src/solve/light/shelf-bound.ts';
import { type DayTargets, shelfLamps } from '../../src/solve/light/shelf-lamp.ts';
import { Choices } from './random.ts';
import { edges, enclosure, lamp, pinDial, seasonal, shelfCare } from './shelf-care.ts';

export interface ShelfSize {
  readonly enclosures: number;
  readonly dials: number;
  /** Different days; enclosures take turns. */
  readonly kinds: number;
  readonly outlets: number;
  readonly settingsAtMost: number;
  /** From the shortest to the longest day of a kind. */
  readonly swingMinutes: readonly [number, number];
  /** Gives three kinds in five a basking lamp too. */
  readonly basks: boolean;
}

export function alikeShelf(seed: number, size: ShelfSize): Care {
  const choices = new Choices(seed * 7919 + 13);
  const kinds = Array.from({ length: size.kinds }, () => ({
    day: dayBetween(choices.between(540, 700), choices.between(...size.swingMinutes)),
    basking: edges(choices.between(0, 6) * 10, choices.between(0, 6) * 10),
    basks: choices.chance(0.6),
  }));
  return shelfCare({
    plan: { changeOn: ['sat', 'sun'], settingsAtMost: size.settingsAtMost, atLeastBetweenDays: 14 },
    devices: Array.from({ length: size.dials }, (_, index) =>
      pinDial(`dial-${index}`, { outlets: size.outlets, ratingW: 3000 }),
    ),
    enclosures: Array.from({ length: size.enclosures }, (_, index) => {
      const kind = kinds[index % size.kinds] ?? { day: seasonal(600, 800), basking: edges(0, 0), basks: false };
      const bask = size.basks && kind.basks ? [lamp('bask', { kind: 'halogen', uses: ['basking'], powerW: 50 })] : [];
      return enclosure(`e${index}`, kind.day, [lamp('day'), ...bask], { basking: kind.basking });
    }),
  });
}

function dayBetween(shortestMinutes: number, swingMinutes: number): Photoperiod {
  return seasonal(shortestMinutes, shortestMinutes + swingMinutes);
}

/** The bound of a shelf on which every lamp is on `auto` and nothing stood before. */
export function boundOfShelf(care: Care, days: DayTargets): ShelfBound {
  const timers = care.devices.flatMap((device): readonly LampTimer[] =>
    device.kind === 'pin-dial' || device.kind === 'programmable-timer' ? [device] : [],
  );
  const seats = new Seats(
    timers.map((timer) => ({ timer, fixed: [], freeOutlets: timer.outlets, freeWatts: timer.ratingW })),
    shelfLamps(care, days),
  );
  return new ShelfBound(care, seats, (timer) => historyOf(timer, null, care.plan, care.plan.from), 0);
}
