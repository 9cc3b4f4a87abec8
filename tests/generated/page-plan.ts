/** A small plan of our own with something in every part of the page, and names that try to break out of it. */
import type { DialPlan, DialSetting, Feed, MistPlan, MistSet, Plan, PlanEvent, Window } from '../../src/plan/plan.ts';
import { EMPTY_PLAN, PLAIN_DIAL, PLAIN_ENCLOSURE, PLAIN_EVENT, PLAIN_FEED, PLAIN_MIST } from './plain-plan.ts';

/** Breaks out of tags, attributes and comments, hides a control character and turns the reading direction around. */
export const HOSTILE = `<script>alert(1)</script> "' onload='x' --> &amp; \u0000 \u202eevil`;

function setting(from: string, to: string, first: number, last: number): DialSetting {
  const clock = (slot: number): string =>
    `${String(Math.floor(slot / 4)).padStart(2, '0')}:${String((slot % 4) * 15).padStart(2, '0')}`;
  const windows: readonly Window[] = [{ on: clock(first), off: clock(last + 1) }];
  const slots = Array.from({ length: last - first + 1 }, (_, index) => first + index);
  return { from, to, windows, slots, wall: [{ from, to, windows }], worstErrorMinutes: 12, meanErrorMinutes: 6 };
}

function dial(device: string): DialPlan {
  const target = Array.from({ length: 90 }, (_, day) => 660 + day);
  return {
    ...PLAIN_DIAL,
    device,
    pins: 'down-is-on',
    drives: ['lamp:fern/sun'],
    settings: [setting('2027-01-01', '2027-01-31', 30, 74), setting('2027-02-01', '2027-03-31', 28, 76)],
    targetHighMinutes: target,
    targetLowMinutes: target,
    targetMinutes: target,
    worstErrorMinutes: 12,
    meanErrorMinutes: 6,
  };
}

const MISTS: MistSet = {
  from: '2027-01-01',
  to: '2027-03-31',
  entries: [{ at: '08:00', seconds: 120 }],
  wall: [{ from: '2027-01-01', to: '2027-03-31', entries: [{ at: '08:00', seconds: 120 }] }],
  allowed: [],
  conditions: [],
  shortfall: 0,
  shortfalls: [],
};

function misting(enclosure: string): MistPlan {
  return {
    ...PLAIN_MIST,
    enclosure,
    pump: 'pump',
    device: 'mist-timer',
    sets: [MISTS],
    advice: [{ code: 'any', values: {}, message: HOSTILE }],
  };
}

function feed(date: string, dusting: string | null): Feed {
  return { ...PLAIN_FEED, date, enclosure: 'fern', dusting };
}

function event(id: string, stamp: string): PlanEvent {
  const identity = { uid: `${id}@dewdial`, sequence: 0, stamp, status: 'CONFIRMED' as const };
  return { ...PLAIN_EVENT, ...identity, title: `Feed ${id}`, start: '2027-01-05T08:15', task: id };
}

/** Returns the plan, in a language, its texts as given. */
export function pagePlan(language: 'en' | 'es' = 'en', text = 'Fern'): Plan {
  return {
    ...EMPTY_PLAN,
    id: 'page',
    revision: 3,
    made: '2027-01-05',
    name: text,
    timezone: 'Europe/Madrid',
    from: '2027-01-01',
    to: '2027-03-31',
    language,
    contacts: { keeper: '+34 600 000 000', vet: `Exotics clinic, +34 976 000 000, ${text}`, note: text },
    people: [{ id: 'keeper', feedsAt: ['08:15'], reminderMinutes: null, minutesADay: null }],
    site: {
      latitude: 41.65,
      longitude: -0.89,
      standardOffsetMinutes: 60,
      offsets: [{ fromUtc: '2026-10-25T01:00Z', minutes: 60 }],
      sunMinutes: Array.from({ length: 90 }, (_, day) => 560 + 2 * day),
    },
    enclosures: [
      {
        ...PLAIN_ENCLOSURE,
        id: 'fern',
        name: text,
        speciesName: text,
        animalNames: [text],
        stages: [{ from: '2027-01-01', stage: 'adult' }],
        targets: [
          {
            path: 'temperature.day',
            value: [22, 28],
            unit: '°C',
            origin: { kind: 'profile', file: 'profiles/x.yaml', line: 4, source: 'practice' },
          },
          {
            path: 'temperature.never_below',
            value: 15,
            unit: '°C',
            origin: { kind: 'default', source: 'ours', why: text },
          },
          {
            path: 'humidity.day',
            value: [0.5, 0.7],
            unit: '1',
            origin: { kind: 'file', file: text, line: 9, also: [{ value: [0.4, 0.6], source: text }] },
          },
          {
            path: 'feeding.from',
            value: { after_lights_on: 60 },
            unit: 'min',
            origin: { kind: 'profile', source: 'x', citation: text, read: 'memory' },
          },
          { path: 'may_go_without.adult', value: 7, unit: 'd', origin: { kind: 'default', source: 'ours' } },
          { path: 'stages.juvenile.feeds.0.food', value: 'insects', unit: 'text', origin: { kind: 'default' } },
        ],
        uvIndex: { fergusonZone: 3, mean: [1, 2.6], max: [2.9, 7.4] },
        cautions: ['salmonella'],
        spans: [{ kind: 'ill', from: '2027-01-04', to: '2027-01-09', vet: text }],
      },
    ],
    hardware: [
      {
        id: 'wall-dial',
        kind: 'pin-dial',
        outlet: 'always',
        clock: 'standard',
        keepsTime: null,
        drives: ['lamp:fern/sun'],
        where: text,
      },
      {
        id: 'pump',
        kind: 'mist-pump',
        outlet: 'mist-timer',
        clock: null,
        keepsTime: null,
        drives: [],
        where: null,
        tank: { holdsMl: 15000, reserveMl: 2000, refillEveryDays: 7 },
      },
    ],
    cautions: [{ id: 'salmonella', text, source: text }],
    lighting: [dial('wall-dial')],
    misting: [misting('fern')],
    feeding: [feed('2027-01-05', 'calcium'), feed('2027-01-06', null), feed('2027-01-08', 'multivitamin')],
    chores: [
      {
        id: 'fern/drip-bowl',
        title: text,
        kind: 'chore',
        who: 'keeper',
        minutes: 5,
        enclosure: 'fern',
        dates: ['2027-01-05', '2027-01-07'],
        moved: [],
      },
    ],
    stock: [{ date: '2027-01-05', feeder: 'cricket', amount: 40, why: text }],
    events: [event('one', '2027-01-01T00:00:00Z'), event('two', '2027-01-05T00:00:00Z')],
    notPlanned: [{ lamp: 'fern/uv', device: null, why: text }],
    warnings: [{ code: 'any', message: text, file: 'home.yaml', line: 3, column: 1 }],
  };
}
