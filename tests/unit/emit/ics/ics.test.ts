import { describe, expect, it } from 'vitest';
import { emitIcs } from '../../../../src/emit/ics/ics.ts';
import { icsFiles } from '../../../../src/emit/ics/ics-files.ts';
import type { Plan, PlanEvent } from '../../../../src/plan/plan.ts';
import { generatedParts } from '../../../generated/calendar-plan.ts';
import { MADRID_OFFSETS } from '../../../generated/offsets-of-2027.ts';
import { PLAIN_EVENT } from '../../../generated/plain-plan.ts';

const EVENT: PlanEvent = {
  ...PLAIN_EVENT,
  uid: '0123456789abcdef0123456789abcdef@dewdial',
  sequence: 3,
  stamp: '2027-02-01T00:00:00Z',
  status: 'CONFIRMED',
  start: '2027-03-26T08:15',
};

/** Madrid, whose summer time begins on 28 March 2027 at 01:00 UTC. */
const madrid: Plan = {
  ...generatedParts(0),
  name: 'Reading room',
  language: 'en',
  site: {
    ...generatedParts(0).site,
    standardOffsetMinutes: 60,
    offsets: MADRID_OFFSETS,
  },
};

function lines(
  change: Partial<PlanEvent>,
  plan: Partial<Plan> = {},
  kind: 'subscribe' | 'import' = 'subscribe',
): readonly string[] {
  const text = emitIcs({ ...madrid, ...plan, events: [{ ...EVENT, ...change }] }, 'keeper', kind);
  return text.replaceAll('\r\n ', '').split('\r\n');
}

