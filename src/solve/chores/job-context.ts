/** What jobs are made from, and the common parts of a job. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { grouped } from '../../basics/grouped.ts';
import type { UtcOffsets } from '../../basics/utc-offsets.ts';
import type { DialPlan, Feed, MistPlan } from '../../plan/plan.ts';
import { type Words, words } from '../../plan/words/words.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import { DEFAULT_CHORES, type DefaultChore, type DefaultId } from './default-set.ts';
import type { Job } from './job.ts';

/** What the stages before have planned. */
export interface PlannedParts {
  readonly lighting: readonly DialPlan[];
  readonly misting: readonly MistPlan[];
  readonly feeding: readonly Feed[];
  readonly offsets: UtcOffsets;
}

export interface JobContext extends PlannedParts {
  readonly care: Care;
  readonly words: Words['chores'];
  /** Feeds by enclosure id. */
  readonly feedsOf: ReadonlyMap<string, readonly Feed[]>;
  /** Who does what nobody is named for. */
  readonly keeper: string;
  /** First and last day of the plan. */
  readonly first: EpochDay;
  readonly last: EpochDay;
}

/** Returns what all jobs are made from. */
export function jobContext(care: Care, planned: PlannedParts): JobContext {
  return {
    ...planned,
    care,
    words: words(care.language).chores,
    feedsOf: grouped(planned.feeding, ({ enclosure }) => enclosure),
    keeper: care.people[0]?.id ?? 'keeper',
    first: care.plan.from,
    last: care.plan.from + care.plan.days - 1,
  };
}

type JobWords = Pick<Job, 'id' | 'kind' | 'title' | 'enclosure'>;

/** Returns a job with what most jobs have; the rest as said. */
export function jobOf(
  { keeper }: JobContext,
  named: JobWords,
  said: Pick<Job, 'rhythm' | 'minutes'> & Partial<Job>,
): Job {
  return {
    who: keeper,
    startAfterDays: 0,
    during: null,
    leewayDays: null,
    gapAtMostDays: null,
    whenAway: 'sitter',
    isVital: false,
    source: 'ours',
    ...named,
    ...said,
  };
}

/** Returns a job of the default set. */
export function defaultJob(context: JobContext, id: DefaultId, named: Omit<JobWords, 'kind'>): Job {
  const { rhythm, minutes, whenAway, source }: DefaultChore = DEFAULT_CHORES[id];
  return jobOf(context, { ...named, kind: id }, { rhythm, minutes, whenAway, source });
}

/** Returns whether the file switches a chore off for an enclosure, or names one of its own with the same id. */
export function isOff({ choresOff, chores }: CareEnclosure, id: string): boolean {
  return choresOff.includes(id) || chores.some((chore) => chore.id === id);
}

/** Returns whether a chore of several enclosures is off: each of them switches it off. */
export function isOffForAll(enclosures: readonly CareEnclosure[], id: string): boolean {
  return enclosures.length > 0 && enclosures.every((enclosure) => isOff(enclosure, id));
}
