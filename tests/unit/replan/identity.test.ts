import { describe, expect, it } from 'vitest';
import type { EventDraft } from '../../../src/plan/event-draft.ts';
import type { PlanEvent } from '../../../src/plan/plan.ts';
import { eventUid, identifyEvents, type Revision, type Standing } from '../../../src/replan/identity.ts';
import { PLAIN_EVENT } from '../../generated/plain-plan.ts';

const FEED: EventDraft = {
  ...PLAIN_EVENT,
  title: 'Feed Fern: 5 × cricket',
  rule: 'FREQ=DAILY;INTERVAL=2',
  until: '2027-12-31T08:15',
};
const BOWL: EventDraft = {
  ...FEED,
  title: 'Scrub the bowl',
  kind: 'chore',
  category: 'chore',
  task: 'fern/bowl',
  start: '2027-01-02',
  until: '2027-12-31',
  allDay: true,
  minutes: 1440,
};

function revision(number: number, day: string): Revision {
  return { planId: 'reading-room', number, made: day, from: day, timezone: 'Europe/Madrid' };
}

function standing(events: readonly PlanEvent[], made: string): Standing {
  return { events, made, timezone: 'Europe/Madrid' };
}

const first = identifyEvents([FEED, BOWL], null, revision(1, '2027-01-01'));
const stands = standing(first, '2027-01-01');

function of(events: readonly PlanEvent[], task: string): readonly PlanEvent[] {
  return events.filter((event) => event.task === task);
}

/** Plans a list of drafts on the days given, each after the one before. */
function replanned(...steps: readonly (readonly [string, readonly EventDraft[]])[]): readonly (readonly PlanEvent[])[] {
  const results: (readonly PlanEvent[])[] = [];
  let earlier: Standing | null = null;
  for (const [index, [day, drafts]] of steps.entries()) {
    const events = identifyEvents(drafts, earlier, revision(index + 1, day));
    earlier = standing(events, day);
    results.push(events);
  }
  return results;
}

