import { afterEach, describe, expect, it, vi } from 'vitest';
import { PeriodicDay } from '../../../../../src/science/wet-enclosure.ts';
import type { MistCase } from '../../../../../src/solve/mist/day/day-problem.ts';
import { airOfPumped } from '../../../../../src/solve/mist/enclosure-air.ts';
import type { MistUnit } from '../../../../../src/solve/mist/mist-unit.ts';
import { Levers } from '../../../../../src/solve/mist/notes/levers.ts';
import { remedyWords } from '../../../../../src/solve/mist/notes/remedy-words.ts';
import { enclosure, hours, mistPump, programmableTimer, shelfCare } from '../../../../generated/shelf-care.ts';
import { caseOf, NO_TARGETS, problemOf } from '../problem-of-tests.ts';

afterEach(() => vi.restoreAllMocks());

const UNIT: MistUnit = {
  means: 'timer',
  pump: null,
  timer: null,
  supply: null,
  clock: 'wall',
  machine: problemOf().machine,
  waterAtMostG: null,
  members: [],
};
const TROUBLE = { tooDry: true, tooHumid: false, peaks: false, exceeded: [] };

/** Two mists at least, so far apart, between 07:30 and 10:00, in a room too dry for its day. */
function shortMorning(gapMinutes: number): MistCase {
  return caseOf({
    targets: { ...NO_TARGETS, day: [0.5, 0.8] },
    dryOut: null,
    drink: null,
    runOffAtMostG: null,
    cadence: { perDay: [2, 3], seconds: [15, 120], gapMinutes },
    forbidden: { starts: [], runs: [], noise: [], noMist: [{ fromMinute: 600, toMinute: 450 }] },
  });
}

describe('levers', () => {
  it('are tried on the model where the clock leaves room for the mists', () => {
    const levers = new Levers(UNIT, [shortMorning(60)], []).thatDo(TROUBLE);
    expect(levers.map(({ kind }) => kind)).toContain('damp-floor');
  });

  it('are not searched where no mists keep the gap, whatever the air', () => {
    const simulated = vi.spyOn(PeriodicDay.prototype, 'simulate');
    expect(new Levers(UNIT, [shortMorning(600)], []).thatDo(TROUBLE)).toEqual([]);
    expect(simulated.mock.calls.length).toBeLessThan(50);
  });
});

function memberOf(id: string, openShare: number): MistUnit['members'][number] {
  const one = enclosure(id, hours(720), [], {}, { openShare });
  return { enclosure: one, air: airOfPumped(one, mistPump('pump'), 2) };
}

const FERN = memberOf('fern', 0.33);
const MOSS = memberOf('moss', 0.08);
const SHARED: MistUnit = { ...UNIT, members: [MOSS, FERN] };

/** Fern wants more than its mesh lets it keep; moss is to be as dry as the room. */
const FERN_DAY = caseOf({ targets: { ...NO_TARGETS, night: [0.8, 0.95] }, dryOut: null, drink: null });
const MOSS_DAY = caseOf({ enclosure: 'moss', targets: { ...NO_TARGETS, day: [0.1, 0.3] }, dryOut: null, drink: null });

describe('levers behind a shared pump', () => {
  it('turn the mesh of the enclosure that misses its targets, not that of the first', () => {
    const alone = new Levers({ ...UNIT, members: [FERN] }, [FERN_DAY], []).thatDo(TROUBLE);
    const shared = new Levers(SHARED, [FERN_DAY], []).thatDo(TROUBLE);
    const cover = shared.find(({ kind }) => kind === 'cover');
    expect(cover?.value).toBeLessThan(0.33);
    expect(shared).toEqual(alone);
  });

  it('are none where the mists that they ask for are not the best for all', () => {
    const kinds = new Levers(SHARED, [FERN_DAY], [], [MOSS_DAY]).thatDo(TROUBLE).map(({ kind }) => kind);
    expect(kinds).not.toContain('cover');
  });

  it('are told with the enclosure', () => {
    const care = shelfCare({ devices: [], enclosures: [] });
    const lever = { kind: 'open', value: 0.4, waterG: 90, entries: [], besides: null } as const;
    const say = (unit: MistUnit, kind: 'open' | 'cover') =>
      remedyWords(care, unit, FERN.enclosure, { dry: [{ ...lever, kind }], humid: [] }, false);
    expect(say(SHARED, 'open')).toBe('open the mesh of fern to 40 % (630 mL a week)');
    expect(say(SHARED, 'cover')).toBe('cover the mesh of fern until 40 % is open (630 mL a week)');
    expect(say({ ...UNIT, members: [FERN] }, 'open')).toBe('open the mesh to 40 % (630 mL a week)');
  });
});

describe('a finer timer', () => {
  it('is not asked for where the timer is fine enough and its pump keeps to coarse steps', () => {
    const care = shelfCare({ devices: [], enclosures: [] });
    const lever = { kind: 'timer', value: 5, waterG: 90, entries: [], besides: null } as const;
    const say = (resolutionSeconds: number) => {
      const timer = programmableTimer('timer', { resolutionSeconds, shortestSeconds: 5 });
      const unit = { ...UNIT, pump: mistPump('pump'), timer, members: [FERN] };
      return remedyWords(care, unit, FERN.enclosure, { dry: [lever], humid: [] }, false);
    };
    expect(say(1)).toBe('write start_step: 5 min and length_step: 5 s for pump');
    expect(say(60)).toMatch(/^use a timer that counts single seconds/);
  });
});
