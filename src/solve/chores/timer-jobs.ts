/** What is to be done at the timers: new settings, clock changes, checks. */
import { type EpochDay, epochDay } from '../../basics/calendar-day.ts';
import { spanWords } from '../../basics/span-words.ts';
import type { Timer } from '../../hardware/devices.ts';
import { jobAtClockChange, type Timekeeping, wallChanges } from '../../plan/clock-changes.ts';
import { dialTasks } from '../../plan/dial-day.ts';
import type { Job } from './job.ts';
import { defaultJob, isOffForAll, type JobContext, jobOf } from './job-context.ts';

/** Returns the jobs at all timers, and the change sheet's. */
export function timerJobs(context: JobContext): readonly Job[] {
  const { words, care } = context;
  const settings = [...rePins(context), ...mistEntries(context)];
  const named = (id: string, title: string) => ({ id, title, enclosure: null });
  const timers = care.devices.filter(isTimer);
  return [
    ...settings,
    ...changeSheet(context, settings),
    ...timers.flatMap((timer) => clockJobs(context, timer)),
    ...(timers.length > 0 ? [defaultJob(context, 'timers', named('timers', words.timers))] : []),
    defaultJob(context, 'residual-current', named('residual-current', words.residualCurrent)),
  ].filter(({ kind }) => !isOffForAll(care.enclosures, kind));
}

function isTimer(device: { readonly kind: string }): device is Timer {
  return device.kind === 'pin-dial' || device.kind === 'programmable-timer' || device.kind === 'repeat-cycle-timer';
}

function onDates(dates: readonly EpochDay[]) {
  return { rhythm: { kind: 'dates', dates } } as const;
}

function rePins(context: JobContext): readonly Job[] {
  return context.lighting.flatMap((dial) => {
    const dates = dialTasks(dial).map(({ date }) => epochDay(date));
    const named = {
      id: `${dial.device}/re-pin`,
      kind: 're-pin',
      title: context.words.rePin(dial.device),
      enclosure: null,
    };
    return dates.length > 0 ? [jobOf(context, named, { ...onDates(dates), minutes: 5 })] : [];
  });
}

function mistEntries(context: JobContext): readonly Job[] {
  const byTimer = new Map<string, Set<EpochDay>>();
  for (const { device, pump, sets } of context.misting) {
    if (device === null || pump === null || pump === 'by-hand' || hasPins(context, device)) continue;
    const dates = byTimer.get(device) ?? new Set<EpochDay>();
    byTimer.set(device, dates);
    const told = sets.map(({ entries, interval }) => JSON.stringify([entries, interval ?? null]));
    for (const [index, { from }] of sets.entries()) if (told[index] !== told[index - 1]) dates.add(epochDay(from));
  }
  return [...byTimer].map(([device, dates]) => {
    const named = { id: `${device}/mist-entries`, kind: 'mist-entries', title: context.words.mistEntries(device) };
    return jobOf(context, { ...named, enclosure: null }, { ...onDates([...dates]), minutes: 5 });
  });
}

/** Mists that are whole pins are set as pins. */
function hasPins({ lighting }: JobContext, device: string): boolean {
  return lighting.some((dial) => dial.device === device && dial.settings.length > 0);
}

/** On every later day on which a setting changes there is a sheet to follow and a card to hang up. */
function changeSheet(context: JobContext, settings: readonly Job[]): readonly Job[] {
  const dates = settings.flatMap(({ rhythm }) => (rhythm.kind === 'dates' ? rhythm.dates : []));
  const later = [...new Set(dates)].filter((day) => day > context.first).sort((a, b) => a - b);
  if (later.length === 0) return [];
  const named = { id: 'change-sheet', kind: 'change-sheet', title: context.words.changeSheet, enclosure: null };
  return [jobOf(context, named, { ...onDates(later), minutes: 2 })];
}

/** One job for each way in which a timer is turned or set, with the dates of the clock changes that ask for it. */
function clockJobs(context: JobContext, timer: Timer): readonly Job[] {
  const jobs = new Map<string, { title: string; dates: EpochDay[] }>();
  for (const change of wallChanges(context.offsets, context.first, context.last)) {
    const job = jobAtClockChange(timekeeping(timer), change);
    if (job.do === 'nothing') continue;
    const isForward = change.direction === 'forward';
    const title =
      job.do === 'turn-on'
        ? context.words.turnOn(timer.id, spanWords(job.minutes), isForward)
        : context.words.setClock(timer.id, isForward);
    const id = `${timer.id}/turn-${change.direction}${job.do === 'turn-on' && job.minutes % 60 !== 0 ? `-${job.minutes}` : ''}`;
    const known = jobs.get(id) ?? { title, dates: [] };
    known.dates.push(epochDay(change.date));
    jobs.set(id, known);
  }
  return [...jobs].map(([id, { title, dates }]) =>
    jobOf(context, { id, kind: 'turn-dial', title, enclosure: null }, { ...onDates(dates), minutes: 2 }),
  );
}

function timekeeping(timer: Timer): Timekeeping {
  const { kind } = timer;
  if (kind === 'pin-dial') return { kind, clock: timer.clock, turnsInDays: timer.turnsInDays, keepsTime: false };
  if (kind === 'programmable-timer') return { kind, clock: timer.clock, turnsInDays: 1, keepsTime: timer.keepsTime };
  return { kind, clock: null, turnsInDays: 1, keepsTime: null };
}
