/** The lamps that share one timer, what they ask of it together, and whether they can share it at all. */

import { clockTimeOf, DAY_MINUTES } from '../../basics/minute-of-day.ts';
import type { PinDial, ProgrammableTimer } from '../../hardware/devices.ts';
import type { CareEnclosure, DayPlacement } from '../../resolve/care.ts';
import type { WindowPlacement } from './dial-problem.ts';
import type { ShelfLamp, TenthsByDay } from './shelf-lamp.ts';

export type LampTimer = PinDial | ProgrammableTimer;

/** `day`: its window is the day of its daylight and plant lamps; `inset`, `spans`: parts of the day; `idle`: no lamp asks for hours. */
export type GroupKind = 'day' | 'inset' | 'spans' | 'idle';

export interface DialGroup {
  readonly timer: LampTimer;
  readonly lamps: readonly ShelfLamp[];
  readonly kind: GroupKind;
}

/** Why lamps cannot share a timer: two of them, and in what they differ. */
export interface Disagreement {
  readonly kind: 'placement' | 'spans';
  readonly one: ShelfLamp;
  readonly other: ShelfLamp;
}

/** Returns a timer with its lamps, and what kind of problem they are. */
export function dialGroup(timer: LampTimer, lamps: readonly ShelfLamp[]): DialGroup {
  return { timer, lamps, kind: kindOf(lamps) };
}

function kindOf(lamps: readonly ShelfLamp[]): GroupKind {
  for (const kind of ['day', 'spans', 'inset'] as const)
    if (lamps.some(({ target }) => target.kind === kind)) return kind;
  return 'idle';
}

/** Returns the lamps whose targets make up the dial's e(d): the day's on a day dial, else all with a target. */
export function leadingLamps({ lamps, kind }: Pick<DialGroup, 'lamps' | 'kind'>): readonly ShelfLamp[] {
  return lamps.filter(({ target }) => (kind === 'day' ? target.kind === 'day' : target.kind !== 'none'));
}

/** Returns the inset lamps that follow a day dial. */
export function followingLamps({ lamps, kind }: Pick<DialGroup, 'lamps' | 'kind'>): readonly ShelfLamp[] {
  return kind === 'day' ? lamps.filter(({ target }) => target.kind === 'inset' || target.kind === 'spans') : [];
}

/** Returns the first two lamps that cannot share the timer, or null. */
export function disagreementOf(group: Pick<DialGroup, 'lamps' | 'kind'>): Disagreement | null {
  const aiming = group.lamps.filter(({ target }) => target.kind !== 'none');
  const [one] = aiming;
  if (!one) return null;
  const misplaced = aiming.find((other) => !samePlacement(one.enclosure.targets.day, other.enclosure.targets.day));
  if (misplaced) return { kind: 'placement', one, other: misplaced };
  if (group.kind !== 'spans') return null;
  const odd = aiming.find((other) => spansKey(other) !== spansKey(one));
  return odd ? { kind: 'spans', one, other: odd } : null;
}

/** Returns whether two enclosures hang their day on the same time. */
function samePlacement(a: DayPlacement, b: DayPlacement): boolean {
  return a.anchor.kind === b.anchor.kind && a.anchor.minute === b.anchor.minute;
}

/** Returns a placement in words, for instance `midday 13:00`. */
export function placementWords({ anchor }: DayPlacement): string {
  return `${anchor.kind.replace('-', ' ')} ${clockTimeOf(anchor.minute)}`;
}

function spansKey({ target }: ShelfLamp): string {
  return target.kind === 'spans' ? JSON.stringify(target.spans) : target.kind;
}

/** Returns hi(d) and lo(d) of the leading lamps. */
export function envelopeOf(lamps: readonly ShelfLamp[]): { readonly high: TenthsByDay; readonly low: TenthsByDay } {
  const high = Int32Array.from(lamps[0]?.targetTenths ?? []);
  const low = Int32Array.from(high);
  for (const { targetTenths } of lamps.slice(1))
    for (let day = 0; day < high.length; day++) {
      const target = targetTenths[day] ?? 0;
      if (target > (high[day] ?? 0)) high[day] = target;
      if (target < (low[day] ?? 0)) low[day] = target;
    }
  return { high, low };
}

/** Returns where windows of the group lie: the day's own anchor, or an inset's place in it; several insets: midway between the outermost. */
export function placementOf(
  { kind }: Pick<DialGroup, 'kind'>,
  leading: readonly ShelfLamp[],
  day: TenthsByDay,
): WindowPlacement {
  const anchor = leading[0]?.enclosure.targets.day.anchor ?? { kind: 'midday', minute: 780 };
  if (kind === 'day') return anchor;
  const edges = leading.map(({ target }) => (target.kind === 'inset' ? target.edgesMinutes : null));
  const middleShift = midway(edges.map((edge) => (edge ? (edge[0] - edge[1]) / 2 : 0)));
  if (anchor.kind === 'midday') return { kind: 'midday', minute: anchor.minute + middleShift };
  if (edges.some((edge) => edge === null)) return { kind: 'midday', minute: meanMiddle(anchor, day) + middleShift };
  const [after, before] = [midway(edges.map((edge) => edge?.[0] ?? 0)), midway(edges.map((edge) => edge?.[1] ?? 0))];
  return {
    kind: anchor.kind,
    minute: Math.round(anchor.kind === 'lights-on' ? anchor.minute + after : anchor.minute - before),
  };
}

/** To the half minute. */
function midway(values: readonly number[]): number {
  return Math.round(Math.min(...values) + Math.max(...values)) / 2;
}

/** Hours stand in the middle of the day; where one edge of the day is fixed, in the middle of its mean length. */
function meanMiddle(anchor: DayPlacement['anchor'], day: TenthsByDay): number {
  const half = day.reduce((sum, tenths) => sum + tenths, 0) / Math.max(1, day.length) / 20;
  return Math.round((anchor.kind === 'lights-on' ? anchor.minute + half : anchor.minute - half) * 2) / 2;
}

/** Returns the tighter of the enclosures' no-light limits. */
export function noLightLimits(enclosures: readonly CareEnclosure[]): {
  readonly noLightBeforeMinute: number | null;
  readonly noLightAfterMinute: number | null;
} {
  const before = enclosures.flatMap(({ targets }) => targets.day.noLightBeforeMinute ?? []);
  const after = enclosures.flatMap(({ targets }) => targets.day.noLightAfterMinute ?? []);
  return {
    noLightBeforeMinute: before.length > 0 ? Math.max(...before) : null,
    noLightAfterMinute: after.length > 0 ? Math.min(...after) : null,
  };
}

/** Returns the length of one switching step: a dial's pin, a timer's resolution but at least 1 min and a divisor of 24 h. */
export function stepMinutesOf(timer: LampTimer): number {
  if (timer.kind === 'pin-dial') return timer.stepMinutes;
  let step = Math.max(1, Math.ceil(timer.resolutionSeconds / 60));
  while (DAY_MINUTES % step !== 0) step++;
  return step;
}
