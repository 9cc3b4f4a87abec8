/** What powders and feeders ask of a person besides the feeds. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { CareEnclosure, Supplement } from '../../resolve/care.ts';
import { cultureStarts } from '../feeding/stock.ts';
import { POWDER_MONTHS } from './default-set.ts';
import { monthsAfter } from './due-dates.ts';
import type { Job } from './job.ts';
import { defaultJob, isOff, isOffForAll, type JobContext, jobOf } from './job-context.ts';

/** Returns the jobs of all powders, cultures and tubs of feeders. */
export function foodJobs(context: JobContext): readonly Job[] {
  return [...powderJobs(context), ...cultureJobs(context), ...upkeep(context)];
}

/** A powder that several enclosures share is thrown away once: when the first of what the file says of it is due. */
function powderJobs(context: JobContext): readonly Job[] {
  const { care } = context;
  const byId = new Map<string, { users: CareEnclosure[]; powders: Supplement[] }>();
  for (const enclosure of care.enclosures)
    for (const powder of enclosure.supplements) {
      const known = byId.get(powder.id) ?? { users: [], powders: [] };
      known.users.push(enclosure);
      known.powders.push(powder);
      byId.set(powder.id, known);
    }
  return [...byId].flatMap(([id, { users, powders }]) => {
    const dates = discardDates(context, powders);
    if (dates.length === 0 || isOffForAll(users, 'discard-powder')) return [];
    const isSaid = powders.some(({ goodForDays }) => goodForDays !== null);
    return [
      jobOf(
        context,
        { id: `discard-${id}`, kind: 'discard-powder', title: context.words.discardPowder(id), enclosure: null },
        { rhythm: { kind: 'dates', dates }, minutes: 5, whenAway: 'before', source: isSaid ? 'household' : 'practice' },
      ),
    ];
  });
}

function discardDates({ first, last }: JobContext, powders: readonly Supplement[]): readonly EpochDay[] {
  const dues = powders.flatMap(({ opened, goodForDays }) => (opened === null ? [] : [goodUntil(opened, goodForDays)]));
  if (dues.length === 0) return [];
  const shortest = powders.reduce<number | null>(
    (least, { goodForDays }) => (goodForDays === null ? least : Math.min(least ?? goodForDays, goodForDays)),
    null,
  );
  const dates: EpochDay[] = [];
  for (let due = Math.max(first, Math.min(...dues)); due <= last; due = goodUntil(due, shortest)) dates.push(due);
  return dates;
}

function goodUntil(opened: EpochDay, goodForDays: number | null): EpochDay {
  return goodForDays === null ? monthsAfter(opened, POWDER_MONTHS) : opened + Math.max(1, goodForDays);
}

function cultureJobs(context: JobContext): readonly Job[] {
  const { care, words, first } = context;
  return cultureStarts(care, first).flatMap(({ enclosure: id, feeder, dates }) => {
    const enclosure = care.enclosures.find((each) => each.id === id);
    if (!enclosure || isOff(enclosure, 'culture')) return [];
    const named = { id: `${id}/culture-${feeder}`, kind: 'culture', title: words.culture(feeder), enclosure: id };
    return [
      jobOf(context, named, { rhythm: { kind: 'dates', dates }, minutes: 10, whenAway: 'before', source: 'household' }),
    ];
  });
}

function upkeep(context: JobContext): readonly Job[] {
  const keeping = context.care.enclosures.filter(({ feeders }) => feeders.some(({ food }) => food === 'insects'));
  if (keeping.length === 0 || isOffForAll(keeping, 'feeder-upkeep')) return [];
  const named = { id: 'feeder-upkeep', title: context.words.feederUpkeep, enclosure: null };
  return [defaultJob(context, 'feeder-upkeep', named)];
}