describe('identities of events', () => {
  it('are 32 hex digits and a suffix, each its own, made of plan, task, slot and number', () => {
    expect(first.map(({ uid }) => uid)).toEqual([
      eventUid('reading-room', FEED.task, 0, 0),
      eventUid('reading-room', BOWL.task, 0, 0),
    ]);
    for (const { uid } of first) expect(uid).toMatch(/^[0-9a-f]{32}@dewdial$/);
    expect(
      new Set([eventUid('a', 't', 0, 0), eventUid('b', 't', 0, 0), eventUid('a', 't', 1, 0), eventUid('a', 't', 0, 1)])
        .size,
    ).toBe(4);
    expect(first.map(({ sequence, stamp, status }) => [sequence, stamp, status])).toEqual([
      [0, '2027-01-01T00:00:00Z', 'CONFIRMED'],
      [0, '2027-01-01T00:00:00Z', 'CONFIRMED'],
    ]);
  });

  it('and everything else stay as they were where nothing changed, whatever the day', () => {
    const again = identifyEvents([BOWL, FEED], stands, revision(2, '2027-05-05'));
    expect(JSON.stringify(again)).toBe(JSON.stringify(first));
  });

  it.each([
    ['a later time', { start: '2027-01-01T09:00', until: '2027-12-31T09:00' }],
    ['another title', { title: 'Feed Fern: 6 × cricket' }],
    ['another description', { description: 'Stand-in feeder.' }],
    ['a start three weeks later', { start: '2027-01-22T08:15' }],
    ['an exception', { exdates: ['2027-03-01T08:15'] }],
    ['an alarm', { alarmMinutes: 15 }],
  ] as const)('stay with %s, and only that event has a higher sequence and a new stamp', (_name, change) => {
    const after = identifyEvents([{ ...FEED, ...change }, BOWL], stands, revision(2, '2027-03-01'));
    const [feed] = of(after, FEED.task);
    expect(of(after, FEED.task)).toHaveLength(1);
    expect(feed?.uid).toBe(first[0]?.uid);
    expect([feed?.sequence, feed?.stamp, feed?.status]).toEqual([1, '2027-03-01T00:00:00Z', 'CONFIRMED']);
    expect(of(after, BOWL.task)).toEqual(of(first, BOWL.task));
  });

  it('stay in another zone, and what has a time of day has a higher sequence: it is another instant', () => {
    const moved = { ...revision(2, '2027-03-01'), timezone: 'Asia/Tokyo' };
    const after = identifyEvents([FEED, BOWL], stands, moved);
    expect(of(after, FEED.task).map(({ uid, sequence }) => [uid, sequence])).toEqual([[first[0]?.uid, 1]]);
    expect(of(after, BOWL.task)).toEqual(of(first, BOWL.task));
  });

  it('do not pass to a segment that begins 22 days away, to another task, slot or person', () => {
    for (const change of [
      { start: '2027-01-23T08:15' },
      { task: 'fern/feed/mealworm' },
      { slot: 1 },
      { for: 'sitter' },
    ]) {
      const after = identifyEvents(
        [{ ...FEED, ...change }],
        standing(first.slice(0, 1), '2027-01-01'),
        revision(2, '2027-01-02'),
      );
      const [gone, fresh] = [
        after.filter(({ status }) => status === 'CANCELLED'),
        after.filter(({ status }) => status === 'CONFIRMED'),
      ];
      expect(gone.map(({ uid, sequence }) => [uid, sequence])).toEqual([[first[0]?.uid, 1]]);
      expect(fresh).toHaveLength(1);
      expect(fresh[0]?.uid).not.toBe(first[0]?.uid);
      expect(fresh[0]?.sequence).toBe(0);
    }
  });

  it('pass to the nearest start where segments multiply: the past keeps its own', () => {
    const past = { ...FEED, until: '2027-03-10T08:15' };
    const future = { ...FEED, start: '2027-03-12T09:00', until: '2027-12-31T09:00' };
    const after = of(identifyEvents([past, future, BOWL], stands, revision(2, '2027-03-11')), FEED.task);
    expect(after.map(({ start, uid, sequence }) => [start, uid, sequence])).toEqual([
      ['2027-01-01T08:15', first[0]?.uid, 1],
      ['2027-03-12T09:00', eventUid('reading-room', FEED.task, 0, 10_000), 0],
    ]);
  });

  it('are not swapped between segments that stand as they stood', () => {
    const two = [FEED, { ...FEED, start: '2027-01-04T08:15', title: 'Feed Fern: 3 × cricket' }];
    const before = identifyEvents(two, null, revision(1, '2027-01-01'));
    const moved = [{ ...FEED, start: '2027-01-03T08:15' }, two[1] ?? FEED];
    const after = identifyEvents(moved, standing(before, '2027-01-01'), revision(2, '2027-01-02'));
    expect(after.map(({ uid, sequence }) => [uid, sequence])).toEqual([
      [before[0]?.uid, 1],
      [before[1]?.uid, 0],
    ]);
  });

  it('of an event that was to end today are cancelled, of one that ended yesterday they are gone', () => {
    const once = { ...FEED, rule: null, until: null, start: '2027-02-10T08:15' };
    const before = identifyEvents([once], null, revision(1, '2027-01-01'));
    const statusOn = (day: string) =>
      identifyEvents([], standing(before, '2027-01-01'), revision(2, day)).map(({ status }) => status);
    expect(statusOn('2027-02-10')).toEqual(['CANCELLED']);
    expect(statusOn('2027-02-11')).toEqual([]);
  });

  it('of a vanished event are cancelled in one plan, and gone in the next of a later day', () => {
    const [, second, third] = replanned(['2027-01-01', [FEED, BOWL]], ['2027-02-01', [FEED]], ['2027-03-01', [FEED]]);
    const cancelled = of(second ?? [], BOWL.task);
    expect(cancelled.map(({ status, sequence, stamp }) => [status, sequence, stamp])).toEqual([
      ['CANCELLED', 1, '2027-02-01T00:00:00Z'],
    ]);
    expect(cancelled[0]?.uid).toBe(of(first, BOWL.task)[0]?.uid);
    expect(of(third ?? [], BOWL.task)).toEqual([]);
    expect(of(third ?? [], FEED.task)).toEqual(of(first, FEED.task));
  });

  it('stay cancelled through the plans of one day, which replace each other', () => {
    const [, second, third] = replanned(
      ['2027-01-01', [FEED, BOWL]],
      ['2027-02-01', [FEED]],
      ['2027-02-01', [{ ...FEED, minutes: 15 }]],
    );
    expect(of(third ?? [], BOWL.task)).toEqual(of(second ?? [], BOWL.task));
  });

  it('come back with a higher sequence where the event comes back while cancelled', () => {
    const [, , third] = replanned(['2027-01-01', [FEED, BOWL]], ['2027-02-01', [FEED]], ['2027-02-02', [FEED, BOWL]]);
    expect(of(third ?? [], BOWL.task).map(({ uid, sequence, status }) => [uid, sequence, status])).toEqual([
      [of(first, BOWL.task)[0]?.uid, 2, 'CONFIRMED'],
    ]);
  });

  it('are never given twice: what comes back long after is somebody new', () => {
    const plans = replanned(
      ['2027-01-01', [FEED, BOWL]],
      ['2027-02-01', [FEED]],
      ['2027-03-01', [FEED]],
      ['2027-04-01', [FEED, BOWL]],
    );
    const [back] = of(plans[3] ?? [], BOWL.task);
    expect(back?.uid).not.toBe(of(first, BOWL.task)[0]?.uid);
    expect(back?.sequence).toBe(0);
  });

  it('of what ended before the new plan begins are not cancelled: it took place', () => {
    const over = { ...BOWL, until: '2027-01-20' };
    const [, second] = replanned(['2027-01-01', [FEED, over]], ['2027-02-01', [FEED]]);
    expect(of(second ?? [], BOWL.task)).toEqual([]);
  });

  it('have stamps that never go back, though the clock of the machine does', () => {
    const [, , third] = replanned(
      ['2027-01-01', [FEED]],
      ['2027-06-01', [{ ...FEED, minutes: 15 }]],
      ['2027-03-01', [{ ...FEED, minutes: 20 }]],
    );
    expect(third?.map(({ sequence, stamp }) => [sequence, stamp])).toEqual([[2, '2027-06-01T00:00:00Z']]);
  });

  it('do not depend on the order in which events are given', () => {
    const many = Array.from({ length: 12 }, (_, index) => ({
      ...FEED,
      start: `2027-01-${String(index + 1).padStart(2, '0')}T08:15`,
      title: `feed ${index % 3}`,
    }));
    const before = identifyEvents(many, null, revision(1, '2027-01-01'));
    expect(identifyEvents([...many].reverse(), null, revision(1, '2027-01-01'))).toEqual(before);
    const shifted = many.map((draft, index) => ({ ...draft, minutes: 20 + index }));
    const one = identifyEvents(shifted, standing(before, '2027-01-01'), revision(2, '2027-01-05'));
    const other = identifyEvents(
      [...shifted].reverse(),
      standing([...before].reverse(), '2027-01-01'),
      revision(2, '2027-01-05'),
    );
    expect(other).toEqual(one);
    expect(one.map(({ uid }) => uid)).toEqual(before.map(({ uid }) => uid));
  });
});
