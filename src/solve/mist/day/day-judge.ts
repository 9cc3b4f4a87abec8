/** Judges a day's entries: hard limits, shortfall, rhythm and water as one order, each set of entries simulated once. */
import type { MinuteSpan } from '../../../resolve/care.ts';
import { HumidityCurve, hoursAbove, longestDryMinutes, peakMinutes } from '../../../science/day-figures.ts';
import type { Run } from '../../../science/enclosure-day.ts';
import { PeriodicDay } from '../../../science/wet-enclosure.ts';
import { type CaseFigures, type DayProblem, GIVING_WAY, type HumidityTargets, type MistCase } from './day-problem.ts';
import {
  type Amounts,
  DRY_OUT_MARGIN_MINUTES,
  excessG,
  fillPlannedAmounts,
  indexOfLimit,
  inHours,
  machineAllows,
  tankWaterG,
  WATER_MARGIN,
} from './hard-limits.ts';
import { centredBand, peakLevels, shortfallOf, targetMisses, withMargins } from './humidity-shortfall.ts';
import { type StartGrid, startGrid } from './start-grid.ts';

const SHORTFALL_STEP = 0.05;
const MEAN_STEP = 0.02;
const RHYTHM_STEP_MINUTES = 30;
const DRY_OUT = indexOfLimit('dry-out');
const TRAY = indexOfLimit('tray');

/** How good a set of entries is; smaller is better, level by level. */
export interface Score {
  readonly entries: readonly Run[];
  /** Limits exceeded, by index of `GIVING_WAY`; empty where all hold. */
  readonly broken: readonly number[];
  readonly amounts: readonly number[];
  /** Shortfall, mean, rhythm (in steps), water in 0.1 g, entries; with a cadence alone count and lengths stand first. */
  readonly levels: readonly number[];
  /** With margins, not in steps; the search goes by it where no step is gained. */
  readonly shortfall: number;
  /** Mean humidity less the middle of its band, of the case farthest from it. */
  readonly meanOff: number;
}

/** Returns whether a score that can only become worse still matters to whoever asked for it. */
export type Hope = (least: Score) => boolean;

interface PreparedCase {
  readonly one: MistCase;
  readonly day: PeriodicDay;
  readonly targets: HumidityTargets;
  readonly aims: boolean;
  readonly simulates: boolean;
}

/** Judges entries of one problem, with the hard limits' margins or without them. */
export class DayJudge {
  readonly problem: DayProblem;
  readonly grid: StartGrid;
  readonly margins: boolean;
  /** True where the cadence is the whole target. */
  readonly cadenceAlone: boolean;
  simulations = 0;
  /** The best of all that were judged. */
  best: Score | null = null;
  readonly #cases: readonly PreparedCase[];
  readonly #dry: readonly MinuteSpan[];
  readonly #curve = new HumidityCurve();
  readonly #amounts: Amounts = new Float64Array(GIVING_WAY.length);
  readonly #known = new Map<string, Score | null>();

