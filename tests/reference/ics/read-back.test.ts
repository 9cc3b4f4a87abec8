/** What a reader of the files finds is the plan's own list, occurrence by occurrence, in every kind of zone (reader: ical.js). */
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import { minuteOf } from '../../../src/basics/minute-of-day.ts';
import { utcMinuteOfWall } from '../../../src/basics/utc-offsets.ts';
import { emitIcs } from '../../../src/emit/ics/ics.ts';
import { occurrencesOf } from '../../../src/plan/occurrences.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { siteOffsets } from '../../../src/plan/site-offsets.ts';
import { CALENDAR_ZONES, generatedPlan } from '../../generated/calendar-plan.ts';
import { loopOverDays, type Occurrence, ownList, sorted } from '../../generated/own-list.ts';

interface Read extends Occurrence {
  readonly utcMinute: number | null;
}

/** Reads a file with the zone that it defines itself, never with one of the machine. */
function readWithIcalJs(text: string): readonly Read[] {
  const calendar = new ICAL.Component(ICAL.parse(text));
  ICAL.TimezoneService.reset();
  for (const zone of calendar.getAllSubcomponents('vtimezone')) ICAL.TimezoneService.register(zone);
  return calendar.getAllSubcomponents('vevent').flatMap((component) => {
    const event = new ICAL.Event(component);
    const found: Read[] = [];
    const iterator = event.iterator();
    for (let time = iterator.next(); time; time = iterator.next()) {
      const start = time.toString().slice(0, time.isDate ? 10 : 16);
      found.push({
        uid: event.uid,
        start,
        title: event.summary,
        utcMinute: time.isDate ? null : time.toUnixTime() / 60,
      });
    }
    return found;
  });
}

function readAll(plan: Plan): readonly Read[] {
  return plan.people.flatMap(({ id }) => readWithIcalJs(emitIcs(plan, id, 'subscribe')));
}

const seeds = Array.from({ length: 16 }, (_, seed) => seed);

describe('a calendar read back', () => {
  it.each(seeds)('household %i: every occurrence, none more', (seed) => {
    const plan = generatedPlan(seed);
    const read = readAll(plan);
    expect(plan.timezone).toBe(CALENDAR_ZONES[seed % 8]);
    expect(sorted(read.map(({ uid, start, title }) => ({ uid, start, title })))).toEqual(ownList(plan.events));
    const offsets = siteOffsets(plan);
    const wrong = read.filter(({ start, utcMinute }) => {
      if (utcMinute === null) return false;
      return utcMinute !== utcMinuteOfWall(offsets, epochDay(start.slice(0, 10)), minuteOf(start.slice(11)));
    });
    expect(wrong).toEqual([]);
  });

  it.each(seeds)('household %i: the rules expanded by rrule and by a loop over days agree', (seed) => {
    for (const event of generatedPlan(seed).events) expect(occurrencesOf(event)).toEqual(loopOverDays(event));
  });

  it.each(seeds)('household %i: the events are the feeds, chores and orders of the plan, each once', (seed) => {
    const plan = generatedPlan(seed);
    const dates = (kind: string): readonly string[] =>
      plan.events
        .filter((event) => event.kind === kind)
        .flatMap((event) => loopOverDays(event).map((start) => `${start.slice(0, 10)} ${event.for}`));
    const timed = plan.events.filter(({ kind, allDay }) => kind === 'feed' && !allDay).flatMap(loopOverDays);
    const chores = plan.chores.flatMap(({ dates: days, who }) => days.map((date) => `${date} ${who}`));
    expect([...dates('feed')].sort()).toEqual(plan.feeding.map(({ date, by }) => `${date} ${by}`).sort());
    expect([...dates('chore')].sort()).toEqual(chores.sort());
    expect([...dates('shopping')].map((each) => each.slice(0, 10)).sort()).toEqual(
      plan.stock.map(({ date }) => date).sort(),
    );
    const times = new Set(plan.feeding.map(({ date, time }) => `${date}T${time}`));
    expect(timed.filter((start) => !times.has(start))).toEqual([]);
  });
});
