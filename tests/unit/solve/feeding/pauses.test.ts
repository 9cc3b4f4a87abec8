import { expect, it } from 'vitest';
import { isoDateOf } from '../../../../src/basics/calendar-day.ts';
import { fastingSpans } from '../../../../src/solve/feeding/pauses.ts';
import { careOf, insects } from '../../../generated/solved-feeding.ts';

it('a rest begins its fast on the day after the last feed and ends it on its own last day', () => {
  const lines =
    'rest: { kind: fast, from: 2027-11-01, weeks: 6, ramp: 1 weeks, last_feed: 14 days, checked_by_vet: 2027-10-01 }';
  const enclosure = careOf({ enclosure: insects([lines]) }).enclosures[0];
  const fasts = enclosure ? fastingSpans(enclosure, 'insects') : [];
  expect(fasts.map(({ from, to }) => [isoDateOf(from), isoDateOf(to)])).toEqual([['2027-10-19', '2027-12-12']]);
});
