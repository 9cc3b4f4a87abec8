import { describe, expect, it } from 'vitest';
import { Log } from '../../../../src/diagnostics/log.ts';
import { historyOf } from '../../../../src/solve/light/dial-history.ts';
import { ShelfCosts } from '../../../../src/solve/light/shelf-costs.ts';
import { shelfLamps } from '../../../../src/solve/light/shelf-lamp.ts';
import { solveLighting } from '../../../../src/solve/lighting.ts';
import { enclosure, lamp, pinDial, seasonal, shelfCare } from '../../../generated/shelf-care.ts';

const DIAL = pinDial('dial');

/** A lamp, and the same with another that asks for a little more, under a tolerance alone. */
function pairOf(swingMinutes: number) {
  const care = shelfCare({
    plan: { toleranceMinutes: 20 },
    devices: [DIAL],
    enclosures: [0, 2].map((more) =>
      enclosure(`e${more}`, seasonal(600 + more, 600 + more + swingMinutes), [lamp('day')]),
    ),
  });
  const lamps = shelfLamps(care, solveLighting(care, null, care.plan.from, new Log()).dayTargets);
  return { lamps, costs: new ShelfCosts(care, (timer) => historyOf(timer, null, care.plan, care.plan.from)) };
}

describe('what lamps cost on a timer', () => {
  it('is bounded from below even where one more lamp brings more settings, and so a smaller error', () => {
    let better = 0;
    for (let swing = 40; swing <= 200; swing += 4) {
      const { lamps, costs } = pairOf(swing);
      const [alone, both] = [costs.dayErrors(DIAL, lamps.slice(0, 1)), costs.dayErrors(DIAL, lamps)];
      if (both.worstErrorTenths < alone.worstErrorTenths) better++;
      expect(costs.dayBound(DIAL, lamps.slice(0, 1)), `${swing} min`).toBeLessThanOrEqual(both.worstErrorTenths);
      for (const one of lamps) expect(costs.aloneSum(DIAL, one)).toBeLessThanOrEqual(both.sumErrorTenths);
    }
    expect(better).toBeGreaterThan(0);
  });
});
