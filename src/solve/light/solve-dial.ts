/**
 * Chooses the settings of one dial exactly: least worst error, then least sum, fewest settings, fewest pins moved, earliest dates,
 * shortest lengths. Source: R. Bellman, On the approximation of curves by line segments using dynamic programming, CACM 4 (1961) 284.
 */
import type { DialWindow } from '../../hardware/pins.ts';
import { pinsMoved } from '../../hardware/pins.ts';
import { type DialGraph, layOutGraph, MOST_ERROR_TENTHS, NEVER, underJump } from './dial-graph.ts';
import type { ChosenSetting, DialProblem, DialSolution, TradeoffRow } from './dial-problem.ts';
import {
  type BoundedGraph,
  boundedGraph,
  fewestSettings,
  leastPossibleWorst,
  leastWorst,
  settingsNeeded,
} from './fewest-settings.ts';
import { OptimalPaths } from './optimal-paths.ts';
import type { SettingsAllowed, WorstCurve } from './settings-allowed.ts';
import { settingsAllowed, worstCurve, worstWith } from './settings-allowed.ts';
import { settledPath } from './settled-path.ts';
import type { SumLayers } from './sum-layers.ts';
import { leastBeginning, sumLayers } from './sum-layers.ts';

/** The settings chosen from the day of the plan or re-plan on, and their errors. */
interface ChosenPlan {
  readonly settings: number;
  readonly held: readonly Held[];
  readonly worst: number;
  readonly sum: number;
}

/** A setting without its errors. */
interface Held {
  readonly fromDayIndex: number;
  readonly window: DialWindow;
}

/** Returns the settings, their errors and the trade-off; every problem has a solution, because a dial may show no window at all. */
export function solveDial(problem: DialProblem): DialSolution {
  const graph = layOutGraph(problem);
  const allowed = settingsAllowed(problem, graph);
  const curve = worstCurve(allowed.bounded);
  const plans = new PlansBySettings(allowed.bounded, curve);
  const past = pastErrors(problem);
  const tradeoff = curve.worstTenths.map((_, at) => tradeoffRow(problem, plans.of(curve.fewest + at), past));
  const chosen = plans.of(allowed.settings);
  const settings = withErrors(problem, wholePlan(problem, chosen.held));
  return {
    settings,
    worstErrorTenths: Math.max(...settings.map((setting) => setting.worstErrorTenths)),
    sumErrorTenths: settings.reduce((sum, setting) => sum + setting.sumErrorTenths, 0),
    largestJumpMinutes: largestJump(problem, settings),
    pinsMoved: totalPinsMoved(problem, settings),
    tradeoff,
    leastPossibleWorstTenths: Math.max(past.worst, curve.worstTenths.at(-1) ?? 0),
    toleranceReached: allowed.toleranceReached,
    jumpKept: allowed.jumpKept,
    jumpCost: jumpCostOf(problem, allowed, chosen.worst),
    heldForSpacing: graph.source.settingsBefore > 0 && problem.past === null,
    beyondSettingsAtMost: allowed.beyondSettingsAtMost,
  };
}

/** The first two levels alone, over the days still to be chosen. */
export function leastErrors(problem: DialProblem): {
  readonly worstErrorTenths: number;
  readonly sumErrorTenths: number;
} {
  const allowed = settingsAllowed(problem, layOutGraph(problem));
  const { bounded, settings } = allowed;
  const worstTenths = leastWorst(bounded, settings, 0, 14_400);
  fewestSettings(bounded, worstTenths);
  const left = changesAfterEntry(bounded, settings);
  const layers = sumLayers(bounded, worstTenths, left);
  return { worstErrorTenths: worstTenths, sumErrorTenths: leastBeginning(layers, left).sumTenths };
}

/** The first level alone. */
export function leastWorstError(problem: DialProblem): number {
  const { bounded, settings } = settingsAllowed(problem, layOutGraph(problem));
  return leastWorst(bounded, settings, 0, MOST_ERROR_TENTHS);
}

/** The least sum of errors, however large the worst; with settings for every day no more than what each day has at best. */
export function leastSumOfErrors(problem: DialProblem): number {
  const graph = layOutGraph(problem);
  if (problem.settingsAtMost === problem.days) return sumOfNearest(graph);
  const { bounded, settings } = settingsAllowed(problem, graph);
  fewestSettings(bounded, MOST_ERROR_TENTHS);
  const left = changesAfterEntry(bounded, settings);
  return leastBeginning(sumLayers(bounded, MOST_ERROR_TENTHS, left), left).sumTenths;
}

/** Returns the sum of errors if each day had the length nearest to its targets, or held what stood before: no settings have less. */
export function sumOfNearest({ days, windows, errorTenths, source }: DialGraph): number {
  const count = windows.length;
  let sum = 0;
  for (let day = 0; day < days; day++) {
    let least = source.heldErrorTenths[day] as number;
    for (let c = 0; c < count; c++) least = Math.min(least, errorTenths[day * count + c] as number);
    sum += least;
  }
  return sum;
}

function changesAfterEntry({ graph }: BoundedGraph, settings: number): number {
  return Math.min(settings, graph.source.settingsBefore + graph.days) - graph.source.settingsBefore - 1;
}

/** The whole choice for a number of settings; neighbours with the same worst error share their layers. */
class PlansBySettings {
  readonly #plans = new Map<number, ChosenPlan>();
  #layers: SumLayers | null = null;
  #layersWorst = -1;

  constructor(
    readonly bounded: BoundedGraph,
    readonly curve: WorstCurve,
  ) {}

  of(settings: number): ChosenPlan {
    const known = this.#plans.get(settings);
    if (known) return known;
    const plan = this.#solve(settings);
    this.#plans.set(settings, plan);
    return plan;
  }

