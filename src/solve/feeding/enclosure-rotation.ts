/** All rotations of one enclosure through its stages, going on from an earlier plan or from the file's last dates. */
import { type EpochDay, epochDay, isoDateOf } from '../../basics/calendar-day.ts';
import type { Feed, FoodStream, Plan, RotationState } from '../../plan/plan.ts';
import type { Care, CareEnclosure, Stage } from '../../resolve/care.ts';
import { type Given, givenBefore } from './powders.ts';
import { feederShares } from './rates.ts';
import { type Before, type Rotated, type RotationFeed, relaid, rotate } from './rotation.ts';

export interface EnclosureRotation {
  readonly feeds: readonly RotationFeed[];
  /** The past feeds of the plan by the orders that go on. */
  readonly pastFeeds: readonly RotationFeed[];
  /** What was given before the first of the feeds. */
  readonly givenBefore: readonly Given[];
  /** States of streams whose stage is past, as the earlier plan has them: their orders tell what was laid. */
  readonly closed: readonly RotationState[];
  /** What each stage's streams came to, for messages. */
  readonly parts: readonly RotationPart[];
}

export interface RotationPart {
  readonly stageName: string;
  readonly stage: Stage;
  readonly food: FoodStream;
  readonly dusted: boolean;
  readonly to: EpochDay;
  readonly lastFeedBefore: EpochDay | null;
  readonly rotated: Rotated;
}

/** A stage in the days that it covers, both inclusive. */
export interface StageSpan {
  readonly stageName: string;
  readonly stage: Stage;
  /** The first day of the stage in the plan. */
  readonly began: EpochDay;
  readonly from: EpochDay;
  readonly to: EpochDay;
}

/** Returns the stages of an enclosure over the plan up to `to`, in order; those before `from` are past. */
function stageSpans(enclosure: CareEnclosure, planFrom: EpochDay, from: EpochDay, to: EpochDay): readonly StageSpan[] {
  return enclosure.stages.flatMap(({ from: start, stage: stageName }, i) => {
    const end = Math.min(to, (enclosure.stages[i + 1]?.from ?? to + 1) - 1);
    const stage = enclosure.targets.stages[stageName];
    const began = Math.max(planFrom, start);
    return stage && end >= began
      ? [{ stageName, stage, began, from: Math.min(end, Math.max(from, began)), to: end }]
      : [];
  });
}

/** Returns the stream that a stage's dustings go on: insects, else greens, where a feeder of it takes dust; null for none. */
function dustedStream(enclosure: CareEnclosure, stage: Stage): FoodStream | null {
  const fed = (['insects', 'greens'] as const).filter((food) => stage.feeds.some((rule) => rule.food === food));
  return fed.find((food) => feederShares(enclosure, food).some(({ dust }) => dust)) ?? null;
}

/** Returns the rotations of an enclosure over [from, to]. `earlier` may end before `from`, or reach over it. */
export function rotateEnclosure(
  care: Care,
  enclosure: CareEnclosure,
  earlier: Plan | null,
  from: EpochDay,
  to: EpochDay,
): EnclosureRotation {
  const past = (earlier?.feeding ?? []).filter(
    (feed) => feed.enclosure === enclosure.id && feed.date < isoDateOf(from),
  );
  const spans = stageSpans(enclosure, care.plan.from, from, to);
  const earlierGiven = [...givenBefore(enclosure, spans[0]?.stage.apart ?? []), ...givenIn(past, enclosure)];
  const given: Given[] = [...earlierGiven];
  const parts: RotationPart[] = [];
  const before = (span: StageSpan, food: FoodStream): Before =>
    beforeOf(enclosure, earlier, { ...span, food }, past, parts, given);
  for (const { food, ...span } of spans.filter((each) => each.to >= from).flatMap(streamsOf)) {
    const dusted = food === dustedStream(enclosure, span.stage);
    const goesOnFrom = before(span, food);
    const rotated = rotate({ care, enclosure, ...span, food, dusted }, goesOnFrom);
    const { stageName, stage } = span;
    parts.push({ stageName, stage, food, dusted, to: span.to, lastFeedBefore: goesOnFrom.lastFeed, rotated });
    for (const { day, dusting } of rotated.feeds)
      if (dusting !== null) given.push({ powder: dusting, day, rules: stage.apart });
  }
  const closed = spans.filter((each) => each.to < from).flatMap(streamsOf);
  const closedStates = closed.flatMap(
    ({ food, stageName }) =>
      earlier?.rotation.findLast(
        (state) => state.enclosure === enclosure.id && state.food === food && state.order?.stage === stageName,
      ) ?? [],
  );
  const pastFeeds = [
    ...closed.flatMap(({ food, ...span }) => {
      const dusted = food === dustedStream(enclosure, span.stage);
      return relaid({ care, enclosure, ...span, from, food, dusted }, before(span, food));
    }),
    ...parts.flatMap(({ rotated }) => rotated.pastFeeds),
  ];
  const feeds = parts.flatMap(({ rotated }) => rotated.feeds);
  return {
    feeds: feeds.toSorted(byDay),
    pastFeeds: pastFeeds.toSorted(byDay),
    givenBefore: earlierGiven,
    closed: closedStates,
    parts,
  };
}

