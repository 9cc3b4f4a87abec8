/** What a plan.json must look like to be gone on from: every field of the middle form with its type, dates and times that exist. */
import { epochDay } from '../basics/calendar-day.ts';
import { clockKind, dial, past } from './dial-shape.ts';
import { mist } from './mist-shape.ts';
import type {
  Absence,
  Assumption,
  AutoLevel,
  AutoPlaces,
  Caution,
  Chore,
  EnclosureSpan,
  Feed,
  LiveLamp,
  Load,
  NotPlanned,
  OriginRecord,
  PartMessage,
  Plan,
  PlanDevice,
  PlanEnclosure,
  PlanEvent,
  PlanPerson,
  PlanSite,
  RestingTargets,
  RotationOrder,
  RotationState,
  StockOrder,
  TargetRecord,
  Warning,
} from './plan.ts';
import {
  anything,
  type Check,
  clock,
  date,
  either,
  integer,
  list,
  mapOf,
  maybe,
  number,
  orNull,
  pair,
  record,
  text,
  truth,
  utcMoment,
  word,
} from './shape.ts';

/** Longer than any plan may be; what says more was not written by this program. */
const DAYS_AT_MOST = 1100;

const food = word('insects', 'greens', 'prepared', 'rodents');
const range = pair(number);

const share = pair(number);
const order = record<RotationOrder>({
  stage: text,
  began: date,
  cycleWeeks: orNull(number),
  basis: text,
  feeders: list(text),
  dustings: list(orNull(text)),
  feederRates: mapOf(share),
  dustingRates: mapOf(share),
  carried: mapOf(share),
});
const rotation = record<RotationState>({
  enclosure: text,
  food,
  cycleFeeds: number,
  nextIndex: number,
  last: mapOf(date),
  worstDeviation: number,
  order,
});
const feed = record<Feed>({
  date,
  time: clock,
  slot: integer,
  enclosure: text,
  food,
  feeder: text,
  count: orNull(number),
  portion: text,
  dusting: orNull(text),
  by: text,
  gutLoadFrom: orNull(date),
  standIn: truth,
  preDosed: maybe(truth),
  past,
});
const chore = record<Chore>({
  id: text,
  title: text,
  kind: text,
  who: text,
  minutes: number,
  enclosure: orNull(text),
  source: maybe(text),
  dates: list(date),
  moved: list(record<Chore['moved'][number]>({ due: date, on: date })),
});
/** An event of whole days has dates, any other has times of day too. */
const event: Check = (value) => {
  const isAllDay = typeof value === 'object' && value !== null && 'allDay' in value && value.allDay === true;
  return isAllDay ? dayEvent(value) : timedEvent(value);
};
const dayEvent = eventWith(date);
const timedEvent = eventWith(utcMoment);

function eventWith(moment: Check): Check {
  return record<PlanEvent>({
    uid: text,
    sequence: integer,
    stamp: utcMoment,
    status: word('CONFIRMED', 'CANCELLED'),
    title: text,
    description: text,
    category: text,
    start: moment,
    minutes: number,
    allDay: truth,
    rule: orNull(text),
    until: orNull(moment),
    exdates: list(moment),
    alarmMinutes: orNull(number),
    for: text,
    kind: text,
    task: text,
    slot: integer,
  });
}

