/** The form of the files, held against the standard line by line (RFC 5545, and RFC 7986 for NAME and REFRESH-INTERVAL). */
import { describe, expect, it } from 'vitest';
import { emitIcs } from '../../../src/emit/ics/ics.ts';
import { generatedPlan } from '../../generated/calendar-plan.ts';
import { loopOverDays } from '../../generated/own-list.ts';

const files = Array.from({ length: 16 }, (_, seed) => {
  const plan = generatedPlan(seed);
  return plan.people.map(({ id }) => ({
    name: `${plan.id} ${id}`,
    text: emitIcs(plan, id, 'import'),
    plan,
    person: id,
  }));
}).flat();

function unfolded(text: string): readonly string[] {
  return text.replaceAll('\r\n ', '').split('\r\n');
}

function eventsOf(text: string): readonly (readonly string[])[] {
  const blocks = [...`\r\n${unfolded(text).join('\r\n')}`.matchAll(/\r\nBEGIN:VEVENT\r\n([\s\S]*?)\r\nEND:VEVENT/g)];
  return blocks.map((block) => (block[1] ?? '').split('\r\n'));
}

function only(lines: readonly string[], name: string): string {
  const found = lines.filter((line) => line.startsWith(`${name}:`) || line.startsWith(`${name};`));
  expect(found, name).toHaveLength(1);
  return found[0] ?? '';
}

describe.each(files)('$name', ({ text, plan, person }) => {
  const events = eventsOf(text);

  it('has lines of at most 75 octets, ended by CRLF, without control characters', () => {
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/\p{Cc}|[\u202a-\u202e\u2066-\u2069]/u);
    const octets = text.split('\r\n').map((line) => Buffer.byteLength(line));
    expect(Math.max(...octets)).toBeLessThanOrEqual(75);
    expect(Buffer.from(text).toString()).toBe(text);
  });

  it('opens with what a subscriber needs, once, before any component', () => {
    const lines = unfolded(text);
    const head = lines.slice(
      0,
      lines.findIndex((line, index) => index > 0 && line.startsWith('BEGIN:')),
    );
    const names = head.map((line) => line.split(/[:;]/)[0]);
    expect(names).toEqual(
      ['BEGIN', 'VERSION', 'PRODID', 'METHOD', 'NAME', 'X-WR-CALNAME', 'REFRESH-INTERVAL', 'X-PUBLISHED-TTL'].slice(
        0,
        head.length,
      ),
    );
    expect(head).toContain('METHOD:PUBLISH');
    expect(head).toContain('REFRESH-INTERVAL;VALUE=DURATION:PT4H');
    expect(head.find((line) => line.startsWith('NAME:'))).not.toMatch(/[^\\][,;]/);
  });

  it('has one of each property in an event, and none that breaks clients', () => {
    for (const lines of events) {
      for (const name of ['UID', 'SEQUENCE', 'SUMMARY', 'TRANSP', 'CATEGORIES', 'STATUS', 'DTSTART', 'DTEND'])
        only(lines, name);
      expect(only(lines, 'DTSTAMP')).toMatch(/^DTSTAMP:\d{8}T\d{6}Z$/);
      expect(only(lines, 'LAST-MODIFIED')).toMatch(/^LAST-MODIFIED:\d{8}T\d{6}Z$/);
      expect(lines.filter((line) => /^(RDATE|RECURRENCE-ID|EXRULE)/.test(line))).toEqual([]);
      expect(lines.filter((line) => line.startsWith('RRULE')).length).toBeLessThanOrEqual(1);
      const alarm = lines.indexOf('BEGIN:VALARM');
      if (alarm >= 0) expect(lines.slice(alarm).at(-1)).toBe('END:VALARM');
    }
    expect(events.length).toBe(plan.events.filter((event) => event.for === person).length);
  });

  it('ends every rule, in the type of its start, and excepts in the same type and zone', () => {
    for (const lines of events) {
      const start = only(lines, 'DTSTART');
      const type = start.slice('DTSTART'.length, start.indexOf(':'));
      const rule = lines.find((line) => line.startsWith('RRULE'));
      const exdate = lines.find((line) => line.startsWith('EXDATE'));
      if (exdate) expect(exdate.slice('EXDATE'.length, exdate.indexOf(':'))).toBe(type);
      if (exdate) expect(rule).toBeDefined();
      if (rule) expect(rule).toMatch(type === ';VALUE=DATE' ? /;UNTIL=\d{8}$/ : /;UNTIL=\d{8}T\d{6}Z$/);
      if (rule) expect(rule).not.toContain('COUNT');
      if (rule)
        expect(rule).toMatch(/^RRULE:FREQ=(DAILY|WEEKLY;(INTERVAL=\d+;)?BYDAY=[A-Z]{2}|MONTHLY;BYMONTHDAY=\d+)?/);
      if (type !== ';VALUE=DATE')
        expect(text).toContain(`\r\nBEGIN:VTIMEZONE\r\nTZID:${type.replace(';TZID=', '')}\r\n`);
    }
  });

  it('has every start on its own rule, no event in the small hours, and each identity once', () => {
    const uids = events.map((lines) => only(lines, 'UID'));
    expect(new Set(uids).size).toBe(uids.length);
    for (const uid of uids) expect(uid).toMatch(/^UID:[0-9a-f]{32}@dewdial$/);
    for (const event of plan.events) expect(loopOverDays(event)[0]).toBe(event.start);
    const changes = plan.site.offsets.length > 1;
    const small = plan.events.filter(
      ({ allDay, start }) => !allDay && start.slice(11) >= '01:00' && start.slice(11) < '03:00',
    );
    if (changes) expect(small).toEqual([]);
  });
});

it('covers calendars with and without alarms, exceptions, rules of all three kinds and times of day', () => {
  const all = files.map(({ text }) => unfolded(text).join('\n')).join('\n');
  for (const part of [
    'BEGIN:VALARM',
    'EXDATE;VALUE=DATE:',
    'EXDATE;TZID=',
    'FREQ=DAILY',
    'FREQ=WEEKLY',
    'FREQ=MONTHLY',
    'DTSTART;TZID=',
  ]) {
    expect(all).toContain(part);
  }
  expect(files.some(({ text }) => !text.includes('BEGIN:VALARM'))).toBe(true);
});
