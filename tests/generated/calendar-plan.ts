/** Households made up from a seed, with everything that a calendar is written from. */
import { type EpochDay, epochDayOf, isoDateOf, weekdayIndex } from '../../src/basics/calendar-day.ts';
import { clockTimeOf } from '../../src/basics/minute-of-day.ts';
import { isoUtcMinuteOf } from '../../src/basics/utc-offsets.ts';
import { zoneOffsets } from '../../src/basics/zone.ts';
import { Log } from '../../src/diagnostics/log.ts';
import type { Chore, DialPlan, Feed, MistPlan, Plan, PlanSite } from '../../src/plan/plan.ts';
import { identifyEvents } from '../../src/replan/identity.ts';
import { calendarEvents } from '../../src/solve/calendar/events.ts';
import { EMPTY_PLAN, PLAIN_DIAL, PLAIN_ENCLOSURE, PLAIN_FEED, PLAIN_MIST } from './plain-plan.ts';
import { Choices } from './random.ts';

/** Both hemispheres, half an hour, none, rules that no yearly rule holds, winter time as the odd one. */
export const CALENDAR_ZONES = [
  'Europe/Madrid',
  'America/New_York',
  'Australia/Lord_Howe',
  'Asia/Kolkata',
  'America/Santiago',
  'Asia/Jerusalem',
  'Pacific/Auckland',
  'Europe/Dublin',
] as const;

const TITLES = [
  'Empty and scrub the drip bowl',
  'Weigh, and note; then "rest"',
  'Línea Ω 水を替える',
  'Wipe\nthe glass',
  'Backslash \\ and \u202eturned',
  'Change 🦎 water 👩‍🚀',
  'שטיפה של הקערה',
  'A title that runs on and on, past the seventy-five octets of a line, ünd wïth äccents fröm äll över',
];

interface Frame {
  readonly from: EpochDay;
  readonly days: number;
  readonly choices: Choices;
}

/** Returns a two-year plan without events. */
export function generatedParts(seed: number): Plan {
  const choices = new Choices(seed * 7919 + 1);
  const timezone = CALENDAR_ZONES[seed % CALENDAR_ZONES.length] ?? 'Europe/Madrid';
  const frame = { from: epochDayOf(2027, choices.between(1, 12), choices.between(1, 28)), days: 730, choices };
  const enclosures = ['fern', 'moss', 'slate'].slice(0, choices.between(1, 3));
  const to = isoDateOf(frame.from + frame.days - 1);
  return {
    ...EMPTY_PLAN,
    id: `household-${seed}`,
    name: choices.oneOf(['Reading room', 'Reading, room; two', 'Sala de lectura', '図書室 \n second line']),
    language: choices.oneOf(['en', 'es']),
    timezone,
    from: isoDateOf(frame.from),
    to,
    people: [
      { id: 'keeper', feedsAt: ['08:15'], reminderMinutes: choices.oneOf([null, 0, 15]), minutesADay: null },
      { id: 'sitter', feedsAt: [], reminderMinutes: null, minutesADay: null },
    ],
    site: siteOf(timezone, frame.from, frame.days),
    enclosures: enclosures.map((id) => ({ ...PLAIN_ENCLOSURE, id, name: id.toUpperCase() })),
    hardware: [
      {
        id: 'wall-dial',
        kind: 'pin-dial',
        outlet: 'always',
        clock: choices.oneOf(['standard', 'wall']),
        keepsTime: false,
        drives: [],
        where: null,
      },
    ],
    lighting: [dial(frame)],
    misting: enclosures.map((id) => mist(id, frame)),
    feeding: enclosures.flatMap((id) => feeds(id, frame)),
    chores: enclosures.flatMap((id) => [1, 2, 3].map((number) => chore(`${id}/chore-${number}`, id, frame))),
    stock: Array.from({ length: 40 }, (_, week) => ({
      date: isoDateOf(frame.from + week * 7 + 3),
      feeder: 'cricket',
      amount: choices.between(3, 4) * 10,
      why: 'feeds until the next shopping day',
    })),
    away: [
      {
        from: isoDateOf(frame.from + 60),
        to: isoDateOf(frame.from + 75),
        sitter: 'sitter',
        visits: [60, 62, 64, 66, 70].map((day) => isoDateOf(frame.from + day)),
      },
    ],
  };
}

/** Returns the plan with its events, as first compiled. */
export function generatedPlan(seed: number): Plan {
  const plan = made.get(seed) ?? withEvents(generatedParts(seed), null);
  made.set(seed, plan);
  return plan;
}

const made = new Map<number, Plan>();

