/** What pumps, drippers and sprayers ask of a person. */
import { type EpochDay, epochDay } from '../../basics/calendar-day.ts';
import type { Dripper, MistPump } from '../../hardware/devices.ts';
import type { MistPlan } from '../../plan/plan.ts';
import type { CareEnclosure } from '../../resolve/care.ts';
import { STANDING_WATER_DAYS } from './default-set.ts';
import type { Job } from './job.ts';
import { defaultJob, isOff, isOffForAll, type JobContext, jobOf } from './job-context.ts';

/** Returns the jobs of all pumps, in the file's order. */
export function pumpJobs(context: JobContext): readonly Job[] {
  return context.care.devices.flatMap((device) =>
    device.kind === 'mist-pump' || device.kind === 'fogger' ? jobsOfPump(context, device) : [],
  );
}

function jobsOfPump(context: JobContext, pump: MistPump): readonly Job[] {
  const { words, care } = context;
  const misted = care.enclosures.filter(({ mist }) => mist === pump.id);
  if (misted.length === 0) return [];
  const named = (name: string, title: string) => ({ id: `${pump.id}/${name}`, title, enclosure: null });
  const every = refillEveryDays(context, pump);
  const scrubsToo = every === STANDING_WATER_DAYS;
  const refill = words[scrubsToo ? 'scrubAndRefill' : 'refill'](pump.id);
  return [
    ...(every === null
      ? []
      : [
          jobOf(
            context,
            { ...named('refill', refill), kind: 'refill' },
            {
              rhythm: { kind: 'days', every },
              gapAtMostDays: every,
              minutes: scrubsToo ? 15 : 5,
              isVital: true,
              source: 'practice',
            },
          ),
        ]),
    ...(scrubsToo || every === null
      ? []
      : [defaultJob(context, 'scrub-tank', named('scrub-tank', words.scrubTank(pump.id)))]),
    defaultJob(context, 'nozzles', named('nozzles', words.nozzles(pump.id))),
    defaultJob(context, 'filter', named('filter', words.filter(pump.id))),
    defaultJob(context, 'nozzle-flow', named('nozzle-flow', words.nozzleFlow(pump.id))),
  ].filter(({ kind }) => !isOffForAll(misted, kind));
}

/** Returns the days between two refills: the least of what the keeper wants, what the tank lasts under the plan, and a week; null without a tank. */
function refillEveryDays({ misting }: Pick<JobContext, 'misting'>, { id, tank }: MistPump): number | null {
  if (!tank) return null;
  const lasts = tankDays(misting, id);
  return Math.max(
    1,
    Math.min(tank.refillEveryDays, STANDING_WATER_DAYS, lasts === null ? STANDING_WATER_DAYS : Math.floor(lasts)),
  );
}

/** Returns the fewest days that a tank lasts under the planned mists; null where nothing is planned. */
export function tankDays(misting: readonly MistPlan[], pump: string): number | null {
  const days = misting
    .filter((mist) => mist.pump === pump)
    .flatMap(({ sets }) =>
      sets.flatMap(({ conditions }) => conditions.flatMap(({ predicted }) => predicted.tankDays ?? [])),
    );
  return days.length === 0 ? null : Math.min(...days);
}

/** Returns the jobs of an enclosure's dripper and of mists by hand. */
export function wateringByHandJobs(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  return [...dripBowl(context, enclosure), ...handMists(context, enclosure), ...handDrinks(context, enclosure)].filter(
    ({ kind }) => !isOff(enclosure, kind),
  );
}

function dripBowl(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  const { words, care } = context;
  const dripper = care.devices.find(
    (device): device is Dripper => device.kind === 'dripper' && device.id === enclosure.dripper,
  );
  if (!dripper?.bowl) return [];
  const { emptyEveryDays } = dripper.bowl;
  const named = (name: string, title: string) => ({ id: `${enclosure.id}/${name}`, title, enclosure: enclosure.id });
  return [
    jobOf(
      context,
      { ...named('drip-bowl', words.dripBowl), kind: 'drip-bowl' },
      {
        rhythm: { kind: 'days', every: emptyEveryDays },
        gapAtMostDays: emptyEveryDays,
        minutes: 5,
        isVital: true,
        source: 'household',
      },
    ),
    defaultJob(context, 'drip-bowl-disinfect', named('drip-bowl-disinfect', words.dripBowlDisinfect)),
  ];
}

/** The hours of mists by hand stand in the plan of the mists; the job says that there is work that day. */
function handMists(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  const spans = context.misting
    .filter((mist) => mist.enclosure === enclosure.id && mist.pump === 'by-hand')
    .flatMap(({ sets }) => sets)
    .flatMap(({ wall }) => wall)
    .filter(({ entries }) => entries.length > 0);
  const dates = spans.flatMap(({ from, to }) => daysOf(from, to, context));
  const most = Math.max(0, ...spans.map(({ entries }) => entries.reduce((sum, { seconds }) => sum + seconds, 0)));
  if (dates.length === 0) return [];
  return [
    jobOf(
      context,
      {
        id: `${enclosure.id}/mist-by-hand`,
        kind: 'mist-by-hand',
        title: context.words.mistByHand,
        enclosure: enclosure.id,
      },
      { rhythm: { kind: 'dates', dates }, minutes: Math.ceil(most / 60) + 2, isVital: true, source: 'household' },
    ),
  ];
}

/** Where the mists cannot give what the animal must drink, a person does. */
function handDrinks(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  const sets = context.misting
    .filter((mist) => mist.enclosure === enclosure.id)
    .flatMap((mist) => mist.sets)
    .filter(({ shortfalls }) => shortfalls.some(({ target }) => target === 'drink'));
  const dates = sets.flatMap(({ from, to }) => daysOf(from, to, context));
  if (dates.length === 0) return [];
  return [
    jobOf(
      context,
      {
        id: `${enclosure.id}/drink-by-hand`,
        kind: 'drink-by-hand',
        title: context.words.drinkByHand,
        enclosure: enclosure.id,
      },
      { rhythm: { kind: 'dates', dates }, minutes: 5, isVital: true },
    ),
  ];
}

function daysOf(from: string, to: string, { first, last }: JobContext): readonly EpochDay[] {
  const [begin, end] = [Math.max(first, epochDay(from)), Math.min(last, epochDay(to))];
  return Array.from({ length: Math.max(0, end - begin + 1) }, (_, index) => begin + index);
}
