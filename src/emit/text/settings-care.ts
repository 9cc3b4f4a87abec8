/** What a clock change and a power cut ask at the shelf, and the cautions. */
import { epochDay } from '../../basics/calendar-day.ts';
import {
  jobAfterPowerCut,
  jobAtClockChange,
  type Timekeeping,
  type TimerJob,
  wallChanges,
} from '../../plan/clock-changes.ts';
import type { DialPlan, Plan } from '../../plan/plan.ts';
import { siteOffsets } from '../../plan/site-offsets.ts';
import { words } from '../../plan/words/words.ts';
import {
  deviceOf,
  minuteWords,
  type Section,
  type ShelfWords,
  setDials,
  sheetDate,
  weekdayDateWords,
} from './settings-section.ts';

/** Returns what each timer with a setting needs on every date on which the clocks change, from the sheet's date on. */
export function clockSection(plan: Plan): readonly Section[] {
  const shelf = words(plan.language).shelf;
  const timers = setTimers(plan);
  if (timers.length === 0) return [];
  const changes = wallChanges(siteOffsets(plan), epochDay(sheetDate(plan)), epochDay(plan.to));
  const lines = changes.flatMap((change) => {
    const say = change.direction === 'forward' ? shelf.forward : shelf.back;
    const jobs = timers
      .filter(({ keeping }) => keeping.kind !== 'repeat-cycle-timer')
      .map(({ id, keeping }) => `  ${id}: ${shelf.sentence(jobWords(jobAtClockChange(keeping, change), shelf))}`);
    return [shelf.capital(say(weekdayDateWords(change.date, shelf), minuteWords(change.minutes, shelf))), ...jobs];
  });
  return [{ heading: shelf.clockHeading, lines: lines.length === 0 ? [shelf.noClockChange] : lines }];
}

function jobWords(job: TimerJob, shelf: ShelfWords): string {
  switch (job.do) {
    case 'turn-on':
      return shelf.turnOn(minuteWords(job.minutes, shelf));
    case 'set-clock':
      return shelf.setClock;
    case 'nothing':
    case 'plug-in-again':
      return shelf.leaveAlone;
  }
}

/** Returns how each timer with a setting is put right after a cut. */
export function powerCutSection(plan: Plan): readonly Section[] {
  const shelf = words(plan.language).shelf;
  const lines = setTimers(plan).map(({ id, keeping }) => `${id}: ${cutWords(plan, keeping, shelf)}`);
  return [{ heading: shelf.cutHeading, lines }];
}

function cutWords(plan: Plan, keeping: Timekeeping, shelf: ShelfWords): string {
  const job = jobAfterPowerCut(keeping, 60);
  if (job.do === 'nothing') return shelf.cutKeeps;
  if (job.do === 'plug-in-again') return words(plan.language).water.cutRepeat;
  if (job.do !== 'turn-on') return shelf.cutSet;
  return shelf.sentence(`${shelf.cutDial}${keeping.clock === 'standard' ? shelf.cutDialStandard : ''}`);
}

interface SetTimer {
  readonly id: string;
  readonly keeping: Timekeeping;
}

/** The timers of lamps, then those of pumps. */
function setTimers(plan: Plan): readonly SetTimer[] {
  const dials = setDials(plan).map((dial) => ({ id: dial.device, keeping: timekeeping(plan, dial) }));
  const pumped = [...new Set(plan.misting.flatMap(({ device }) => device ?? []))];
  const others = pumped.filter((id) => dials.every((dial) => dial.id !== id));
  return [...dials, ...others.flatMap((id) => pumpTimer(plan, id))];
}

function pumpTimer(plan: Plan, id: string): readonly SetTimer[] {
  const device = deviceOf(plan, id);
  if (!device || (device.kind !== 'programmable-timer' && device.kind !== 'repeat-cycle-timer')) return [];
  const { kind, clock, keepsTime } = device;
  return [{ id, keeping: { kind, clock, turnsInDays: 1, keepsTime } }];
}

function timekeeping(plan: Plan, dial: DialPlan): Timekeeping {
  const keepsTime = deviceOf(plan, dial.device)?.keepsTime ?? null;
  return {
    kind: dial.pins === null ? 'programmable-timer' : 'pin-dial',
    clock: dial.clock,
    turnsInDays: dial.turnsInDays,
    keepsTime,
  };
}

/** Returns the cautions about mains, lamps and heat, in the plan's order. */
export function cautionSection(plan: Plan): readonly Section[] {
  const shelf = words(plan.language).shelf;
  const lines = plan.cautions.filter(({ id }) => AT_THE_SHELF.includes(id)).map(({ text }) => text);
  return [{ heading: shelf.cautions, lines }];
}

const AT_THE_SHELF: readonly string[] = [
  'mains-near-water',
  'unplug-first',
  'timer-ratings',
  'heat-on-thermostat',
  'hot-lamps',
  'shield-the-lamp',
  'pump-can-flood',
  'repeat-timer-flicker',
  'standing-water',
];
