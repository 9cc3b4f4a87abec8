/** How many settings a plan may have, and the least worst error that each number of them reaches. */
import type { DialGraph } from './dial-graph.ts';
import { MOST_ERROR_TENTHS, NEVER, underJump } from './dial-graph.ts';
import type { DialProblem } from './dial-problem.ts';
import {
  type BoundedGraph,
  boundedGraph,
  type KnownNeeds,
  leastPossibleWorst,
  leastWorst,
  settingsNeeded,
} from './fewest-settings.ts';

/** Settings in the plan where neither their number nor a tolerance is given. */
export const DEFAULT_SETTINGS_AT_MOST = 8;

export interface SettingsAllowed {
  readonly bounded: BoundedGraph;
  readonly settings: number;
  readonly toleranceReached: boolean;
  readonly jumpKept: boolean;
  /** One more than the household allows, because what stands may not stay. */
  readonly beyondSettingsAtMost: boolean;
}

/** Returns how many settings the choice is made among, under the largest jump that can be kept. */
export function settingsAllowed(problem: DialProblem, graph: DialGraph): SettingsAllowed {
  const { atMost, beyond } = settingsAtMost(problem, graph);
  const { bounded, jumpKept } = keptJump(problem, graph, atMost);
  const chosen = withinTolerance(problem, bounded, atMost);
  return { bounded, jumpKept, beyondSettingsAtMost: beyond, ...chosen };
}

/** The household's number, null where a tolerance alone was asked for; never fewer than the past has used up and the limits demand. */
function settingsAtMost(
  problem: DialProblem,
  graph: DialGraph,
): { readonly atMost: number | null; readonly beyond: boolean } {
  const asked = problem.settingsAtMost ?? (problem.toleranceTenths === null ? DEFAULT_SETTINGS_AT_MOST : null);
  if (asked === null) return { atMost: null, beyond: false };
  const needed = settingsNeeded(boundedGraph(underJump(graph, null)), MOST_ERROR_TENTHS);
  return needed > asked && needed < NEVER ? { atMost: needed, beyond: true } : { atMost: asked, beyond: false };
}

function keptJump(
  problem: DialProblem,
  graph: DialGraph,
  atMost: number | null,
): { readonly bounded: BoundedGraph; readonly jumpKept: boolean } {
  const most = atMost ?? NEVER - 1;
  const asked = boundedGraph(graph);
  const isKept = (bounded: BoundedGraph) => settingsNeeded(bounded, MOST_ERROR_TENTHS) <= most;
  if (problem.jumpAtMostMinutes === null || isKept(asked)) return { bounded: asked, jumpKept: true };
  let [from, to] = [Math.floor(problem.jumpAtMostMinutes) + 1, 1440];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (isKept(boundedGraph(underJump(graph, middle)))) to = middle;
    else from = middle + 1;
  }
  return { bounded: boundedGraph(underJump(graph, to)), jumpKept: false };
}

function withinTolerance(
  problem: DialProblem,
  bounded: BoundedGraph,
  atMost: number | null,
): { readonly settings: number; readonly toleranceReached: boolean } {
  const tolerance = problem.toleranceTenths;
  if (tolerance === null) return { settings: atMost ?? DEFAULT_SETTINGS_AT_MOST, toleranceReached: true };
  const fewest = settingsNeeded(bounded, Math.min(tolerance, MOST_ERROR_TENTHS));
  if (fewest <= (atMost ?? NEVER - 1)) return { settings: fewest, toleranceReached: true };
  if (atMost !== null) return { settings: atMost, toleranceReached: false };
  return { settings: settingsNeeded(bounded, leastPossibleWorst(bounded)), toleranceReached: false };
}

/** The least worst error by the number of settings allowed, from `fewest` settings on until it is as small as it can get. */
export interface WorstCurve {
  readonly fewest: number;
  readonly worstTenths: readonly number[];
}

/** Returns the whole curve. */
export function worstCurve(bounded: BoundedGraph): WorstCurve {
  const fewest = Math.max(1, settingsNeeded(bounded, MOST_ERROR_TENTHS));
  const least = leastPossibleWorst(bounded);
  const worstTenths: number[] = [];
  const known: KnownNeeds = new Map();
  let worst = MOST_ERROR_TENTHS;
  for (let settings = fewest; worstTenths.length === 0 || worst > least; settings++) {
    worst = leastWorst(bounded, settings, least, worst, known);
    worstTenths.push(worst);
  }
  return { fewest, worstTenths };
}

/** Returns the least worst error with so many settings allowed; the least possible where there are more than it takes. */
export function worstWith(curve: WorstCurve, settings: number): number {
  const at = Math.min(settings - curve.fewest, curve.worstTenths.length - 1);
  return curve.worstTenths[at] ?? MOST_ERROR_TENTHS;
}
