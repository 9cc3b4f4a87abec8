import { describe, expect, it } from 'vitest';
import { handoverIcs } from '../../../../src/emit/ics/handover-ics.ts';
import { emitIcs } from '../../../../src/emit/ics/ics.ts';
import { withEvents } from '../../../generated/calendar-plan.ts';
import { ownList } from '../../../generated/own-list.ts';
import { steadyYear } from '../../../generated/steady-year.ts';

const plan = withEvents(steadyYear(), null);

function field(text: string, name: string): readonly string[] {
  return [...text.replaceAll('\r\n ', '').matchAll(new RegExp(`^${name}[^:]*:(.*)\\r$`, 'gm'))].map(
    (match) => match[1] ?? '',
  );
}

describe('the calendar of a hand-over', () => {
  it.each([
    ['2027-03-05', '2027-03-14'],
    ['2027-06-01', '2027-06-03'],
  ])('from %s to %s has every job of these dates, one event each', (from, to) => {
    const text = handoverIcs(plan, from, to);
    const own = ownList(plan.events.filter(({ kind }) => kind !== 'away')).filter(
      ({ start }) => start >= from && start.slice(0, 10) <= to,
    );
    const starts = field(text.slice(text.indexOf('BEGIN:VEVENT')), 'DTSTART').map((start) => start.slice(0, 8));
    expect(starts).toEqual(own.map(({ start }) => start.slice(0, 10).replaceAll('-', '')).sort());
    expect(field(text, 'RRULE').filter((rule) => !rule.startsWith('FREQ=YEARLY'))).toEqual([]);
    expect(new Set(field(text, 'UID')).size).toBe(own.length);
  });

  it('has identities of its own, and no word of the keeper being away', () => {
    const text = handoverIcs(plan, '2027-03-05', '2027-03-14');
    const subscribed = new Set(field(emitIcs(plan, 'keeper', 'subscribe'), 'UID'));
    expect(field(text, 'UID').filter((uid) => subscribed.has(uid))).toEqual([]);
    expect(text).not.toContain('Away until');
    expect(text).toContain('NAME:Reading room: 2027-03-05 – 2027-03-14');
  });

  it('is a whole calendar where nothing is to be done', () => {
    expect(handoverIcs(plan, '2030-01-01', '2030-01-02')).not.toContain('VEVENT');
  });
});