  constructor(problem: DayProblem, margins: boolean) {
    this.problem = problem;
    this.margins = margins;
    this.grid = startGrid(problem);
    this.#dry = problem.cases.flatMap((one) => one.forbidden.runs);
    this.cadenceAlone =
      problem.cases.every((one) => !aimsAtHumidity(one.targets)) && problem.cases.some((one) => one.cadence);
    this.#cases = problem.cases.map((one) => ({
      one,
      day: new PeriodicDay(one.body, one.spray, one.air),
      targets: withMargins(one.targets),
      aims: aimsAtHumidity(one.targets),
      simulates: aimsAtHumidity(one.targets) || one.dryOut !== null || one.runOffAtMostG !== null,
    }));
  }

  /** Returns the entries in the order of the day. */
  ordered(entries: readonly Run[]): Run[] {
    const position = (run: Run) => this.grid.slotAt.get(run.startMinute)?.position ?? run.startMinute;
    return [...entries].sort((a, b) => position(a) - position(b));
  }

  /**
   * Returns the score of entries in the order of the day, or null where pump or timer cannot run them or they are forbidden for good.
   * With `hope` also null, and with as little simulated as need be, once neither `hope` nor the best so far leaves them a chance.
   */
  score(entries: readonly Run[], hope: Hope | null = null): Score | null {
    const key = keyOf(entries);
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const score = machineAllows(this.problem.machine, entries, this.grid, this.#dry)
      ? this.#judge(entries, hope)
      : null;
    if (score === 'hopeless') return null;
    this.#known.set(key, score);
    if (score && (!this.best || compareScores(score, this.best, this.grid) < 0)) this.best = score;
    return score;
  }

  /** Returns whether entries can be run and hold every limit that needs no simulation. */
  holdsPlanned(entries: readonly Run[]): boolean {
    if (!machineAllows(this.problem.machine, entries, this.grid, this.#dry)) return false;
    return fillPlannedAmounts(this.#amounts, this.problem, this.grid, entries, this.margins);
  }

  /** Adds what each case tells; after each step the score so far is the best that can still come of these entries. */
  #judge(entries: readonly Run[], hope: Hope | null): Score | 'hopeless' {
    fillPlannedAmounts(this.#amounts, this.problem, this.grid, entries, this.margins);
    const clock = this.#clockLevels(entries);
    let [shortfall, meanOff] = [0, 0];
    const sofar = () => this.#scoreOf(entries, clock, shortfall, meanOff);
    const isLost = () => hope !== null && this.#isLost(sofar(), hope);
    if (isLost()) return 'hopeless';
    for (const prepared of this.#cases) {
      if (!prepared.simulates) continue;
      this.#simulate(prepared, entries);
      this.#fillSimulated(prepared);
      if (isLost()) return 'hopeless';
      if (!prepared.aims) continue;
      const figures = this.#figures(prepared, prepared.targets, entries);
      shortfall = Math.max(shortfall, shortfallOf(targetMisses(prepared.targets, figures)));
      const off = distanceFromMiddle(prepared.one.targets, figures);
      if (Math.abs(off) > Math.abs(meanOff)) meanOff = off;
      if (this.#cases.length > 1 && isLost()) return 'hopeless';
    }
    return sofar();
  }

  #isLost(least: Score, hope: Hope): boolean {
    return !hope(least) && this.best !== null && compareScores(least, this.best, this.grid) >= 0;
  }

  #scoreOf(entries: readonly Run[], clock: readonly number[], shortfall: number, meanOff: number): Score {
    const amounts = this.#amounts;
    const broken: number[] = [];
    for (let i = 0; i < amounts.length; i++) if ((amounts[i] ?? 0) > 0) broken.push(i);
    const levels = this.cadenceAlone
      ? clock
      : [stepsOf(shortfall, SHORTFALL_STEP), stepsOf(Math.abs(meanOff), MEAN_STEP), ...clock];
    return { entries, broken, amounts: broken.length > 0 ? [...amounts] : NONE, levels, shortfall, meanOff };
  }

  #simulate({ day }: PreparedCase, entries: readonly Run[]): void {
    this.simulations++;
    day.simulate(entries);
  }

  /** Returns the figures of a case that was simulated last. */
  #figures({ one, day }: PreparedCase, targets: HumidityTargets, entries: readonly Run[]): CaseFigures {
    this.#curve.read(day);
    return caseFigures(one, targets, day, this.#curve, entries);
  }

  #fillSimulated({ one, day }: PreparedCase): void {
    const amounts = this.#amounts;
    if (one.dryOut) {
      const least = one.dryOut.minutes + (this.margins ? DRY_OUT_MARGIN_MINUTES : 0);
      amounts[DRY_OUT] = Math.max(amounts[DRY_OUT] ?? 0, least - dryOutMinutes(one, day));
    }
    if (one.runOffAtMostG !== null) {
      const most = one.runOffAtMostG * (this.margins ? 1 - WATER_MARGIN : 1);
      amounts[TRAY] = Math.max(amounts[TRAY] ?? 0, excessG(runOffG(day), most));
    }
  }

  /** Returns the levels that need no simulation: rhythm, water, entries, and before them a cadence that stands alone. */
  #clockLevels(entries: readonly Run[]): number[] {
    const rest = [
      stepsOf(rhythmMinutes(this.grid, entries), RHYTHM_STEP_MINUTES),
      Math.round(tankWaterG(this.problem.machine, entries) * 10),
      entries.length,
    ];
    return this.cadenceAlone ? [...cadenceLevels(this.problem, entries), ...rest] : rest;
  }

  /** Returns whether a mist at a minute lies in the hours of a case's `drink`. */
  drinksAt(one: MistCase, minute: number): boolean {
    return one.drink !== null && inHours(one, minute, one.drink.when);
  }

  /** Returns figures and misses of each case without margin. */
  outcomes(entries: readonly Run[]): { readonly figures: CaseFigures; readonly targets: HumidityTargets }[] {
    return this.#cases.map((prepared) => {
      const { targets } = prepared.one;
      this.#simulate(prepared, entries);
      return { figures: this.#figures(prepared, targets, entries), targets };
    });
  }
}

const NONE: readonly number[] = GIVING_WAY.map(() => 0);

function keyOf(entries: readonly Run[]): string {
  let key = '';
  for (const entry of entries) key += `${entry.startMinute}+${entry.seconds} `;
  return key;
}

/** Returns x in steps of s, as levels are compared. */
function stepsOf(x: number, step: number): number {
  return Math.ceil(x / step - 1e-6);
}

function aimsAtHumidity(targets: HumidityTargets): boolean {
  const { day, night, mean, floor, ceiling, peak } = targets;
  return Boolean(day || night || mean || peak) || floor !== null || ceiling !== null;
}

