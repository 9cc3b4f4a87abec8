/** What an enclosure asks for by itself: cleaning, dishes, gauges, weighing, soaks. */
import { type EpochDay, epochDay } from '../../basics/calendar-day.ts';
import type { CareEnclosure } from '../../resolve/care.ts';
import { restEnd } from '../../resolve/rest-of.ts';
import { evenWeekdays } from '../feeding/feed-days.ts';
import type { DaySpan, Job } from './job.ts';
import { defaultJob, isOff, type JobContext, jobOf } from './job-context.ts';

/** Returns the default and derived chores of an enclosure, without what it switches off. */
export function enclosureJobs(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  return [
    ...everyEnclosure(context, enclosure),
    ...wateringJobs(context, enclosure),
    ...weighings(context, enclosure),
    ...leftovers(context, enclosure),
  ].filter(({ kind }) => !isOff(enclosure, kind));
}

function everyEnclosure(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  const { words } = context;
  const named = (name: string, title: string) => ({ id: `${enclosure.id}/${name}`, title, enclosure: enclosure.id });
  const { humidity, temperature } = enclosure.targets;
  const hasGauge = Object.values(humidity).some((target) => target !== null);
  const isPlanted = enclosure.planting !== 'none';
  const isMisted = enclosure.mist !== 'none';
  const hasUv = enclosure.lamps.some(({ uses }) => uses.includes('uvb'));
  return [
    ...(temperature.dayC ? [defaultJob(context, 'temperatures', named('temperatures', words.temperatures))] : []),
    defaultJob(context, 'spot-clean', named('spot-clean', words.spotClean)),
    ...(isPlanted ? [] : [defaultJob(context, 'deep-clean', named('deep-clean', words.deepClean))]),
    ...(isPlanted ? [defaultJob(context, 'plants', named('plants', words.plants))] : []),
    ...(isMisted ? [defaultJob(context, 'mould', named('mould', words.mould))] : []),
    ...(hasGauge ? [defaultJob(context, 'gauge', named('gauge', words.gauge))] : []),
    ...(hasGauge ? [defaultJob(context, 'salt-test', named('salt-test', words.saltTest))] : []),
    defaultJob(context, 'thermometer', named('thermometer', words.thermometer)),
    ...(hasUv ? [defaultJob(context, 'uv-index', named('uv-index', words.uvIndex))] : []),
    defaultJob(context, 'vet-check', named('vet-check', words.vetCheck)),
  ];
}

/** The dish, the moist hide and the soak come from the targets, the tray from the file. */
function wateringJobs(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  const { words } = context;
  const { targets, tray, id } = enclosure;
  const named = (kind: string, title: string) => ({ id: `${id}/${kind}`, kind, title, enclosure: id });
  const every = (days: number) => ({ kind: 'days', every: days }) as const;
  const { dish, soak } = targets.water;
  const hasOwnDish = enclosure.chores.some((chore) => chore.id === 'water-dish');
  return [
    ...(dish && !hasOwnDish
      ? [
          jobOf(context, named('dish', words.dish), {
            rhythm: every(dish.changeEveryDays),
            minutes: 2,
            isVital: true,
            source: sourceOf(enclosure, 'water.dish'),
          }),
        ]
      : []),
    ...(tray
      ? [
          jobOf(context, named('empty-tray', words.emptyTray), {
            rhythm: every(tray.emptyEveryDays),
            gapAtMostDays: tray.emptyEveryDays,
            minutes: 3,
            source: 'household',
          }),
        ]
      : []),
    ...(targets.moistHide
      ? [
          jobOf(context, named('moist-hide', words.moistHide), {
            rhythm: every(targets.moistHide.dampenEveryDays),
            minutes: 2,
            source: sourceOf(enclosure, 'moist_hide'),
          }),
        ]
      : []),
    ...(soak
      ? [
          jobOf(context, named('soak', words.soak(soak.minutes)), {
            rhythm: { kind: 'weekdays', weekdays: evenWeekdays(Math.min(7, Math.max(1, Math.round(soak.perWeek)))) },
            minutes: soak.minutes + 5,
            source: sourceOf(enclosure, 'water.soak'),
          }),
        ]
      : []),
  ];
}