describe('a calendar file', () => {
  it('says of one event what the plan says, in this form', () => {
    const text = lines({ description: 'Portion: 5', alarmMinutes: 15 });
    expect(text.slice(text.indexOf('BEGIN:VEVENT'))).toEqual([
      'BEGIN:VEVENT',
      'UID:0123456789abcdef0123456789abcdef@dewdial',
      'SEQUENCE:3',
      'DTSTAMP:20270201T000000Z',
      'DTSTART;TZID=Europe/Madrid:20270326T081500',
      'DTEND;TZID=Europe/Madrid:20270326T082500',
      'SUMMARY:Feed Fern',
      'TRANSP:TRANSPARENT',
      'DESCRIPTION:Portion: 5',
      'CATEGORIES:feed',
      'STATUS:CONFIRMED',
      'LAST-MODIFIED:20270201T000000Z',
      'BEGIN:VALARM',
      'ACTION:DISPLAY',
      'TRIGGER:-PT15M',
      'DESCRIPTION:Feed Fern',
      'END:VALARM',
      'END:VEVENT',
      'END:VCALENDAR',
      '',
    ]);
  });

  it.each([
    ['a winter end', { until: '2027-03-27T08:15' }, 'UNTIL=20270327T191500Z'],
    ['a summer end', { until: '2027-03-28T08:15' }, 'UNTIL=20270328T181500Z'],
    ['an end in the skipped hour', { until: '2027-03-28T02:30' }, 'UNTIL=20270328T133000Z'],
    ['an end past midnight', { start: '2027-03-26T23:50', until: '2027-04-02T23:50' }, 'UNTIL=20270403T095000Z'],
    ['an all-day end', { allDay: true, start: '2027-03-26', until: '2027-04-02' }, 'UNTIL=20270402'],
  ] as const)('ends a rule with %s half a day after its last time', (_name, change, until) => {
    expect(lines({ rule: 'FREQ=DAILY', ...change })).toContain(`RRULE:FREQ=DAILY;${until}`);
  });

  it('excepts dates in the form of the start', () => {
    const timed = lines({
      rule: 'FREQ=DAILY',
      until: '2027-04-10T08:15',
      exdates: ['2027-03-27T08:15', '2027-04-01T08:15'],
    });
    const daily = lines({
      allDay: true,
      start: '2027-03-26',
      minutes: 1440,
      rule: 'FREQ=DAILY',
      until: '2027-04-10',
      exdates: ['2027-03-27'],
    });
    expect(timed).toContain('EXDATE;TZID=Europe/Madrid:20270327T081500,20270401T081500');
    expect(daily).toContain('EXDATE;VALUE=DATE:20270327');
    expect(daily.some((line) => line.includes('TZID'))).toBe(false);
  });

  it('ends an all-day event on the date after its last', () => {
    const one = lines({ allDay: true, start: '2027-12-31', minutes: 1440 });
    const ten = lines({ allDay: true, start: '2027-02-25', minutes: 14_400 });
    expect(one).toContain('DTEND;VALUE=DATE:20280101');
    expect(ten).toContain('DTEND;VALUE=DATE:20270307');
  });

  it.each([
    ['commas; and semicolons', 'Wipe, dry; then \\ rest', 'Wipe\\, dry\\; then \\\\ rest'],
    ['a line break', 'one\r\nBEGIN:VEVENT\nUID:x', 'one BEGIN:VEVENT UID:x'],
    ['control characters', 'ring\u0007 \u0000it\u001b', 'ring it'],
    ['turned text', 'safe \u202etxt.exe', 'safe txt.exe'],
    ['other scripts', 'שטיפה 水を替える 🦎', 'שטיפה 水を替える 🦎'],
  ])('keeps a title with %s to one line', (_name, title, written) => {
    const text = lines({ title, alarmMinutes: 5 });
    expect(text.filter((line) => line === `SUMMARY:${written}`)).toHaveLength(1);
    expect(text.filter((line) => line.startsWith('UID:'))).toHaveLength(1);
    expect(text.filter((line) => line === 'BEGIN:VEVENT')).toHaveLength(1);
  });

  it("escapes the household's name, on one line", () => {
    const text = lines({}, { name: 'Reading, room;\nnext \\ door' });
    expect(text).toContain('NAME:Reading\\, room\\; next \\\\ door: keeper');
    expect(text).toContain('X-WR-CALNAME:Reading\\, room\\; next \\\\ door: keeper');
  });

  it('folds ten thousand characters of any script at 75 octets, losing none', () => {
    const title = '水🦎é'.repeat(3333);
    const text = emitIcs({ ...madrid, events: [{ ...EVENT, title }] }, 'keeper', 'subscribe');
    const octets = text.split('\r\n').map((line) => Buffer.byteLength(line));
    expect(Math.max(...octets)).toBeLessThanOrEqual(75);
    expect(octets.filter((size) => size >= 72).length).toBeGreaterThan(300);
    expect(text.replaceAll('\r\n ', '')).toContain(`SUMMARY:${title}\r\n`);
  });

  it('brings a cancelled event to importers alone, without its alarm', () => {
    const imported = lines({ status: 'CANCELLED', alarmMinutes: 15 }, {}, 'import');
    expect(imported).toContain('STATUS:CANCELLED');
    expect(imported).not.toContain('BEGIN:VALARM');
    expect(lines({ status: 'CANCELLED' })).not.toContain('BEGIN:VEVENT');
  });

  it('is a whole calendar where a person has no event', () => {
    const text = emitIcs({ ...madrid, events: [EVENT] }, 'sitter', 'subscribe');
    expect(text.startsWith('BEGIN:VCALENDAR\r\nVERSION:2.0\r\n')).toBe(true);
    expect(text.endsWith('X-PUBLISHED-TTL:PT4H\r\nEND:VCALENDAR\r\n')).toBe(true);
    expect(text).not.toContain('VTIMEZONE');
  });

  it('has two files a person, also for one whom no list of people names', () => {
    const files = icsFiles({ ...madrid, events: [{ ...EVENT, for: 'neighbour' }] });
    expect(files.map(({ path }) => path)).toEqual(
      ['keeper', 'sitter', 'neighbour'].flatMap((person) => [
        `calendar/${person}.ics`,
        `calendar/${person}-import.ics`,
      ]),
    );
  });
});
