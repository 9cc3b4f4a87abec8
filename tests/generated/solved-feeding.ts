/** The feeds of one animal of a shipped profile as solved. */
import { Log } from '../../src/diagnostics/log.ts';
import { Parts } from '../../src/plan/parts.ts';
import type { Plan, RotationState } from '../../src/plan/plan.ts';
import type { Care } from '../../src/resolve/care.ts';
import { type FeedingPlan, solveFeeding } from '../../src/solve/feeding/feeding.ts';
import { type MinimalHousehold, minimalHousehold, resolveText } from '../shipped-profiles.ts';

export const CRICKETS = '- { id: cricket, share: 75 %, dust: true, shelf_life: 14 days, gut_load: 24 h }';
export const MEALWORMS = '- { id: mealworm, share: 25 %, dust: true, shelf_life: 60 days, stand_in: true }';
const POWDERS =
  'supplements: [{ id: calcium, contains: [] }, { id: calcium-d3, contains: [d3] }, { id: multivitamin, contains: [d3, vitamin-a] }]';
const KEEPER = 'people: [{ id: keeper, feeds_at: "11:00" }, { id: sitter }]';

/** Resolves a household of one animal, its powders and people named. */
export function careOf(household: MinimalHousehold, days = 365, from = '2027-01-01'): Care {
  const text = minimalHousehold({
    ...household,
    enclosure: [...(household.enclosure ?? []), POWDERS],
    top: [KEEPER, ...(household.top ?? [])],
  }).replace('plan: { from: 2027-01-01 }', `plan: { from: ${from}, days: ${days} }`);
  const { care, diagnostics } = resolveText(text);
  const errors = diagnostics.filter(({ weight }) => weight === 'error');
  if (!care || errors.length > 0) throw new Error(errors.map(({ because }) => because).join('\n'));
  return care;
}

/** Returns the lines of an enclosure that eats insects. */
export function insects(more: readonly string[] = [], feeders = [CRICKETS, MEALWORMS]): readonly string[] {
  return [...more, 'feeders:', ...feeders.map((line) => `  ${line}`)];
}

export interface SolvedFeeding extends FeedingPlan {
  readonly codes: readonly string[];
}

/** Plans the feeds under a day of lights from 07:30 to 19:00, with the codes of what is said. */
export function solve(
  care: Care,
  earlier: Plan | null = null,
  today = care.plan.from,
  parts = new Parts(earlier),
): SolvedFeeding {
  const log = new Log();
  const lit = {
    lightsOnWallMinute: 450,
    lightsOffWallMinute: 1140,
    baskingOffWallMinute: null,
    wallLessAnimalMinutes: 0,
  };
  const plan = solveFeeding(care, () => lit, earlier, today, log, parts);
  return { ...plan, codes: log.sorted().map(({ code }) => code) };
}

/** Returns the last rotation of a food, which must have one. */
export function stateOf({ rotation }: FeedingPlan, food = 'insects'): RotationState {
  const state = rotation.findLast((each) => each.food === food);
  if (!state) throw new Error(`no rotation of ${food}`);
  return state;
}
