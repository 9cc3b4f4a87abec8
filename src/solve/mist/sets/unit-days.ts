/** The days of a plan as the mists meet them: runs of days that are alike for an enclosure, and for all enclosures of a unit. */
import { civilOf, type EpochDay, epochDay } from '../../../basics/calendar-day.ts';
import { DAY_MINUTES, minuteOf, wrapMinute } from '../../../basics/minute-of-day.ts';
import type { UtcOffsets } from '../../../basics/utc-offsets.ts';
import type { MinuteWindow } from '../../../plan/dial-day.ts';
import type { ClockKind, DialPlan, Feed, Range } from '../../../plan/plan.ts';
import type { Care, CareEnclosure, MinuteSpan, Rest, Targets } from '../../../resolve/care.ts';
import type { AirDay } from '../../../science/enclosure-day.ts';
import { saturationDensityGPerM3 } from '../../../science/moist-air.ts';
import { PeriodicDay } from '../../../science/wet-enclosure.ts';
import { clockShiftMinutes, EnclosureClimate, temperatureBandsOn } from '../../light/enclosure-temperature.ts';
import { lampHours, windowsByDay } from '../../light/lamp-hours.ts';
import { restShare } from '../../light/target-day-length.ts';
import type { MistCase } from '../day/day-problem.ts';
import {
  coldSpans,
  dustedSpans,
  frozenSpans,
  hotSpans,
  isHotLamp,
  noMistSpans,
  outsideSpans,
} from '../day/forbidden-starts.ts';
import type { EnclosureSpan, MistUnit, UnitMember, UnitSpan } from '../mist-unit.ts';

export interface ShelfDays {
  readonly care: Care;
  readonly lighting: readonly DialPlan[];
  readonly feeding: readonly Feed[];
  readonly offsets: UtcOffsets;
}

/** Hours in which a person mists, wall time. */
const HUMANE: MinuteSpan = { fromMinute: 7 * 60, toMinute: 22 * 60 };

/** Returns the runs of alike days over [firstDay, lastDay], in order and without a gap. */
export function unitSpans(shelf: ShelfDays, unit: MistUnit, firstDay: EpochDay, lastDay: EpochDay): UnitSpan[] {
  const byMember = unit.members.map((member) => enclosureSpans(shelf, unit, member, firstDay, lastDay));
  const powered = poweredByDay(shelf, unit);
  const switched = (day: EpochDay) => powered !== null && windowsKey(powered(day)) !== windowsKey(powered(day - 1));
  const changes = Array.from({ length: lastDay - firstDay }, (_, index) => firstDay + 1 + index).filter(switched);
  const starts = new Set([...byMember.flatMap((spans) => spans.map(({ fromDay }) => fromDay)), ...changes]);
  const ordered = [...starts].sort((a, b) => a - b);
  return ordered.map((fromDay, index) => ({
    fromDay,
    toDay: (ordered[index + 1] ?? lastDay + 1) - 1,
    spans: byMember.flatMap((spans) => spans.find((span) => span.fromDay <= fromDay && fromDay <= span.toDay) ?? []),
    powered: powered === null ? null : powered(fromDay),
  }));
}

function windowsKey(windows: readonly MinuteWindow[]): string {
  return windows.map(({ onMinute, offMinute }) => `${onMinute}-${offMinute}`).join(' ');
}

/** Returns when the unit's timer has power on a date, on its own clock; null on a live outlet. */
function poweredByDay(
  { care, lighting, offsets }: ShelfDays,
  { supply, clock }: MistUnit,
): ((day: EpochDay) => readonly MinuteWindow[]) | null {
  if (!supply) return null;
  const dial = lighting.find(({ device }) => device === supply.id);
  const byDay = dial ? windowsByDay(care.plan, dial) : [];
  const dialClock = dial?.clock ?? clock;
  return (day) => {
    const shift = clockShiftMinutes(dialClock, clock, offsets, day);
    return (byDay[day - care.plan.from] ?? []).map(({ onMinute, offMinute }) => ({
      onMinute: onMinute + shift,
      offMinute: offMinute + shift,
    }));
  };
}

