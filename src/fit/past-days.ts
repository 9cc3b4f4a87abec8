/** What an enclosure met while its gauge was logging: the room, the lamps' windows and the mists of the plan, on the one time line of UTC. */
import { civilOf, type EpochDay, epochDay } from '../basics/calendar-day.ts';
import { DAY_MINUTES, minuteOf } from '../basics/minute-of-day.ts';
import {
  meaningOfWall,
  type UtcMinute,
  type UtcOffsets,
  utcMinuteOfDateStart,
  utcMinuteOfStandard,
  utcMinuteOfWall,
  wallTimeAt,
} from '../basics/utc-offsets.ts';
import type { MistPlan, Plan } from '../plan/plan.ts';
import type { Care, CareEnclosure } from '../resolve/care.ts';
import type { History, Step } from '../science/air-history.ts';
import type { Run } from '../science/enclosure-day.ts';
import { saturationDensityGPerM3 } from '../science/moist-air.ts';
import { EnclosureClimate } from '../solve/light/enclosure-temperature.ts';
import type { GaugeReading, LoggedMist } from './readings.ts';

/** The history begins so long before the first reading, so that it has forgotten how it began. */
const LEAD_MINUTES = 2 * DAY_MINUTES;

export interface PastDays {
  readonly history: History;
  /** The instant of the history's minute 0. */
  readonly startUtcMinute: UtcMinute;
  readonly temperatureFrom: 'gauge' | 'model';
  readonly mistsFrom: 'log' | 'plan' | 'none';
  /** Mists from the first reading to the last. */
  readonly mistCount: number;
  /** Lit spans in minutes of the history. */
  readonly lit: readonly (readonly [number, number])[];
}

export interface PastInput {
  readonly care: Care;
  readonly plan: Plan;
  readonly enclosure: CareEnclosure;
  readonly offsets: UtcOffsets;
  readonly readings: readonly GaugeReading[];
  readonly mists: readonly LoggedMist[] | null;
  readonly warmUpMinutes: number;
}

/** A gauge without so many temperatures is not asked for them. */
const MEASURED_SHARE = 0.8;
/** Longer without a temperature the model's is taken. */
const LONGEST_GAP_MINUTES = 120;

/** Returns the history around readings in the order of time, one at least. */
export function pastDays(input: PastInput): PastDays {
  const { offsets, readings } = input;
  const firstUtc = readings[0]?.utcMinute ?? 0;
  const lastUtc = readings.at(-1)?.utcMinute ?? 0;
  const start = Math.floor(firstUtc) - LEAD_MINUTES;
  const days = datesBetween(offsets, start, lastUtc + 30);
  const lit = litSpans(input, days).map(([on, off]) => [on - start, off - start] as const);
  const { steps, room } = climateOf(input, days, start);
  const modelled = laggedSteps(steps, input.warmUpMinutes);
  const isMeasured = readings.filter(({ celsius }) => celsius !== null).length >= MEASURED_SHARE * readings.length;
  const runs = runsOf(input, days, start, firstUtc);
  return {
    history: {
      minutes: Math.ceil(lastUtc - start) + 30,
      roomVapourGPerM3: room,
      celsiusAt: isMeasured ? measuredAt(readings, start, modelled) : modelled,
      edges: steps.map(({ fromMinute }) => fromMinute),
      runs: runs.list,
    },
    startUtcMinute: start,
    temperatureFrom: isMeasured ? 'gauge' : 'model',
    mistsFrom: runs.list.length === 0 ? 'none' : input.mists ? 'log' : 'plan',
    mistCount: runs.list.filter(({ startMinute }) => startMinute >= firstUtc - start - 60).length,
    lit,
  };
}

function datesBetween(offsets: UtcOffsets, from: UtcMinute, to: UtcMinute): readonly EpochDay[] {
  const [first, last] = [wallTimeAt(offsets, from).day - 1, wallTimeAt(offsets, to).day + 1];
  return Array.from({ length: last - first + 1 }, (_, index) => first + index);
}

