/** One job of one person with all its dates, before these are folded into events. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Words } from '../../plan/words/words.ts';

/** The parts of a plan that events are made from. */
export type CalendarParts = Pick<
  Plan,
  | 'name'
  | 'language'
  | 'timezone'
  | 'from'
  | 'to'
  | 'people'
  | 'site'
  | 'enclosures'
  | 'hardware'
  | 'lighting'
  | 'misting'
  | 'feeding'
  | 'chores'
  | 'stock'
  | 'away'
>;

export interface EventSeed {
  /** In any order. */
  readonly days: readonly EpochDay[];
  /** Minute of the day on the wall; null for some time that day. */
  readonly minute: number | null;
  /** How long it lasts; whole days of 1440 where it has no time. */
  readonly minutes: number;
  readonly title: string;
  /** Lines. */
  readonly description: readonly string[];
  readonly category: string;
  readonly for: string;
  readonly kind: string;
  /** Names the job for good: no date, time or amount in it. */
  readonly task: string;
  /** The how-manieth of the task on its date. */
  readonly slot: number;
}

export type CalendarWords = Words['calendar'];

export const ALL_DAY = { minute: null, minutes: 1440, slot: 0 } as const;
