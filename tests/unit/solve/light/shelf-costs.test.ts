import { describe, expect, it } from 'vitest';
import { historyOf } from '../../../../src/solve/light/dial-history.ts';
import { ShelfCosts } from '../../../../src/solve/light/shelf-costs.ts';
import { shelfLamps } from '../../../../src/solve/light/shelf-lamp.ts';
import { Choices } from '../../../generated/random.ts';
import { edges, enclosure, lamp, pinDial, seasonal, shelfCare } from '../../../generated/shelf-care.ts';

const DAYS = 120;

/** Two enclosures of drawn days on one dial, a basking lamp in the first. */
function drawnShelf(seed: number) {
  const choices = new Choices(seed);
  const timer = pinDial('dial', { stepMinutes: choices.oneOf([15, 30, 60]) });
  const bask = lamp('bask', { kind: 'halogen', uses: ['basking'] });
  const enclosures = ['fern', 'moss'].map((id) =>
    enclosure(id, seasonal(0, 0), id === 'fern' ? [lamp('day'), bask] : [lamp('day')], {
      basking: edges(choices.between(0, 90), choices.between(0, 90)),
    }),
  );
  const care = shelfCare({ plan: { days: DAYS, settingsAtMost: choices.between(1, 4) }, devices: [timer], enclosures });
  const targets = enclosures.map(({ id }) => {
    const [first, change] = [choices.between(5000, 8000), choices.between(-15, 15)];
    return [id, Int32Array.from({ length: DAYS }, (_, day) => first + change * day)] as const;
  });
  const lamps = shelfLamps(care, new Map(targets));
  const costs = new ShelfCosts(care, (each) => historyOf(each, null, care.plan, care.plan.from));
  const day = lamps.filter(({ target }) => target.kind === 'day');
  const part = lamps.find(({ target }) => target.kind === 'inset');
  if (!part) throw new Error('no basking lamp');
  return { timer, costs, day, part };
}

describe('bounds of what an arrangement costs', () => {
  const shelves = Array.from({ length: 12 }, (_, seed) => drawnShelf(seed + 1));

  it('are never above the errors of the day lamps as solved, nor far from them', () => {
    let [bounds, sums] = [0, 0];
    for (const { timer, costs, day } of shelves) {
      const [bound, { sumErrorTenths }] = [costs.spreadSum(day), costs.dayErrors(timer, day)];
      expect(bound).toBeLessThanOrEqual(sumErrorTenths);
      bounds += bound;
      sums += sumErrorTenths;
    }
    expect(bounds).toBeGreaterThan(sums / 2);
  });

  it('are never above the errors of a lamp that follows a day, and tell something', () => {
    let tells = 0;
    for (const { timer, costs, day, part } of shelves) {
      const [bound, errors] = [
        costs.followBound(day, costs.dayErrors(timer, day), part),
        costs.followError(timer, day, part),
      ];
      expect(bound.worstErrorTenths).toBeLessThanOrEqual(errors.worstErrorTenths);
      expect(bound.sumErrorTenths).toBeLessThanOrEqual(errors.sumErrorTenths);
      tells += bound.worstErrorTenths > 0 ? 1 : 0;
    }
    expect(tells).toBeGreaterThan(0);
  });
});