/** The plan's days stand for those before and after it. */
function planDay({ care }: PastInput, day: EpochDay): EpochDay {
  return Math.min(care.plan.from + care.plan.days - 1, Math.max(care.plan.from, day));
}

function litSpans(input: PastInput, days: readonly EpochDay[]): readonly (readonly [UtcMinute, UtcMinute])[] {
  const { care, enclosure, plan, offsets } = input;
  const climate = new EnclosureClimate(care, enclosure, plan.lighting, offsets);
  const isStandard = climate.days.clock === 'standard';
  const instant = (day: EpochDay, minute: number): UtcMinute =>
    isStandard ? utcMinuteOfStandard(offsets, day, minute) : utcMinuteOfWall(offsets, day, minute);
  return days.flatMap((day) => {
    const window = climate.days.windows[planDay(input, day) - care.plan.from];
    if (!window || window.offMinute <= window.onMinute) return [];
    return [[instant(day, window.onMinute), instant(day, window.offMinute)] as const];
  });
}

interface Climate {
  /** What the air is drawn to, from a minute of the history on. */
  readonly steps: readonly Step[];
  readonly room: readonly Step[];
}

function climateOf(input: PastInput, days: readonly EpochDay[], start: UtcMinute): Climate {
  const { care, enclosure, plan, offsets } = input;
  const climate = new EnclosureClimate(care, enclosure, plan.lighting, offsets);
  const steps: Step[] = [];
  const room: Step[] = [];
  const lit = litSpans(input, days);
  for (const day of days) {
    const { dayC, nightC } = climate.on(planDay(input, day));
    const begins = utcMinuteOfDateStart(offsets, day) - start;
    const month = care.site.roomByMonth[civilOf(day).month - 1];
    if (month) {
      const value = month.humidity * saturationDensityGPerM3(month.dayC);
      if (room.at(-1)?.value !== value) room.push({ fromMinute: begins, value });
    }
    if (lit.length === 0) steps.push({ fromMinute: begins, value: nightC });
    for (const [on, off] of lit) {
      if (wallTimeAt(offsets, on).day !== day) continue;
      steps.push({ fromMinute: on - start, value: dayC }, { fromMinute: off - start, value: nightC });
    }
  }
  return { steps: steps.sort((a, b) => a.fromMinute - b.fromMinute), room };
}

/** Returns the temperature that follows steps with a first-order lag. */
function laggedSteps(steps: readonly Step[], lagMinutes: number): (minute: number) => number {
  const at: number[] = [];
  steps.forEach(({ fromMinute, value }, index) => {
    const before = steps[index - 1];
    const reached = at[index - 1] ?? value;
    at.push(
      before ? before.value + (reached - before.value) * decay(fromMinute - before.fromMinute, lagMinutes) : reached,
    );
  });
  return (minute) => {
    const index = lastAtOrBefore(steps.length, (each) => steps[each]?.fromMinute ?? 0, minute);
    const step = steps[Math.max(0, index)];
    if (!step) return 20;
    const reached = at[Math.max(0, index)] ?? step.value;
    return step.value + (reached - step.value) * decay(Math.max(0, minute - step.fromMinute), lagMinutes);
  };
}

function decay(minutes: number, lagMinutes: number): number {
  return lagMinutes > 0 ? Math.exp(-minutes / lagMinutes) : 0;
}

