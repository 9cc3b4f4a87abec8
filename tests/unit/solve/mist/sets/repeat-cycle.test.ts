import { describe, expect, it } from 'vitest';
import { runsOf } from '../../../../../src/solve/mist/sets/repeat-cycle.ts';

describe('what a repeat-cycle timer runs', () => {
  it('starts with ON when its dial switches it on, again after each period', () => {
    const runs = runsOf({ onSeconds: 60, periodMinutes: 180, phaseMinute: null }, [{ onMinute: 450, offMinute: 1000 }]);
    expect(runs.map(({ startMinute }) => startMinute)).toEqual([450, 630, 810, 990]);
  });

  it('cuts the last run where the dial switches it off', () => {
    const runs = runsOf({ onSeconds: 300, periodMinutes: 60, phaseMinute: null }, [{ onMinute: 0, offMinute: 62 }]);
    expect(runs).toEqual([
      { startMinute: 0, seconds: 300 },
      { startMinute: 60, seconds: 120 },
    ]);
  });

  it('starts anew with each window', () => {
    const windows = [
      { onMinute: 400, offMinute: 500 },
      { onMinute: 1000, offMinute: 1090 },
    ];
    const runs = runsOf({ onSeconds: 30, periodMinutes: 90, phaseMinute: null }, windows);
    expect(runs.map(({ startMinute }) => startMinute)).toEqual([400, 490, 1000]);
  });

  it('runs round the clock from when it was plugged in, where nothing switches its power', () => {
    const runs = runsOf({ onSeconds: 30, periodMinutes: 480, phaseMinute: 120 }, null);
    expect(runs.map(({ startMinute }) => startMinute)).toEqual([120, 600, 1080]);
  });
});