/** Returns who says a target: the source of the first record at or below the path. */
function sourceOf({ targetRecords }: CareEnclosure, path: string): string {
  const record = targetRecords.find((each) => each.path === path || each.path.startsWith(`${path}.`));
  if (record?.origin.kind === 'file') return 'household';
  return record?.origin.citation ?? record?.origin.source ?? 'ours';
}

const YOUNG = /^(hatchling|juvenile|subadult|young)/;

/** Once a month as an adult; once a week when young, in rest, in quarantine, ill, new or gravid. */
function weighings(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  const weekly = weeklySpans(context, enclosure);
  const monthly = spansBetween(weekly, context.first, context.last);
  const named = (name: string) => ({
    id: `${enclosure.id}/${name}`,
    title: context.words.weigh,
    enclosure: enclosure.id,
  });
  return [
    ...(monthly.length > 0 ? [{ ...defaultJob(context, 'weigh', named('weigh')), during: monthly }] : []),
    ...(weekly.length > 0
      ? [
          {
            ...defaultJob(context, 'weigh', named('weigh-weekly')),
            rhythm: { kind: 'days' as const, every: 7 },
            during: weekly,
          },
        ]
      : []),
  ];
}

function weeklySpans({ first, last }: JobContext, enclosure: CareEnclosure): readonly DaySpan[] {
  const young = enclosure.stages.flatMap(({ from, stage }, at) =>
    YOUNG.test(stage) ? [{ from, to: (enclosure.stages[at + 1]?.from ?? last + 1) - 1 }] : [],
  );
  const watched = enclosure.states.filter(({ is }) => is !== 'shedding').map(({ from, to }) => ({ from, to }));
  const rest = enclosure.rest ? [{ from: enclosure.rest.from, to: restEnd(enclosure.rest) - 1 }] : [];
  return joined([...young, ...watched, ...rest].flatMap((span) => clipped(span, first, last)));
}

function clipped({ from, to }: DaySpan, first: EpochDay, last: EpochDay): readonly DaySpan[] {
  const span = { from: Math.max(from, first), to: Math.min(to, last) };
  return span.from <= span.to ? [span] : [];
}

function joined(spans: readonly DaySpan[]): readonly DaySpan[] {
  const result: DaySpan[] = [];
  for (const span of spans.toSorted((a, b) => a.from - b.from)) {
    const last = result.at(-1);
    if (last && span.from <= last.to + 1)
      result[result.length - 1] = { from: last.from, to: Math.max(last.to, span.to) };
    else result.push(span);
  }
  return result;
}

function spansBetween(spans: readonly DaySpan[], first: EpochDay, last: EpochDay): readonly DaySpan[] {
  const starts = [first, ...spans.map(({ to }) => to + 1)];
  return starts.flatMap((from, at) => clipped({ from, to: (spans[at]?.from ?? last + 1) - 1 }, first, last));
}

/** Greens and prepared food are taken out after their hours: on the next day, where the feed says how long they may stay. */
function leftovers(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  const days = new Set<EpochDay>();
  for (const feed of context.feedsOf.get(enclosure.id) ?? []) {
    const hours = removeAfterHours(enclosure, feed.food, epochDay(feed.date));
    if (hours !== null) days.add(epochDay(feed.date) + Math.max(1, Math.ceil(hours / 24)));
  }
  const dates = [...days].filter((day) => day <= context.last).sort((a, b) => a - b);
  if (dates.length === 0) return [];
  const named = { id: `${enclosure.id}/remove-food`, kind: 'remove-food', title: context.words.removeFood };
  return [
    jobOf(
      context,
      { ...named, enclosure: enclosure.id },
      {
        rhythm: { kind: 'dates', dates },
        minutes: 1,
        source: 'practice',
      },
    ),
  ];
}

function removeAfterHours(enclosure: CareEnclosure, food: string, day: EpochDay): number | null {
  const stage = enclosure.stages.findLast(({ from }) => from <= day)?.stage ?? enclosure.stages[0]?.stage ?? '';
  const rule = enclosure.targets.stages[stage]?.feeds.find((each) => each.food === food);
  return rule?.removeAfterHours ?? null;
}