/** Returns the day's figures of a simulated case, rounded as they are compared. */
export function caseFigures(
  one: MistCase,
  targets: HumidityTargets,
  day: PeriodicDay,
  curve: HumidityCurve,
  entries: readonly Run[],
): CaseFigures {
  const levels = peakLevels(targets);
  const peaks = levels ? peakMinutes(curve, day, entries, levels.reaches, levels.rearm) : [];
  const soaked = targets.peak ? hoursAbove(curve, day, targets.peak[1], targets.night !== null) : 0;
  return {
    dayHumidity: rounded(curve.lit),
    nightHumidity: rounded(curve.dark),
    meanHumidity: rounded(curve.mean),
    lowHumidity: rounded(curve.low),
    highHumidity: rounded(curve.high),
    peaks: peaks.length,
    peakMinutes: peaks,
    hoursSoaked: Math.round(soaked * 60) / 60,
    dryOutMinutes: dryOutMinutes(one, day),
    waterG: Math.round(day.balance.waterG * 10) / 10,
    runOffG: runOffG(day),
  };
}

function dryOutMinutes(one: MistCase, day: PeriodicDay): number {
  const { when, below } = one.dryOut ?? { when: 'lit' as const, below: 0.2 };
  return Math.round(longestDryMinutes(day, below, when));
}

function runOffG(day: PeriodicDay): number {
  return Math.round(day.balance.runOffG * 10) / 10;
}

function rounded(humidity: number): number {
  return Math.round(humidity * 1e5) / 1e5;
}

/** Returns the mean humidity less the middle of its band; 0 where no band has a middle to be near. */
function distanceFromMiddle(targets: HumidityTargets, figures: CaseFigures): number {
  const centred = centredBand(targets);
  if (!centred) return 0;
  const value = centred.of === 'day' ? figures.dayHumidity : figures.meanHumidity;
  const off = value - (centred.band[0] + centred.band[1]) / 2;
  return Number.isNaN(off) ? 0 : off;
}

/** Returns the largest distance of a start from its place in minutes. */
function rhythmMinutes(grid: StartGrid, entries: readonly Run[]): number {
  const places = grid.places(entries.length);
  let worst = 0;
  for (let i = 0; i < entries.length; i++) {
    const position = grid.slotAt.get(entries[i]?.startMinute ?? 0)?.position ?? 0;
    worst = Math.max(worst, Math.abs(position - (places[i] ?? position)));
  }
  return worst;
}

/** With a cadence alone: count nearest to the middle of its range, then lengths likewise (the farthest, then all together); ties the less. */
function cadenceLevels(problem: DayProblem, entries: readonly Run[]): number[] {
  const cadence = problem.cases.find((one) => one.cadence)?.cadence;
  if (!cadence) return [0, 0, 0];
  const middle = (cadence.seconds[0] + cadence.seconds[1]) / 2;
  const lengths = entries.map((entry) => fromMiddle(entry.seconds, middle));
  const count = fromMiddle(entries.length, (cadence.perDay[0] + cadence.perDay[1]) / 2);
  return [count, Math.max(0, ...lengths), lengths.reduce((sum, length) => sum + length, 0)];
}

/** Returns twice the distance from a middle, a little more above it. */
function fromMiddle(value: number, middle: number): number {
  return 2 * Math.abs(value - middle) + (value > middle ? 0.5 : 0);
}

/** Compares two scores: limits that hold, then the levels, then the earlier entries. Negative where the first is better. */
export function compareScores(a: Score, b: Score, grid: Pick<StartGrid, 'slotAt'>): number {
  return compareBroken(a, b) || compareNumbers(a.levels, b.levels) || compareEntries(a.entries, b.entries, grid);
}

/** Fewest limits, then the earliest of the list, then the least amounts, the last of the list first. */
function compareBroken(a: Score, b: Score): number {
  if (a.broken.length === 0 && b.broken.length === 0) return 0;
  const which = a.broken.length - b.broken.length || compareNumbers(a.broken, b.broken);
  if (which !== 0) return which;
  for (let i = GIVING_WAY.length - 1; i >= 0; i--) {
    const more = (a.amounts[i] ?? 0) - (b.amounts[i] ?? 0);
    if (Math.abs(more) > 1e-9) return more;
  }
  return 0;
}

function compareNumbers(a: readonly number[], b: readonly number[]): number {
  const length = Math.max(a.length, b.length);
  for (let i = 0; i < length; i++) {
    const more = (a[i] ?? -1) - (b[i] ?? -1);
    if (Math.abs(more) > 1e-9) return more;
  }
  return 0;
}

function compareEntries(a: readonly Run[], b: readonly Run[], grid: Pick<StartGrid, 'slotAt'>): number {
  const position = (run: Run | undefined) => grid.slotAt.get(run?.startMinute ?? 0)?.position ?? 0;
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const later = position(a[i]) - position(b[i]);
    if (later !== 0) return later;
  }
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const longer = (a[i]?.seconds ?? 0) - (b[i]?.seconds ?? 0);
    if (longer !== 0) return longer;
  }
  return a.length - b.length;
}