/** A case that reads the same is the same object, so that it is solved once. */
const CASE_KEY = new WeakMap<MistCase, string>();

/** Returns what tells two cases apart: equal where all their values are. */
export function caseKey(one: MistCase): string {
  const known = CASE_KEY.get(one) ?? JSON.stringify(one);
  CASE_KEY.set(one, known);
  return known;
}

function enclosureSpans(
  shelf: ShelfDays,
  unit: MistUnit,
  member: UnitMember,
  firstDay: EpochDay,
  lastDay: EpochDay,
): EnclosureSpan[] {
  const days = new EnclosureDays(shelf, unit, member.enclosure);
  const known = new Map<string, MistCase>();
  const spans: EnclosureSpan[] = [];
  for (let from = firstDay; from <= lastDay; ) {
    const key = days.keyOf(from);
    let to = from;
    while (to < lastDay && days.keyOf(to + 1) === key) to++;
    const span = days.span(member, from, to);
    const text = caseKey(span.one);
    const one = known.get(text) ?? span.one;
    known.set(text, one);
    spans.push({ ...span, one });
    from = to + 1;
  }
  return spans;
}

/** What one enclosure meets on each date, on the mist timer's clock. */
class EnclosureDays {
  readonly #shelf: ShelfDays;
  readonly #unit: MistUnit;
  readonly #enclosure: CareEnclosure;
  readonly #climate: EnclosureClimate;
  readonly #hot: readonly { readonly clock: ClockKind; readonly byDay: readonly (readonly MinuteWindow[])[] }[];
  readonly #powered: ((day: EpochDay) => readonly MinuteWindow[]) | null;
  readonly #dusted: readonly { readonly day: EpochDay; readonly minute: number }[];

  constructor(shelf: ShelfDays, unit: MistUnit, enclosure: CareEnclosure) {
    this.#shelf = shelf;
    this.#unit = unit;
    this.#enclosure = enclosure;
    this.#climate = new EnclosureClimate(shelf.care, enclosure, shelf.lighting, shelf.offsets);
    const shielded = enclosure.nozzles.hitsLamp === false;
    this.#hot = enclosure.lamps
      .filter(({ kind }) => isHotLamp(kind) && !shielded)
      .map((lamp) => lampHours(shelf.care.plan, enclosure, lamp, shelf.lighting));
    this.#powered = unit.means === 'timer' ? poweredByDay(shelf, unit) : null;
    this.#dusted = shelf.feeding
      .filter((feed) => feed.enclosure === enclosure.id && feed.dusting !== null)
      .map(({ date, time }) => ({ day: epochDay(date), minute: minuteOf(time) }));
  }

