/** Every lamp of the household with the one light target it has (or none). */
import { isoDateOf } from '../../basics/calendar-day.ts';
import { DAY_MINUTES } from '../../basics/minute-of-day.ts';
import { spanWords } from '../../basics/span-words.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { Care, CareEnclosure, Inset, Lamp } from '../../resolve/care.ts';

/** Whole tenths of a minute, one a day of the plan. */
export type TenthsByDay = Int32Array;

export type Spans = Extract<Inset, { form: 'spans' }>['spans'];

/** What a lamp is to give: the day itself, one part of it, several parts, or nothing of its own. */
export type LightTarget =
  | { readonly kind: 'day' }
  /** `edgesMinutes`: after lights on and before lights off; null where hours stand in the middle of the day. */
  | { readonly kind: 'inset'; readonly edgesMinutes: readonly [number, number] | null }
  | { readonly kind: 'spans'; readonly spans: Spans }
  | { readonly kind: 'none' };

export interface ShelfLamp {
  /** `ENCLOSURE/LAMP`. */
  readonly id: string;
  readonly lamp: Lamp;
  readonly enclosure: CareEnclosure;
  readonly target: LightTarget;
  /** Empty where the lamp has no target. */
  readonly targetTenths: TenthsByDay;
}

/** The target day lengths P(d) by enclosure id. */
export type DayTargets = ReadonlyMap<string, TenthsByDay>;

/** Returns all lamps in the file's order. */
export function shelfLamps(care: Care, days: DayTargets): readonly ShelfLamp[] {
  return care.enclosures.flatMap((enclosure) =>
    enclosure.lamps.map((lamp) => shelfLamp(enclosure, lamp, days.get(enclosure.id) ?? new Int32Array(0))),
  );
}

/** Reports insets that the day cannot hold, once a lamp. */
export function reportLongInsets(care: Care, lamps: readonly ShelfLamp[], days: DayTargets, log: Log): void {
  for (const shelf of lamps) {
    const wants = shelf.target.kind === 'none' || shelf.target.kind === 'day' ? null : leastDayMinutes(shelf);
    const day = days.get(shelf.enclosure.id);
    if (wants === null || !day) continue;
    const short = [...day].flatMap((tenths, index) => (tenths < wants * 10 ? [index] : []));
    const worst = short.toSorted((a, b) => (day[a] ?? 0) - (day[b] ?? 0))[0];
    if (worst === undefined) continue;
    const values = {
      lamp: shelf.id,
      inset: insetWords(shelf),
      date: isoDateOf(care.plan.from + worst),
      day: spanWords((day[worst] ?? 0) / 10),
      days: short.length,
    };
    log.report('inset-longer-than-day', values, care.placeOf(shelf.lamp.path));
  }
}

/** Returns what a lamp with hours of its own asks for, for instance `9 h` or `30 min after lights on to 1 h before lights off`. */
export function insetWords({ target, targetTenths }: Pick<ShelfLamp, 'target' | 'targetTenths'>): string {
  if (target.kind === 'spans') return target.spans.map((span) => spanWords(span.forMinutes)).join(' and ');
  if (target.kind !== 'inset' || !target.edgesMinutes) return spanWords((targetTenths[0] ?? 0) / 10);
  const [after, before] = target.edgesMinutes;
  if (after === 0 && before === 0) return 'day length';
  return `${spanWords(after)} after lights on to ${spanWords(before)} before lights off`;
}

function shelfLamp(enclosure: CareEnclosure, lamp: Lamp, day: TenthsByDay): ShelfLamp {
  const { target, targetTenths } = targetOf(enclosure, lamp, day);
  return { id: `${enclosure.id}/${lamp.id}`, lamp, enclosure, target, targetTenths };
}

function targetOf(enclosure: CareEnclosure, lamp: Lamp, day: TenthsByDay): Pick<ShelfLamp, 'target' | 'targetTenths'> {
  if (lamp.uses.includes('daylight') || lamp.uses.includes('plants'))
    return { target: { kind: 'day' }, targetTenths: day };
  const inset = insetOf(enclosure, lamp);
  if (!inset) return { target: { kind: 'none' }, targetTenths: new Int32Array(0) };
  return insetTarget(inset, day);
}

/** The inset of `uvb` for a UV lamp where it is placed, else that of `basking`, else the whole day; null for a lamp that only heats. */
function insetOf(enclosure: CareEnclosure, lamp: Lamp): Inset | null {
  const { uvb, basking } = enclosure.targets;
  if (lamp.uses.includes('uvb') && uvb && uvb.form !== 'unplaced') return uvb;
  if (lamp.uses.includes('uvb') || lamp.uses.includes('basking'))
    return basking ?? { form: 'edges', afterLightsOnMinutes: 0, beforeLightsOffMinutes: 0 };
  return null;
}

/** Returns what an inset asks for on each day: for edges max(0, P − both), for hours and spans their own length. */
export function insetTarget(inset: Inset, day: TenthsByDay): Pick<ShelfLamp, 'target' | 'targetTenths'> {
  if (inset.form === 'edges') {
    const edges = [inset.afterLightsOnMinutes, inset.beforeLightsOffMinutes] as const;
    const cut = Math.round((edges[0] + edges[1]) * 10);
    return {
      target: { kind: 'inset', edgesMinutes: edges },
      targetTenths: day.map((tenths) => Math.max(0, tenths - cut)),
    };
  }
  const minutes = inset.form === 'hours' ? inset.minutes : inset.spans.reduce((sum, span) => sum + span.forMinutes, 0);
  const target: LightTarget =
    inset.form === 'hours' ? { kind: 'inset', edgesMinutes: null } : { kind: 'spans', spans: inset.spans };
  return { target, targetTenths: day.map(() => Math.round(Math.min(DAY_MINUTES, minutes) * 10)) };
}

/** The shortest day that holds the lamp's inset. */
function leastDayMinutes(shelf: ShelfLamp): number {
  if (shelf.target.kind === 'inset' && shelf.target.edgesMinutes)
    return shelf.target.edgesMinutes[0] + shelf.target.edgesMinutes[1];
  return (shelf.targetTenths[0] ?? 0) / 10;
}
