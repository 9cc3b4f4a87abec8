import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../src/plan/plan.ts';
import { compiledPumps, type PumpedEnclosure, pumpHousehold } from '../../../generated/pump-household.ts';

function pumpsOf({ misting }: Plan): readonly (string | null)[] {
  return misting.map(({ pump }) => pump);
}

function shared(pumps: readonly number[], enclosures: readonly PumpedEnclosure[]): Plan {
  return compiledPumps(pumpHousehold(pumps, enclosures)).plan;
}

describe('enclosures whose pump is left to auto', () => {
  it.each<[string, readonly number[], readonly PumpedEnclosure[], readonly string[]]>([
    [
      'share with those that are misted alike',
      [2, 2],
      [{ perDay: 2 }, { perDay: 4 }, { perDay: 2 }, { perDay: 4 }],
      ['pump-0', 'pump-1', 'pump-0', 'pump-1'],
    ],
    [
      'join a pump that mists alike by name',
      [3, 3],
      [{ perDay: 2, mist: 'pump-0' }, { perDay: 4, mist: 'pump-1' }, { perDay: 4 }],
      ['pump-0', 'pump-1', 'pump-1'],
    ],
    ['take no more nozzles than a pump has', [1, 2], [{ perDay: 2, nozzles: 2 }, { perDay: 2 }], ['pump-1', 'pump-0']],
    [
      'are misted by hand where no nozzle is left',
      [1, 1],
      [{ perDay: 2 }, { perDay: 2 }, { perDay: 2 }],
      ['pump-0', 'pump-1', 'by-hand'],
    ],
    [
      'share no pump in quarantine',
      [2, 2],
      [{ perDay: 2, state: 'is: quarantine, from: 2027-01-01, to: 2027-01-20' }, { perDay: 2 }],
      ['pump-0', 'pump-1'],
    ],
    [
      'share one that was in quarantine before the plan',
      [2, 2],
      [{ perDay: 2, state: 'is: quarantine, from: 2026-11-01, to: 2026-12-20' }, { perDay: 2 }],
      ['pump-0', 'pump-0'],
    ],
  ])('%s', (_name, pumps, enclosures, wanted) => {
    const plan = shared(pumps, enclosures);
    expect(pumpsOf(plan)).toEqual(wanted);
    expect(plan.auto).toMatchObject([{ kind: 'pumps', isProven: true, levels: [{ value: 0, atLeast: 0 }, {}] }]);
  });

  it('stay on it at the next run, and are told of it as before', () => {
    const text = pumpHousehold([2, 2], [{ perDay: 2 }, { perDay: 4 }, { perDay: 2 }, { perDay: 2, nozzles: 2 }]);
    const { plan } = compiledPumps(text);
    const moved = {
      ...plan,
      misting: plan.misting.map((each) => ({ ...each, pump: each.enclosure === 'e3' ? 'by-hand' : 'pump-1' })),
    };
    const again = compiledPumps(text, moved, '2027-01-10').plan;
    expect(pumpsOf(again)).toEqual(['pump-1', 'pump-1', 'pump-1', 'by-hand']);
    expect(again.auto).toEqual(plan.auto);
    const changed = compiledPumps(text.replace('power: 30 W', 'power: 31 W'), moved, '2027-01-10').plan;
    expect(pumpsOf(changed)).toEqual(pumpsOf(plan));
  });
});
