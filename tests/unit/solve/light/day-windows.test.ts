import { describe, expect, it } from 'vitest';
import { isoDateOf } from '../../../../src/basics/calendar-day.ts';
import { dayWindows } from '../../../../src/solve/light/day-windows.ts';
import { enclosure, hours, seasonal, shelfCare } from '../../../generated/shelf-care.ts';

describe('the day of an enclosure', () => {
  it('is the target of each month’s 15th about midday where no dial switches it', () => {
    const care = shelfCare({ devices: [], enclosures: [enclosure('fern', hours(700), [])] });
    const days = dayWindows(care, [], 'fern');
    expect([days.clock, days.device, days.windows.length]).toEqual(['standard', null, 365]);
    expect(days.windows[40]).toEqual({ onMinute: 430, offMinute: 1130 });
  });

  it('changes with the months only', () => {
    const care = shelfCare({ devices: [], enclosures: [enclosure('fern', seasonal(600, 840), [])] });
    const { windows } = dayWindows(care, [], 'fern');
    const changes = windows.flatMap((window, day) =>
      day > 0 && window !== windows[day - 1] ? [isoDateOf(care.plan.from + day)] : [],
    );
    expect(changes).toHaveLength(11);
    expect(changes.every((date) => date.endsWith('-01'))).toBe(true);
  });
});
