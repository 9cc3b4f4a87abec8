/** Drippers: against their bowls, not the air; and what their timers are set to. */
import { isoDateOf } from '../../basics/calendar-day.ts';
import { DAY_MINUTES } from '../../basics/minute-of-day.ts';
import { spanWords } from '../../basics/span-words.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { Dripper, Timer } from '../../hardware/devices.ts';
import { isTimer } from '../../hardware/power-tree.ts';
import type { DialPlan, MistPlan } from '../../plan/plan.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import { stepMinutesOf } from '../light/dial-group.ts';
import type { ShelfDays } from './sets/unit-days.ts';
import { type SwitchedSpan, switchedPlan, windowsAfterMists } from './switched-water.ts';

export interface DripperShelf extends Pick<ShelfDays, 'lighting' | 'offsets'> {
  readonly drives: ReadonlyMap<string, readonly string[]>;
}

/** Returns the plans of timers that drive drippers alone, and reports bowls that would run over and steps that do not fit. */
export function dripperPlans(
  care: Care,
  shelf: DripperShelf,
  misting: readonly MistPlan[],
  log: Log,
): readonly DialPlan[] {
  return care.devices
    .filter((device): device is Dripper => device.kind === 'dripper')
    .flatMap((dripper) => dripperPlan(care, shelf, misting, dripper, log) ?? []);
}

function dripperPlan(
  care: Care,
  shelf: DripperShelf,
  misting: readonly MistPlan[],
  dripper: Dripper,
  log: Log,
): DialPlan | null {
  const users = care.enclosures.filter((enclosure) => enclosure.dripper === dripper.id);
  if (users.length === 0 || overflows(care, users, misting, dripper, log)) return null;
  const timer = care.devices.find((device): device is Timer => device.id === dripper.outlet && isTimer(device));
  if (!timer) return null;
  const drives = shelf.drives.get(timer.id) ?? [];
  if (drives.some((name) => name.startsWith('lamp:'))) return null;
  if (timer.kind === 'repeat-cycle-timer') {
    reportCycle(care, dripper, timer.onSeconds, timer.offSeconds, log);
    return null;
  }
  const step = stepMinutesOf(timer);
  const forMinutes = runMinutes(dripper);
  if (forMinutes !== null && forMinutes < step) {
    const values = { dripper: dripper.id, timer: timer.id, step: spanWords(step), wanted: spanWords(forMinutes) };
    log.report('dripper-step', values, care.placeOf([...dripper.path, 'outlet']));
    return null;
  }
  return switchedPlan(timer, drives, spansOf(care, misting, users, dripper, step), shelf.offsets);
}

/** How long it runs at a time; null: always. */
function runMinutes({ runs }: Dripper): number | null {
  if (runs === 'always') return null;
  return 'forMinutes' in runs ? runs.forMinutes : runs.afterMistMinutes;
}

/** A run longer than a step is rounded down to whole steps, so that the bowl takes it. */
function spansOf(
  care: Care,
  misting: readonly MistPlan[],
  users: readonly CareEnclosure[],
  { runs }: Dripper,
  step: number,
): readonly SwitchedSpan[] {
  const whole = { from: isoDateOf(care.plan.from), to: isoDateOf(care.plan.from + care.plan.days - 1) };
  if (runs === 'always') return [{ ...whole, windows: [{ onMinute: 0, offMinute: DAY_MINUTES }] }];
  const onStep = (minutes: number) => Math.floor(minutes / step) * step;
  if ('forMinutes' in runs) {
    const every = Math.ceil(runs.everyMinutes / step) * step;
    const count = Math.floor(DAY_MINUTES / every);
    const length = Math.min(every, onStep(runs.forMinutes));
    const windows = Array.from({ length: count }, (_, index) => ({
      onMinute: index * every,
      offMinute: index * every + length,
    }));
    return [{ ...whole, windows }];
  }
  const sets = misting.find(({ enclosure }) => enclosure === users[0]?.id)?.sets ?? [];
  return sets.map((set) => ({
    from: set.from,
    to: set.to,
    windows: windowsAfterMists(set, runs.afterMistMinutes).map(({ onMinute, offMinute }) => ({
      onMinute: onStep(onMinute),
      offMinute: onStep(onMinute) + Math.max(step, onStep(offMinute - onMinute)),
    })),
    ...(set.past ? { past: set.past } : {}),
  }));
}

/** Returns whether what runs between two emptyings exceeds the bowl, and reports it. */
function overflows(
  care: Care,
  users: readonly CareEnclosure[],
  misting: readonly MistPlan[],
  { id, path, bowl, flowGPerHour, runs }: Dripper,
  log: Log,
): boolean {
  if (!bowl) return false;
  const sets = misting
    .filter(({ enclosure }) => users.some((each) => each.id === enclosure))
    .flatMap((mist) => mist.sets);
  const mists = Math.max(0, ...sets.map(({ entries }) => entries.length));
  const minutes = minutesADay(runs, mists);
  const runsG = (flowGPerHour * minutes * bowl.emptyEveryDays) / 60;
  if (runsG <= bowl.holdsG + 1e-6) return false;
  log.report(
    'dripper-bowl',
    {
      dripper: id,
      runs: Math.round(runsG),
      holds: Math.round(bowl.holdsG),
      days: bowl.emptyEveryDays,
      most: Math.floor((bowl.holdsG / Math.max(1e-9, runsG)) * minutes),
    },
    care.placeOf([...path, 'bowl']),
  );
  return true;
}

function minutesADay(runs: Dripper['runs'], mists: number): number {
  if (runs === 'always') return DAY_MINUTES;
  if ('forMinutes' in runs) return Math.min(DAY_MINUTES, (DAY_MINUTES / runs.everyMinutes) * runs.forMinutes);
  return Math.min(DAY_MINUTES, mists * runs.afterMistMinutes);
}

/** A repeat-cycle timer is set once; what it is set to is said, for no pins stand in the plan for it. */
function reportCycle(
  care: Care,
  { id, path, runs, outlet }: Dripper,
  on: readonly [number, number],
  off: readonly [number, number],
  log: Log,
): void {
  if (runs === 'always' || !('forMinutes' in runs)) return;
  const [onSeconds, offSeconds] = [runs.forMinutes * 60, (runs.everyMinutes - runs.forMinutes) * 60];
  const fits = onSeconds >= on[0] && onSeconds <= on[1] && offSeconds >= off[0] && offSeconds <= off[1];
  const values = {
    dripper: id,
    timer: outlet,
    on: spanWords(runs.forMinutes),
    off: spanWords(runs.everyMinutes - runs.forMinutes),
  };
  log.report(fits ? 'dripper-cycle' : 'dripper-cycle-range', values, care.placeOf([...path, 'runs']));
}
