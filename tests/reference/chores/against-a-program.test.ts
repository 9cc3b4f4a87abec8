/** Gathering against an independent formulation: the program of `mixed-integer.ts`. Computed; no published source. */
import { describe, expect, it } from 'vitest';
import { gather } from '../../../src/solve/chores/gather.ts';
import { drawInstance } from './chore-instances.ts';
import { leastCost, leastNewDays, OFF } from './mixed-integer.ts';

describe('gathering against a program', () => {
  const instances = Array.from({ length: 14 }, (_, index) => drawInstance(77_000 + index, 63, 4)).filter(({ chains }) =>
    chains.every(({ length }) => length > 0),
  );

  it('needs as few further days, and stands as well on them', () => {
    let further = 0;
    for (const instance of instances) {
      const gathered = gather(instance);
      expect(gathered.isProven).toBe(true);
      const fewest = leastNewDays(instance);
      expect(gathered.newDays.length).toBe(fewest);
      const cost = gathered.days
        .flatMap((days, c) => days.map((day, i) => ({ day, due: instance.chains[c]?.[i]?.due ?? 0 })))
        .reduce((sum, { day, due }) => sum + (instance.isPreferred(day) ? 0 : OFF) + Math.abs(day - due), 0);
      expect(cost).toBe(leastCost(instance, fewest));
      further += fewest;
    }
    console.info(`gathering: ${instances.length} instances of nine weeks equal HiGHS, ${further} further days in all`);
    expect(further).toBeGreaterThan(50);
  });
});