const origin = record<OriginRecord>({
  kind: word('file', 'profile', 'default'),
  file: maybe(text),
  line: maybe(integer),
  source: maybe(text),
  citation: maybe(text),
  read: maybe(word('opened', 'excerpt', 'memory')),
  why: maybe(text),
  also: maybe(list(record<NonNullable<OriginRecord['also']>[number]>({ value: anything, source: text }))),
});
const band = orNull(pair(number));
const resting = record<RestingTargets>({
  rampDays: number,
  dayC: band,
  nightC: band,
  dayHumidity: band,
  nightHumidity: band,
  meanHumidity: band,
});
const enclosure = record<PlanEnclosure>({
  id: text,
  name: text,
  species: text,
  speciesName: text,
  scientific: text,
  activity: word('diurnal', 'nocturnal', 'crepuscular'),
  animals: number,
  animalNames: list(text),
  stages: list(record<PlanEnclosure['stages'][number]>({ from: date, stage: text })),
  sizeCm: list(number, 3),
  targets: list(record<TargetRecord>({ path: text, value: anything, unit: text, origin })),
  live: maybe(list(record<LiveLamp>({ lamp: text, powerW: number, isRegulated: truth }))),
  uvIndex: orNull(record<NonNullable<PlanEnclosure['uvIndex']>>({ fergusonZone: number, mean: range, max: range })),
  cautions: list(text),
  where: mapOf(text),
  spans: list(record<EnclosureSpan>({ kind: text, from: date, to: date, vet: orNull(text), resting: maybe(resting) })),
});
const device = record<PlanDevice>({
  id: text,
  kind: text,
  outlet: orNull(text),
  clock: orNull(clockKind),
  keepsTime: orNull(truth),
  drives: list(text),
  where: orNull(text),
  lines: maybe(word('start-and-length', 'on-and-off')),
  tank: maybe(record<NonNullable<PlanDevice['tank']>>({ holdsMl: number, reserveMl: number, refillEveryDays: number })),
});
const person = record<PlanPerson>({
  id: text,
  feedsAt: list(clock),
  reminderMinutes: orNull(number),
  minutesADay: orNull(number),
});
const site = record<PlanSite>({
  latitude: number,
  longitude: number,
  standardOffsetMinutes: number,
  offsets: list(
    record<PlanSite['offsets'][number]>({ fromUtc: utcMoment, minutes: number }),
    1,
    Number.POSITIVE_INFINITY,
  ),
  sunMinutes: list(number),
});

const partMessage = record<PartMessage>({
  code: text,
  weight: word('error', 'refusal', 'warning', 'note'),
  because: text,
  instead: text,
  about: orNull(
    either(
      record<{ path: unknown }>({ path: list(either(text, integer)) }),
      record<{ enclosure: unknown; target: unknown }>({ enclosure: text, target: text }),
    ),
  ),
});

const plan: Check = record<Plan>({
  format: word(1),
  id: text,
  revision: integer,
  made: date,
  tool: text,
  digests: mapOf(text),
  said: maybe(mapOf(list(partMessage))),
  previous: orNull((value) => plan(value)),
  name: text,
  timezone: text,
  from: date,
  to: date,
  units: word('metric', 'us'),
  paper: word('a4', 'letter'),
  language: word('en', 'es'),
  contacts: mapOf(text),
  people: list(person),
  site,
  enclosures: list(enclosure),
  hardware: list(device),
  cautions: list(record<Caution>({ id: text, text, source: text })),
  sources: mapOf(text),
  lighting: list(dial),
  misting: list(mist),
  feeding: list(feed),
  rotation: list(rotation),
  chores: list(chore),
  stock: list(record<StockOrder>({ date, feeder: text, amount: number, why: text })),
  away: list(record<Absence>({ from: date, to: date, sitter: text, visits: list(date) })),
  events: list(event),
  notPlanned: list(record<NotPlanned>({ lamp: text, device: orNull(text), why: text })),
  auto: maybe(
    list(
      record<AutoPlaces>({
        kind: word('lamps', 'pumps'),
        placed: list(text),
        isProven: truth,
        levels: list(
          record<AutoLevel>({
            name: word('limits-exceeded', 'worst-error', 'errors-a-day', 'worst-shortfall', 'shortfalls'),
            value: number,
            atLeast: number,
          }),
        ),
      }),
    ),
  ),
  loads: list(record<Load>({ device: text, peakW: number, continuousW: number, ratingW: orNull(number) })),
  assumptions: list(record<Assumption>({ path: text, value: either(number, text), source: text })),
  warnings: list(
    record<Warning>({
      code: text,
      message: text,
      file: orNull(text),
      line: orNull(integer),
      column: orNull(integer),
    }),
  ),
});

/** Returns what is wrong with a value that is to be a plan, for instance `lighting[0].settings[2].from is no date`; null where nothing is. */
export function planFault(value: unknown): string | null {
  const fault = plan(value);
  if (fault !== null) return fault.replace(/^\./, '');
  return spanFault(value as Plan);
}

/** Days are counted through and drawn: one number a day, and no more days than a plan may have. */
function spanFault(whole: Plan): string | null {
  const days = epochDay(whole.to) - epochDay(whole.from) + 1;
  if (days < 1 || days > DAYS_AT_MOST) return `from and to span ${days} days`;
  for (const { device: id, targetMinutes, targetHighMinutes, targetLowMinutes } of whole.lighting)
    for (const each of [targetMinutes, targetHighMinutes, targetLowMinutes])
      if (each.length !== days && each.length !== 0) return `the targets of ${id} have ${each.length} days of ${days}`;
  return whole.previous && spanFault(whole.previous);
}