  #solve(settings: number): ChosenPlan {
    const { graph } = this.bounded;
    const worst = worstWith(this.curve, settings);
    const left = changesAfterEntry(this.bounded, settings);
    const layers = this.#layersFor(settings, worst, left);
    const beginning = leastBeginning(layers, left);
    if (beginning.sumTenths >= NEVER) throw new Error('no plan within the least worst error');
    const { starts } = settledPath(new OptimalPaths(layers, beginning));
    const held = starts.map((start) => {
      const window = graph.windows[start.c] ?? { onMinute: 0, lengthMinutes: 0 };
      return { fromDayIndex: start.day, window: { onMinute: window.onMinute, lengthMinutes: window.lengthMinutes } };
    });
    return { settings, held, worst, sum: beginning.sumTenths };
  }

  #layersFor(settings: number, worst: number, left: number): SumLayers {
    if (this.#layers && this.#layersWorst === worst && this.#layers.top >= left) return this.#layers;
    let top = left;
    for (let more = settings + 1; this.curve.worstTenths[more - this.curve.fewest] === worst; more++) top++;
    fewestSettings(this.bounded, worst);
    this.#layers = sumLayers(this.bounded, worst, top);
    this.#layersWorst = worst;
    return this.#layers;
  }
}

/** What stands already, then what was chosen. */
function wholePlan(problem: DialProblem, chosen: readonly Held[]): readonly Held[] {
  if (problem.past) {
    const today = problem.past.untilDayIndex;
    const past = problem.past.settings.filter(({ fromDayIndex }) => fromDayIndex < problem.days);
    return [...past, ...chosen.map((held) => ({ ...held, fromDayIndex: held.fromDayIndex + today }))];
  }
  const stays = chosen[0]?.fromDayIndex !== 0 ? problem.earlier : null;
  return stays ? [{ fromDayIndex: 0, window: stays.window }, ...chosen] : chosen;
}

function withErrors(problem: DialProblem, plan: readonly Held[]): readonly ChosenSetting[] {
  return plan.map((held, at) => {
    const toDayIndex = (plan[at + 1]?.fromDayIndex ?? problem.days) - 1;
    const { worst, sum } = errorsOver(problem, held.window.lengthMinutes, held.fromDayIndex, toDayIndex);
    return { ...held, toDayIndex, worstErrorTenths: worst, sumErrorTenths: sum };
  });
}

function errorsOver(
  problem: DialProblem,
  lengthMinutes: number,
  fromDay: number,
  toDay: number,
): { readonly worst: number; readonly sum: number } {
  let [worst, sum] = [0, 0];
  const tenths = lengthMinutes * 10;
  for (let day = fromDay; day <= toDay; day++) {
    const high = problem.highTenths[day] as number;
    const low = problem.lowTenths[day] as number;
    const error = Math.max(Math.abs(tenths - high), Math.abs(tenths - low));
    worst = Math.max(worst, error);
    sum += error;
  }
  return { worst, sum };
}

/** What the past adds to the errors of what was chosen. */
function pastErrors(problem: DialProblem): { readonly worst: number; readonly sum: number } {
  const past = problem.past?.settings ?? [];
  const until = problem.past?.untilDayIndex ?? 0;
  return past.reduce(
    (total, { fromDayIndex, window }, at) => {
      const to = Math.min(past[at + 1]?.fromDayIndex ?? until, until) - 1;
      const { worst, sum } = errorsOver(problem, window.lengthMinutes, fromDayIndex, to);
      return { worst: Math.max(total.worst, worst), sum: total.sum + sum };
    },
    { worst: 0, sum: 0 },
  );
}

/** The window before the plan, if any, then those of the plan. */
function windowsInOrder(problem: DialProblem, plan: readonly Held[]): readonly DialWindow[] {
  const windows = plan.map((held) => held.window);
  return problem.earlier ? [problem.earlier.window, ...windows] : windows;
}

function largestJump(problem: DialProblem, plan: readonly Held[]): number {
  const windows = windowsInOrder(problem, plan);
  return windows.slice(1).reduce((largest, window, at) => {
    return Math.max(largest, Math.abs(window.lengthMinutes - (windows[at]?.lengthMinutes ?? 0)));
  }, 0);
}

function totalPinsMoved(problem: DialProblem, plan: readonly Held[]): number {
  const windows = windowsInOrder(problem, plan);
  return windows.slice(1).reduce((pins, window, at) => {
    const before = windows[at];
    return before ? pins + pinsMoved(before, window, problem.stepMinutes) : pins;
  }, 0);
}

function tradeoffRow(
  problem: DialProblem,
  plan: ChosenPlan,
  past: { readonly worst: number; readonly sum: number },
): TradeoffRow {
  return {
    settings: plan.settings,
    worstErrorTenths: Math.max(past.worst, plan.worst),
    sumErrorTenths: past.sum + plan.sum,
    largestJumpMinutes: largestJump(problem, wholePlan(problem, plan.held)),
  };
}

function jumpCostOf(problem: DialProblem, allowed: SettingsAllowed, worst: number): DialSolution['jumpCost'] {
  if (problem.jumpAtMostMinutes === null) return null;
  const free = boundedGraph(underJump(allowed.bounded.graph, null));
  const possible = leastPossibleWorst(free);
  const worstWithoutTenths = leastWorst(free, allowed.settings, possible, worst);
  if (worstWithoutTenths >= worst) return null;
  const needed = settingsNeeded(allowed.bounded, worstWithoutTenths);
  return { worstWithoutTenths, settingsToUndo: needed >= NEVER ? null : needed };
}
