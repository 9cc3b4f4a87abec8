/** A prepared diet is complete: vitamins on top of it are refused. */
import type { CareEnclosure, DustingRule, Stage } from '../../resolve/care.ts';
import { compare, type Fraction } from '../../science/fraction.ts';
import { feedsPerWeek } from './feed-days.ts';
import { contentsOf } from './powders.ts';

/** Returns whether at least half of a stage's feeds, greens aside, are prepared: then the diet is taken as complete. */
function livesOnPrepared(stage: Stage): boolean {
  const perWeek = (prepared: boolean): Fraction =>
    feedsPerWeek(stage.feeds.filter(({ food }) => food !== 'greens' && (food === 'prepared') === prepared));
  return perWeek(true).n > 0 && compare(perWeek(true), perWeek(false)) >= 0;
}

/** Returns the dustings that a complete diet refuses: those with vitamins. */
export function refusedDustings(enclosure: CareEnclosure, stage: Stage): readonly DustingRule[] {
  return livesOnPrepared(stage) ? stage.dusting.filter(({ id }) => contentsOf(enclosure, id).length > 0) : [];
}
