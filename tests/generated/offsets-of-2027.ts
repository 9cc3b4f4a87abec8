/** Madrid's clocks in 2027, and those of a zone whose winter time lies below its standard, written out by hand. */
import { epochDay } from '../../src/basics/calendar-day.ts';
import type { UtcOffsets } from '../../src/basics/utc-offsets.ts';
import type { PlanSite } from '../../src/plan/plan.ts';

const DAY = 1440;

/** The dates on which Madrid's clocks go forward, at 02:00, and back, at 03:00. */
export const spring = epochDay('2027-03-28');
export const autumn = epochDay('2027-10-31');

export const MADRID: UtcOffsets = {
  zone: 'Europe/Madrid',
  standardOffsetMinutes: 60,
  spans: [
    { fromUtcMinute: epochDay('2026-10-25') * DAY + 60, offsetMinutes: 60 },
    { fromUtcMinute: spring * DAY + 60, offsetMinutes: 120 },
    { fromUtcMinute: autumn * DAY + 60, offsetMinutes: 60 },
  ],
};

/** The same as a plan has it. */
export const MADRID_OFFSETS: PlanSite['offsets'] = [
  { fromUtc: '2026-10-25T01:00Z', minutes: 60 },
  { fromUtc: '2027-03-28T01:00Z', minutes: 120 },
  { fromUtc: '2027-10-31T01:00Z', minutes: 60 },
];

/** One hour less in winter than the offset called standard, for five weeks from 28 March. */
export const WINTER_TIME: UtcOffsets = {
  zone: 'Test/Winter',
  standardOffsetMinutes: 60,
  spans: [
    { fromUtcMinute: 0, offsetMinutes: 60 },
    { fromUtcMinute: spring * DAY + 120, offsetMinutes: 0 },
    { fromUtcMinute: (spring + 35) * DAY + 120, offsetMinutes: 60 },
  ],
};
