import { describe, expect, it } from 'vitest';
import { saturationDensityGPerM3 } from '../../../../../src/science/moist-air.ts';
import { reachOfCase } from '../../../../../src/solve/mist/notes/target-reach.ts';
import { caseOf, NO_TARGETS } from '../problem-of-tests.ts';

const base = caseOf();
const room = (humidity: number) => ({ ...base.air, roomVapourGPerM3: humidity * saturationDensityGPerM3(21) });

describe('targets that no mists can meet', () => {
  it('are none on an ordinary day', () => {
    expect(reachOfCase(base, 25, 20).outOfReach).toEqual([]);
  });

  it('a peak above fully wet air asks for covering, from an open share on that would do', () => {
    const one = caseOf({ targets: { ...NO_TARGETS, peak: [0.95, 1] } });
    const [miss] = reachOfCase(one, 25, 20).outOfReach;
    expect(miss).toMatchObject({ target: 'peak', edge: 0.95, remedy: 'cover' });
    const covered = { ...one, body: { ...one.body, airChangesPerHour: miss?.airChangesPerHour ?? 0 } };
    const after = reachOfCase(covered, 25, 20);
    expect(Math.max(after.day.wet, after.night.wet)).toBeCloseTo(0.95, 6);
    expect(miss?.openShare).toBeLessThan(0.33);
  });

  it('a floor above dry air is out of reach only where leaves are to dry out', () => {
    const targets = { ...NO_TARGETS, floor: 0.5 };
    expect(reachOfCase(caseOf({ targets }), 25, 20).outOfReach).toMatchObject([{ target: 'floor', remedy: 'cover' }]);
    expect(reachOfCase(caseOf({ targets, dryOut: null }), 25, 20).outOfReach).toEqual([]);
  });

  it('a room that is too humid asks for opening, or for the room itself, never for mist', () => {
    const targets = { ...NO_TARGETS, day: [0.3, 0.45] as const };
    const tight = { ...base.body, airChangesPerHour: 1 };
    expect(reachOfCase(caseOf({ targets, body: tight }), 25, 20).outOfReach).toMatchObject([
      { target: 'day', remedy: 'open' },
    ]);
    expect(reachOfCase(caseOf({ targets, air: room(0.9) }), 25, 20).outOfReach).toMatchObject([
      { target: 'day', remedy: 'room', openShare: null },
    ]);
  });

  it('a band that even a closed box cannot reach asks for the room', () => {
    const one = caseOf({ targets: { ...NO_TARGETS, peak: [0.999, 1] } });
    expect(reachOfCase(one, 25, 20).outOfReach).toMatchObject([{ target: 'peak', remedy: 'room' }]);
  });
});