/** Index of the last of ascending values that is not above another; -1 where all are. */
function lastAtOrBefore(count: number, valueAt: (index: number) => number, value: number): number {
  let [low, high] = [-1, count - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (valueAt(middle) <= value) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The gauge's own temperature, smoothed; before the first reading the first day's, in gaps the model's. */
function measuredAt(
  readings: readonly GaugeReading[],
  start: UtcMinute,
  modelled: (minute: number) => number,
): (minute: number) => number {
  const known = readings.flatMap(({ utcMinute, celsius }) =>
    celsius === null ? [] : [{ minute: utcMinute - start, celsius }],
  );
  const values = smoothed(known.map(({ celsius }) => celsius));
  const first = known[0]?.minute ?? 0;
  return (minute) => {
    const turned = minute < first ? minute + DAY_MINUTES * Math.ceil((first - minute) / DAY_MINUTES) : minute;
    const index = lastAtOrBefore(known.length, (each) => known[each]?.minute ?? 0, turned);
    const [before, after] = [known[index], known[index + 1]];
    if (!before || !after) return values[Math.max(0, index)] ?? modelled(minute);
    const gap = after.minute - before.minute;
    if (gap > LONGEST_GAP_MINUTES) return modelled(turned);
    const low = values[index] ?? 0;
    return low + ((values[index + 1] ?? low) - low) * ((turned - before.minute) / gap);
  };
}

/** Medians of five in a row: single glitches and the last digit's flicker go, a lamp's edge stays. */
function smoothed(values: readonly number[]): readonly number[] {
  return values.map((_, index) => {
    const near = values.slice(Math.max(0, index - 2), index + 3).sort((a, b) => a - b);
    return near[near.length >> 1] ?? 0;
  });
}

function runsOf(
  input: PastInput,
  days: readonly EpochDay[],
  start: UtcMinute,
  firstUtc: UtcMinute,
): { readonly list: readonly Run[] } {
  const { mists, plan, enclosure } = input;
  const planned = plan.misting.find((each) => each.enclosure === enclosure.id);
  if (!planned || planned.model.flowGPerHour <= 0) return { list: [] };
  const logged = mists?.map(({ utcMinute, seconds }) => ({ startMinute: utcMinute - start, seconds }));
  const all = logged ? [...leadOf(logged, firstUtc - start), ...logged] : plannedRuns(input, planned, days, start);
  return { list: apart(all.filter(({ startMinute }) => startMinute >= 0)) };
}

/** A log of mists knows nothing of the days before it: its first day stands for them. */
function leadOf(logged: readonly Run[], first: number): readonly Run[] {
  const ofFirstDay = logged.filter(({ startMinute }) => startMinute >= first && startMinute < first + DAY_MINUTES);
  const earlier = Math.min(first, ...logged.map(({ startMinute }) => startMinute));
  return [1, 2, 3].flatMap((back) =>
    ofFirstDay
      .map((run) => ({ ...run, startMinute: run.startMinute - back * DAY_MINUTES }))
      .filter(({ startMinute }) => startMinute < earlier),
  );
}

function plannedRuns(input: PastInput, { sets }: MistPlan, days: readonly EpochDay[], start: UtcMinute): Run[] {
  const wall = sets.flatMap((set) => set.wall);
  return days.flatMap((day) => {
    const planned = planDay(input, day);
    const span = wall.find(({ from, to }) => epochDay(from) <= planned && planned <= epochDay(to));
    return (span?.entries ?? []).flatMap(({ at, seconds }) => {
      const meaning = meaningOfWall(input.offsets, day, minuteOf(at));
      if (meaning.kind === 'skipped') return [];
      const utc = meaning.kind === 'once' ? meaning.utcMinute : meaning.first;
      return [{ startMinute: utc - start, seconds }];
    });
  });
}

/** Runs in order, each ended where the next begins. */
function apart(runs: readonly Run[]): readonly Run[] {
  const sorted = [...runs].sort((a, b) => a.startMinute - b.startMinute);
  return sorted.flatMap((run, index) => {
    const next = sorted[index + 1];
    const room = next ? (next.startMinute - run.startMinute) * 60 : Number.POSITIVE_INFINITY;
    return room > 0 ? [{ ...run, seconds: Math.min(run.seconds, room) }] : [];
  });
}
