import { describe, expect, it } from 'vitest';
import { Log } from '../../../../src/diagnostics/log.ts';
import type { PinDial } from '../../../../src/hardware/devices.ts';
import { compareErrors, errorsOf } from '../../../../src/solve/light/arrangement-errors.ts';
import { historyOf } from '../../../../src/solve/light/dial-history.ts';
import { polishedArrangement } from '../../../../src/solve/light/polished-arrangement.ts';
import { Seats } from '../../../../src/solve/light/seats.ts';
import { ShelfBound } from '../../../../src/solve/light/shelf-bound.ts';
import { ShelfCosts } from '../../../../src/solve/light/shelf-costs.ts';
import { shelfLamps } from '../../../../src/solve/light/shelf-lamp.ts';
import { solveLighting } from '../../../../src/solve/lighting.ts';
import { enclosure, hours, lamp, pinDial, shelfCare } from '../../../generated/shelf-care.ts';

const DIALS: readonly PinDial[] = [
  pinDial('a', { outlets: 3 }),
  pinDial('b', { outlets: 3 }),
  pinDial('c', { outlets: 3 }),
];

function shelfOf(minutes: readonly number[]) {
  const enclosures = minutes.map((each, index) => enclosure(`e${index}`, hours(each), [lamp('day')]));
  const care = shelfCare({ plan: { days: 40 }, devices: DIALS, enclosures });
  const { dayTargets } = solveLighting(care, null, care.plan.from, new Log());
  const timers = DIALS.map((timer) => ({ timer, fixed: [], freeOutlets: timer.outlets, freeWatts: timer.ratingW }));
  const seats = new Seats(timers, shelfLamps(care, dayTargets));
  const history = (timer: PinDial | Parameters<typeof historyOf>[0]) =>
    historyOf(timer, null, care.plan, care.plan.from);
  const costs = new ShelfCosts(care, history);
  const bound = new ShelfBound(care, seats, history, 0);
  const enclosing = () => ({ of: () => [], key: () => '' });
  return {
    seats,
    polished: (arrangement: readonly number[]) => polishedArrangement(seats, costs, bound, arrangement),
    errors: (arrangement: readonly number[]) => errorsOf(seats, costs, enclosing, arrangement),
  };
}

describe('an arrangement made better by single changes', () => {
  it.each([
    ['lamps exchanged', [600, 615, 600, 615, 600, 615], [0, 0, 0, 1, 1, 1], 0],
    ['a lamp moved to an empty timer', [600, 720], [0, 0], 0],
    ['a timer emptied into another', [600, 600, 600, 600, 600, 600], [0, 1, 2, 0, 1, 2], 0],
    ['nothing to be done', [600, 900, 750], [0, 1, 2], 0],
    ['never what does not fit', [600, 600, 600, 600, 720, 720, 720, 720, 720], [0, 1, 0, 1, 0, 2, 1, 2, 2], 600],
  ])('%s', (_name, minutes, arrangement, worst) => {
    const { seats, polished, errors } = shelfOf(minutes);
    const better = polished(arrangement);
    expect(seats.usedTimers()).toBe(0);
    expect(seats.placeOf.every((place) => place < 0)).toBe(true);
    expect(better.every((timer, at) => better.filter((other) => other === timer).length <= 3 || at < 0)).toBe(true);
    expect(compareErrors(errors(better), errors(arrangement))).toBeLessThanOrEqual(0);
    expect(errors(better).worstErrorTenths).toBe(worst);
  });
});