  /** Dates with the same key are alike. */
  keyOf(day: EpochDay): string {
    const room = this.#room(day);
    const lit = this.#lit(day);
    const hot = this.#hotWindows(day).map(({ onMinute, offMinute }) => `${onMinute}-${offMinute}`);
    const usesWall = this.#dusted.length > 0 || this.#shelf.care.noise.length > 0;
    const wall = usesWall ? this.#shift('wall', day) : 0;
    return [
      room.dayC,
      room.nightC,
      room.humidity,
      lit.onMinute,
      lit.minutes,
      hot.join('+'),
      wall,
      restStep(this.#enclosure.rest, day),
      this.#powered === null ? '' : windowsKey(this.#powered(day)),
    ].join(' ');
  }

  span({ air }: UnitMember, fromDay: EpochDay, toDay: EpochDay): EnclosureSpan {
    const middle = Math.floor((fromDay + toDay) / 2);
    const room = this.#room(middle);
    const { dayC, nightC } = this.#climate.on(middle);
    const lit = this.#lit(middle);
    const day: AirDay = {
      roomVapourGPerM3: room.humidity * saturationDensityGPerM3(room.dayC),
      temperatureSteps: temperatureSteps(lit, dayC, nightC),
      lit,
    };
    const { targets } = this.#enclosure;
    const { dryOut } = targets.water;
    const one: MistCase = {
      enclosure: this.#enclosure.id,
      body: air.body,
      spray: air.spray,
      air: day,
      targets: humidityOn(this.#enclosure, middle),
      dryOut: dryOut && { minutes: dryOut.atLeastMinutes, when: dryOut.when, below: dryOut.below },
      drink: drinkOf(targets, this.#unit),
      cadence: cadenceOf(targets, this.#unit),
      runOffAtMostG: runOffAtMostG(this.#enclosure),
      forbidden: this.#forbidden(fromDay, toDay, middle, new PeriodicDay(air.body, air.spray, day).temperatureC),
    };
    return { fromDay, toDay, one, dayC, nightC, roomDayC: room.dayC, roomHumidity: room.humidity };
  }

  #forbidden(fromDay: EpochDay, toDay: EpochDay, middle: EpochDay, temperatureC: Float64Array): MistCase['forbidden'] {
    const { targets } = this.#enclosure;
    const lit = this.#lit(middle);
    const bands = temperatureBandsOn(this.#enclosure, middle);
    const wall = this.#shift('wall', middle);
    const dusted = this.#dustedIn(fromDay, toDay);
    const isHand = this.#unit.means === 'by-hand';
    const humane = isHand ? [{ fromMinute: HUMANE.toMinute, toMinute: HUMANE.fromMinute }] : [];
    return {
      starts: [
        ...humane,
        ...coldSpans(temperatureC, lit, bands.nightC?.[0] ?? null),
        ...dustedSpans(dusted, targets.feeding?.dryBeforeMistMinutes ?? 0),
      ],
      runs: [
        ...frozenSpans(temperatureC),
        ...hotSpans(this.#hotWindows(middle)),
        ...(this.#powered === null ? [] : outsideSpans(this.#powered(middle))),
      ],
      noise: isHand
        ? []
        : this.#shelf.care.noise.map(({ fromMinute, toMinute }) => ({
            fromMinute: wrapMinute(fromMinute + wall),
            toMinute: wrapMinute(toMinute + wall),
          })),
      noMist: noMistSpans(targets.water.noMist, lit, this.#shift(this.#climate.days.clock, middle)),
    };
  }

  #dustedIn(fromDay: EpochDay, toDay: EpochDay): readonly number[] {
    const minutes = new Set<number>();
    for (const { day, minute } of this.#dusted)
      if (day >= fromDay && day <= toDay) minutes.add(wrapMinute(minute + this.#shift('wall', day)));
    return [...minutes].sort((a, b) => a - b);
  }

  #room(day: EpochDay) {
    return this.#shelf.care.site.roomByMonth[civilOf(day).month - 1] ?? { dayC: 20, nightC: 20, humidity: 0.5 };
  }

  #lit(day: EpochDay): { readonly onMinute: number; readonly minutes: number } {
    const window = this.#climate.days.windows[day - this.#shelf.care.plan.from];
    const minutes = Math.min(DAY_MINUTES, window ? window.offMinute - window.onMinute : 0);
    const onMinute = (window?.onMinute ?? 0) + this.#shift(this.#climate.days.clock, day);
    return { onMinute: wrapMinute(onMinute), minutes };
  }

  #hotWindows(day: EpochDay): readonly MinuteWindow[] {
    return this.#hot.flatMap(({ clock, byDay }) => {
      const shift = this.#shift(clock, day);
      return (byDay[day - this.#shelf.care.plan.from] ?? []).map(({ onMinute, offMinute }) => ({
        onMinute: onMinute + shift,
        offMinute: offMinute + shift,
      }));
    });
  }

  #shift(from: ClockKind, day: EpochDay): number {
    return clockShiftMinutes(from, this.#unit.clock, this.#shelf.offsets, day);
  }
}

function temperatureSteps(lit: AirDay['lit'], dayC: number, nightC: number): AirDay['temperatureSteps'] {
  if (lit.minutes <= 0) return [{ fromMinute: 0, celsius: nightC }];
  if (lit.minutes >= DAY_MINUTES) return [{ fromMinute: 0, celsius: dayC }];
  const off = wrapMinute(lit.onMinute + lit.minutes);
  const steps = [
    { fromMinute: lit.onMinute, celsius: dayC },
    { fromMinute: off, celsius: nightC },
  ];
  return steps.sort((a, b) => a.fromMinute - b.fromMinute);
}

/** Lengths of a cadence are those of a mist; a fogger runs as long as the air needs. */
function cadenceOf({ misting }: Targets, { pump, machine }: MistUnit): MistCase['cadence'] {
  if (misting === null || misting === 'none') return null;
  const { perDay, seconds, gapMinutes } = misting;
  if (pump?.kind !== 'fogger' || !machine) return { perDay, seconds, gapMinutes };
  return { perDay, seconds: [machine.shortestSeconds, machine.longestSeconds], gapMinutes };
}

/** A fogger is no drink. Where an animal is to be misted at all, one mist a day is the last thing to be given up. */
function drinkOf({ water, misting }: Targets, { pump, machine }: MistUnit): MistCase['drink'] {
  if (pump?.kind === 'fogger' || !machine) return null;
  const { drink } = water;
  if (drink && drink.mists > 0) return { when: drink.when, mists: drink.mists, seconds: drink.atLeastSeconds };
  const isAsked = misting !== null && misting !== 'none' && misting.perDay[0] >= 1;
  return isAsked ? { when: 'any', mists: 1, seconds: machine.shortestSeconds } : null;
}

function runOffAtMostG({ tray }: CareEnclosure): number | null {
  return tray ? tray.holdsG / tray.emptyEveryDays : null;
}

/** Ramps of a rest are taken a week at a time: which week of it a day lies in, -1 outside of the rest. */
function restStep(rest: Rest | null, day: EpochDay): number {
  if (!rest) return -1;
  const week = Math.floor((day - rest.from) / 7);
  if (week < 0 || week >= rest.weeks) return -1;
  const inRamp = week < rest.rampWeeks || week >= rest.weeks - rest.rampWeeks;
  return inRamp ? week : Math.ceil(rest.rampWeeks);
}

/** Returns the humidity targets of a date; a rest's own are blended in and out where both give a band, else hold from half-way. */
function humidityOn(enclosure: CareEnclosure, day: EpochDay): Targets['humidity'] {
  const usual = enclosure.targets.humidity;
  const resting = enclosure.rest?.humidity;
  const share = enclosure.rest && resting ? restShare(enclosure.rest, day) : 0;
  if (!resting || share <= 0) return usual;
  const band = (a: Range | null, b: Range | null | undefined): Range | null => {
    if (b === undefined) return a;
    if (a && b) return [mixed(a[0], b[0], share), mixed(a[1], b[1], share)];
    return share < 0.5 ? a : b;
  };
  const one = (a: number | null, b: number | null | undefined): number | null => {
    if (b === undefined) return a;
    if (a !== null && b !== null) return mixed(a, b, share);
    return share < 0.5 ? a : b;
  };
  return {
    day: band(usual.day, resting.day),
    night: band(usual.night, resting.night),
    mean: band(usual.mean, resting.mean),
    peak: band(usual.peak, resting.peak),
    peaksPerDay: band(usual.peaksPerDay, resting.peaksPerDay),
    floor: one(usual.floor, resting.floor),
    ceiling: one(usual.ceiling, resting.ceiling),
    soakedAtMostHours: one(usual.soakedAtMostHours, resting.soakedAtMostHours),
  };
}

function mixed(a: number, b: number, share: number): number {
  return a + (b - a) * share;
}
