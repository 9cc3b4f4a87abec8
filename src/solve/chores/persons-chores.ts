/** The chores of one person, with how they came by their days. */
import type { Chore } from '../../plan/plan.ts';
import type { Gathered } from './gather-problem.ts';
import type { JobCourse } from './occurrences.ts';

export interface PersonsChores {
  readonly person: string;
  readonly courses: readonly JobCourse[];
  readonly chores: readonly Chore[];
  readonly gathered: Gathered;
}