function streamsOf(span: StageSpan): readonly (StageSpan & { readonly food: FoodStream })[] {
  return [...new Set(span.stage.feeds.map((rule) => rule.food))].map((food) => ({ ...span, food }));
}

function byDay(a: RotationFeed, b: RotationFeed): number {
  return a.day - b.day || a.ordinal - b.ordinal;
}

function givenIn(past: readonly Feed[], enclosure: CareEnclosure): readonly Given[] {
  return past.flatMap(({ date, dusting }) => {
    if (dusting === null) return [];
    const day = epochDay(date);
    const stageName = enclosure.stages.findLast(({ from }) => from <= day)?.stage ?? '';
    return [{ powder: dusting, day, rules: enclosure.targets.stages[stageName]?.apart ?? [] }];
  });
}

function beforeOf(
  enclosure: CareEnclosure,
  earlier: Plan | null,
  { food, stageName, from }: StageSpan & { readonly food: FoodStream },
  past: readonly Feed[],
  parts: readonly RotationPart[],
  given: readonly Given[],
): Before {
  const states = (earlier?.rotation ?? []).filter((state) => state.enclosure === enclosure.id && state.food === food);
  const standing = states.findLast(({ order }) => order?.stage === stageName) ?? null;
  const here = parts.findLast((part) => part.food === food)?.rotated ?? null;
  return {
    lastFeed: here?.feeds.at(-1)?.day ?? lastFeedOf(enclosure, food, past, from),
    given,
    preceding: here
      ? { order: here.state.order, nextSlot: here.state.nextIndex }
      : runningOn(states, earlier, food, from, enclosure),
    standing: standing?.order ? { order: standing.order, worstDeviation: standing.worstDeviation } : null,
  };
}

/** The order of an earlier plan that runs on the day, with the slot that it would feed next. */
function runningOn(
  states: readonly RotationState[],
  earlier: Plan | null,
  food: FoodStream,
  from: EpochDay,
  enclosure: CareEnclosure,
): Before['preceding'] {
  const date = isoDateOf(from);
  const state = states.findLast(({ order }) => order !== undefined && order.began < date) ?? null;
  if (!state) return null;
  const next = earlier?.feeding.find(
    (feed) => feed.enclosure === enclosure.id && feed.food === food && feed.date >= date,
  );
  return { order: state.order, nextSlot: next?.slot ?? state.nextIndex };
}

/** The last feed of a stream before a day: of the earlier plan, else what the file says under the food, a feeder or `feed`. */
function lastFeedOf(
  enclosure: CareEnclosure,
  food: FoodStream,
  past: readonly Feed[],
  from: EpochDay,
): EpochDay | null {
  const planned = past.findLast((feed) => feed.food === food);
  const feeders = enclosure.feeders.filter((feeder) => feeder.food === food).map(({ id }) => id);
  const said = [food, ...feeders, 'feed'].flatMap((key) => enclosure.last[key] ?? []).filter((day) => day < from);
  const days = [...(planned ? [epochDay(planned.date)] : []), ...said.slice(0, 1)];
  return days.length === 0 ? null : Math.max(...days);
}