/** Returns the plan with events that follow on the earlier plan's. */
export function withEvents(parts: Plan, earlier: Plan | null, today = parts.from): Plan {
  const drafts = calendarEvents(parts, null, new Log());
  const { id: planId, revision: number, timezone } = parts;
  const revision = { planId, number, made: today, from: today, timezone };
  return { ...parts, made: today, events: identifyEvents(drafts, earlier, revision) };
}

export function siteOf(timezone: string, from: EpochDay, days: number): PlanSite {
  const { standardOffsetMinutes, spans } = zoneOffsets(timezone, from, days);
  const offsets = spans.map(({ fromUtcMinute, offsetMinutes }) => ({
    fromUtc: isoUtcMinuteOf(fromUtcMinute),
    minutes: offsetMinutes,
  }));
  return { latitude: 0, longitude: 0, standardOffsetMinutes, offsets, sunMinutes: [] };
}

function feeds(enclosure: string, { from, days, choices }: Frame): readonly Feed[] {
  const everyDays = choices.oneOf([1, 2, 3, 5, 7, 14]);
  const weekdays = choices.chance(0.5) ? choices.oneOf([[0, 2, 4], [1, 4], [5], [0, 1, 2, 3, 4, 5, 6]]) : null;
  const cycle = Array.from({ length: choices.between(1, 16) }, () =>
    choices.oneOf(['calcium', 'calcium', 'calcium-d3', null]),
  );
  const times = choices.oneOf([['08:15'], ['08:15', '19:40'], ['23:50'], ['02:10'], ['00:30'], ['03:00'], ['12:00']]);
  const all: Feed[] = [];
  for (let day = from; day < from + days; day += 1) {
    const isDue = weekdays ? weekdays.includes(weekdayIndex(day)) : (day - from) % everyDays === 0;
    if (!isDue || choices.chance(0.01)) continue;
    for (const time of times) {
      const dusting = cycle[all.length % cycle.length] ?? null;
      const by = day >= from + 60 && day <= from + 75 ? 'sitter' : 'keeper';
      all.push({
        ...PLAIN_FEED,
        date: isoDateOf(day),
        time,
        slot: all.length % cycle.length,
        enclosure,
        dusting,
        by,
        gutLoadFrom: isoDateOf(day - 1),
      });
    }
  }
  return all;
}

function chore(id: string, enclosure: string, { from, days, choices }: Frame): Chore {
  const every = choices.between(1, 90);
  const monthly = choices.chance(0.2);
  const jitter = choices.chance(0.3) ? 2 : 0;
  const dates = new Set<EpochDay>();
  for (let day = from + choices.between(0, 20); day < from + days; day += every) {
    dates.add(Math.min(from + days - 1, day + choices.between(0, jitter)));
  }
  const months = Array.from({ length: 24 }, (_, month) => epochDayOf(2027, month + 1, 14)).filter(
    (day) => day >= from && day < from + days,
  );
  const sorted = [...(monthly ? months : dates)].sort((a, b) => a - b);
  return {
    id,
    title: choices.oneOf(TITLES),
    kind: 'chore',
    who: 'keeper',
    minutes: choices.between(0, 20),
    enclosure,
    dates: sorted.map(isoDateOf),
    moved: [],
  };
}

function dial({ from, days, choices }: Frame): DialPlan {
  const starts = [0, 70, 160, 250, 330].map((day) => day + choices.between(0, 20));
  const settings = starts.map((start, index) => {
    const [on, off] = [choices.between(26, 32), choices.between(70, 80)];
    const windows = [{ on: clockTimeOf(on * 15), off: clockTimeOf(off * 15) }];
    const to = isoDateOf(from + (starts[index + 1] ?? days) - 1);
    const slots = Array.from({ length: off - on }, (_, slot) => on + slot);
    return { from: isoDateOf(from + start), to, windows, slots, wall: [], worstErrorMinutes: 0, meanErrorMinutes: 0 };
  });
  return { ...PLAIN_DIAL, pins: choices.oneOf(['down-is-on', 'up-is-on', null]), settings };
}

function mist(enclosure: string, { from, days, choices }: Frame): MistPlan {
  const byHand = choices.chance(0.2);
  const entries = [8 * 60, 17 * 60].map((minute) => ({
    at: clockTimeOf(minute + choices.between(0, 60)),
    seconds: choices.between(2, 10) * 15,
  }));
  const [first, last] = [isoDateOf(from), isoDateOf(from + days - 1)];
  const set = {
    from: first,
    to: last,
    entries,
    wall: [{ from: first, to: last, entries }],
    allowed: [],
    conditions: [],
    shortfall: 0,
    shortfalls: [],
  };
  return {
    ...PLAIN_MIST,
    enclosure,
    pump: byHand ? 'by-hand' : 'pump',
    device: byHand ? null : 'mist-timer',
    sets: [set],
  };
}
