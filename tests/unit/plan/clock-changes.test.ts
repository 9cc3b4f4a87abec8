import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import { zoneOffsets } from '../../../src/basics/zone.ts';
import { jobAfterPowerCut, jobAtClockChange, type Timekeeping, wallChanges } from '../../../src/plan/clock-changes.ts';

const from = epochDay('2027-01-01');
const to = epochDay('2027-12-31');

function changesIn(zone: string) {
  return wallChanges(zoneOffsets(zone, from, 365), from, to);
}

describe('changes of the wall clock', () => {
  it('tell date, direction, minutes and both times', () => {
    expect(changesIn('Europe/Madrid')).toEqual([
      {
        date: '2027-03-28',
        direction: 'forward',
        minutes: 60,
        from: '02:00',
        to: '03:00',
        atMidnight: false,
        aheadOfStandardMinutes: 60,
      },
      {
        date: '2027-10-31',
        direction: 'back',
        minutes: 60,
        from: '03:00',
        to: '02:00',
        atMidnight: false,
        aheadOfStandardMinutes: 0,
      },
    ]);
  });

  it('are half an hour on Lord Howe, southern and of other dates in Sydney', () => {
    expect(changesIn('Australia/Lord_Howe').map(({ minutes, from: old, to: now }) => [minutes, old, now])).toEqual([
      [30, '02:00', '01:30'],
      [30, '02:00', '02:30'],
    ]);
    expect(changesIn('Australia/Sydney').map(({ date, direction }) => [date, direction])).toEqual([
      ['2027-04-04', 'back'],
      ['2027-10-03', 'forward'],
    ]);
  });

  it('at midnight stand on the date that is longer or shorter', () => {
    expect(
      changesIn('America/Havana').map(({ date, from: old, to: now, atMidnight }) => [date, old, now, atMidnight]),
    ).toEqual([
      ['2027-03-14', '00:00', '01:00', true],
      ['2027-11-07', '01:00', '00:00', false],
    ]);
    expect(
      changesIn('America/Santiago').map(({ date, from: old, to: now, atMidnight }) => [date, old, now, atMidnight]),
    ).toEqual([
      ['2027-04-03', '24:00', '23:00', true],
      ['2027-09-05', '00:00', '01:00', true],
    ]);
  });

  it('are none where the clocks stay', () => {
    expect(changesIn('America/Phoenix')).toEqual([]);
  });

  it('lie within the dates asked for, both included', () => {
    const offsets = zoneOffsets('Europe/Madrid', from, 365);
    const day = epochDay('2027-03-28');
    expect(wallChanges(offsets, day, day)).toHaveLength(1);
    expect(wallChanges(offsets, day + 1, day + 30)).toEqual([]);
    expect(wallChanges(offsets, day - 30, day - 1)).toEqual([]);
  });
});

const DIAL: Timekeeping = { kind: 'pin-dial', clock: 'wall', turnsInDays: 1, keepsTime: null };
const TIMER: Timekeeping = { kind: 'programmable-timer', clock: 'wall', turnsInDays: 1, keepsTime: true };
const PULSE: Timekeeping = { kind: 'repeat-cycle-timer', clock: null, turnsInDays: 1, keepsTime: null };

describe('what a change asks of a timer', () => {
  it('is to turn a wall-time dial on, by the hour or by all but the hour', () => {
    expect(jobAtClockChange(DIAL, { direction: 'forward', minutes: 60 })).toEqual({ do: 'turn-on', minutes: 60 });
    expect(jobAtClockChange(DIAL, { direction: 'back', minutes: 60 })).toEqual({ do: 'turn-on', minutes: 1380 });
    expect(jobAtClockChange({ ...DIAL, turnsInDays: 7 }, { direction: 'back', minutes: 30 })).toEqual({
      do: 'turn-on',
      minutes: 10_050,
    });
  });

  it('is to set the clock of a wall-time timer, and nothing for standard time, automatic ones and repeaters', () => {
    const forward = { direction: 'forward', minutes: 60 } as const;
    expect(jobAtClockChange(TIMER, forward)).toEqual({ do: 'set-clock' });
    expect(jobAtClockChange({ ...DIAL, clock: 'standard' }, forward)).toEqual({ do: 'nothing' });
    expect(jobAtClockChange({ ...TIMER, clock: 'automatic' }, forward)).toEqual({ do: 'nothing' });
    expect(jobAtClockChange(PULSE, forward)).toEqual({ do: 'nothing' });
  });
});

describe('what a power cut asks of a timer', () => {
  it('is to turn a dial on by its minutes, on any clock; a whole turn leaves it right', () => {
    expect(jobAfterPowerCut(DIAL, 45)).toEqual({ do: 'turn-on', minutes: 45 });
    expect(jobAfterPowerCut({ ...DIAL, clock: 'standard' }, 1500)).toEqual({ do: 'turn-on', minutes: 60 });
    expect(jobAfterPowerCut({ ...DIAL, turnsInDays: 7 }, 1500)).toEqual({ do: 'turn-on', minutes: 1500 });
    expect(jobAfterPowerCut(DIAL, 1440)).toEqual({ do: 'nothing' });
    expect(jobAfterPowerCut(DIAL, 0)).toEqual({ do: 'nothing' });
  });

  it('is to set a clock that is not kept, and to start a repeater at its hour', () => {
    expect(jobAfterPowerCut(TIMER, 45)).toEqual({ do: 'nothing' });
    expect(jobAfterPowerCut({ ...TIMER, keepsTime: false }, 45)).toEqual({ do: 'set-clock' });
    expect(jobAfterPowerCut(PULSE, 1)).toEqual({ do: 'plug-in-again' });
  });
});
