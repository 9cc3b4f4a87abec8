/** What lamps ask of a person: replacing them, and checking with a probe what a basking lamp without a thermostat makes of its place. */
import { civilOf, type EpochDay, epochDay, epochDayOf } from '../../basics/calendar-day.ts';
import { minutesOn } from '../../plan/dial-day.ts';
import type { CareEnclosure, Lamp } from '../../resolve/care.ts';
import { lampHours } from '../light/lamp-hours.ts';
import { replacementDates } from '../light/lamp-replacement.ts';
import { PROBE_DAYS, UV_LAMP_MONTHS } from './default-set.ts';
import type { DaySpan, Job } from './job.ts';
import { isOff, type JobContext, jobOf } from './job-context.ts';

const TENTHS = 10;

/** Returns the jobs of an enclosure's lamps. */
export function lampJobs(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  return enclosure.lamps
    .flatMap((lamp) => [...replacements(context, enclosure, lamp), ...probeChecks(context, enclosure, lamp)])
    .filter(({ kind }) => !isOff(enclosure, kind));
}

function replacements(context: JobContext, enclosure: CareEnclosure, lamp: Lamp): readonly Job[] {
  const dates = replacedOn(context, enclosure, lamp);
  if (dates.length === 0) return [];
  const isSaid = lamp.replaceAfter !== null || lamp.replaceAfterHours !== null;
  return [
    jobOf(
      context,
      {
        id: `${enclosure.id}/replace-${lamp.id}`,
        kind: 'replace-lamp',
        title: context.words.replaceLamp(lamp.id, newLampAsks(context, lamp)),
        enclosure: enclosure.id,
      },
      { rhythm: { kind: 'dates', dates }, minutes: 15, whenAway: 'after', source: isSaid ? 'household' : 'practice' },
    ),
  ];
}

/** The dates of the plan; a UV lamp of known age that says nothing is replaced after the upper limit of practice. */
function replacedOn({ care, lighting }: JobContext, enclosure: CareEnclosure, lamp: Lamp): readonly EpochDay[] {
  const isSilent = lamp.replaceAfter === null && lamp.replaceAfterHours === null;
  const taken = isSilent && lamp.uses.includes('uvb') && lamp.fitted !== null;
  if (isSilent && !taken) return [];
  const planned = lighting
    .flatMap(({ lamps }) => lamps)
    .find((each) => each.enclosure === enclosure.id && each.lamp === lamp.id);
  if (planned && !taken) return planned.replaceOn.map(epochDay);
  const asked = taken ? { ...lamp, replaceAfter: { months: UV_LAMP_MONTHS } } : lamp;
  const lit = lampHours(care.plan, enclosure, lamp, lighting).byDay.map((windows) => minutesOn(windows) * TENTHS);
  return replacementDates(asked, care.plan, Int32Array.from(lit));
}

function newLampAsks({ words }: JobContext, { uses, thermostat }: Lamp): string {
  return words.and([
    words.lampAsksDate,
    ...(uses.includes('uvb') ? [words.lampAsksUv] : []),
    ...(uses.includes('basking') && thermostat === 'none' ? [words.lampAsksProbe] : []),
  ]);
}

function probeChecks(context: JobContext, enclosure: CareEnclosure, lamp: Lamp): readonly Job[] {
  if (!lamp.uses.includes('basking') || lamp.thermostat !== 'none') return [];
  const during = probeWeeks(context, replacedOn(context, enclosure, lamp));
  return [
    jobOf(
      context,
      {
        id: `${enclosure.id}/probe-${lamp.id}`,
        kind: 'probe',
        title: context.words.probe(lamp.id),
        enclosure: enclosure.id,
      },
      { rhythm: { kind: 'days', every: 1 }, minutes: 2, during, whenAway: 'skip', source: 'practice' },
    ),
  ];
}

const SEASON_MONTHS = [3, 6, 9, 12];

/** A week from the plan's start, from every new lamp and from the first day of March, June, September and December. */
function probeWeeks({ first, last }: JobContext, replaced: readonly EpochDay[]): readonly DaySpan[] {
  const { year } = civilOf(first);
  const years = Array.from({ length: civilOf(last).year - year + 1 }, (_, index) => year + index);
  const seasons = years.flatMap((each) => SEASON_MONTHS.map((month) => epochDayOf(each, month, 1)));
  return [first, ...replaced, ...seasons]
    .filter((day) => day >= first && day <= last)
    .sort((a, b) => a - b)
    .map((from) => ({ from, to: from + PROBE_DAYS - 1 }));
}
