/**
 * The order of a day's entries a second time, coded apart for the tests: every set of entries of a coarse instance, judged from the
 * published rules on the simulated curve. Shares with the product the simulated day alone.
 */
import { HumidityCurve } from '../../../src/science/day-figures.ts';
import type { Run } from '../../../src/science/enclosure-day.ts';
import { PeriodicDay } from '../../../src/science/wet-enclosure.ts';
import type { DayProblem, MistCase } from '../../../src/solve/mist/day/day-problem.ts';

type Band = readonly [number, number];

/** Levels in order, smaller is better: how many limits, which, their amounts (last of the list first), then the six of the order. */
export interface Judged {
  readonly runs: readonly Run[];
  readonly broken: readonly number[];
  readonly key: readonly number[];
}

const LIMITS = 9;

export class SecondJudge {
  readonly #problem: DayProblem;
  readonly #margins: boolean;
  readonly #days: readonly PeriodicDay[];
  readonly #begins: number;
  readonly #lightsOff: number;
  readonly starts: readonly number[];
  readonly #free: readonly number[];

  constructor(problem: DayProblem, margins: boolean) {
    this.#problem = problem;
    this.#margins = margins;
    this.#days = problem.cases.map((one) => new PeriodicDay(one.body, one.spray, one.air));
    // The instances have one lit window before midnight each.
    this.#begins = (Math.min(...problem.cases.map((one) => one.air.lit.onMinute)) - 30 + 1440) % 1440;
    this.#lightsOff = Math.max(...problem.cases.map((one) => this.at(one.air.lit.onMinute) + one.air.lit.minutes));
    const grid: number[] = [];
    for (let minute = 0; minute < 1440; minute += problem.machine.startStepMinutes) grid.push(minute);
    grid.sort((a, b) => this.at(a) - this.at(b));
    const shortest = problem.machine.shortestSeconds / 60;
    this.starts = grid.filter(
      (minute) =>
        !problem.cases.some(
          ({ forbidden }) => holds(forbidden.starts, minute) || flowsIn(forbidden.runs, minute, shortest),
        ),
    );
    const free = this.starts.filter(
      (minute) =>
        !problem.cases.some((one) => holds(one.forbidden.noise, minute) || holds(one.forbidden.noMist, minute)),
    );
    this.#free = free.length > 0 ? free : this.starts;
  }

  /** Minutes since the day's beginning. */
  at(minute: number): number {
    return (minute - this.#begins + 1440) % 1440;
  }

  judge(runs: readonly Run[]): Judged | null {
    const { machine } = this.#problem;
    if (runs.length > machine.entriesAtMost) return null;
    for (let i = 0; i < runs.length; i++) {
      const [run, next] = [runs[i], runs[(i + 1) % runs.length]];
      if (!run || !next) continue;
      if (run.seconds > machine.longestSeconds || run.seconds < machine.shortestSeconds) return null;
      const apart = ((next.startMinute - run.startMinute + 1440) % 1440 || 1440) * 60;
      if (apart - run.seconds < machine.restSeconds) return null;
    }
    const amounts = this.#planned(runs);
    let shortfall = 0;
    let middle = 0;
    this.#problem.cases.forEach((one, i) => {
      const day = this.#days[i];
      if (!day) return;
      day.simulate(runs);
      const curve = new HumidityCurve();
      curve.read(day);
      const figures = figuresOf(one, day, curve, runs);
      if (one.dryOut) {
        const asked = one.dryOut.minutes + (this.#margins ? 15 : 0);
        amounts[3] = Math.max(amounts[3] ?? 0, asked - figures.dryMinutes);
      }
      if (one.runOffAtMostG !== null) {
        const most = one.runOffAtMostG * (this.#margins ? 0.98 : 1);
        amounts[5] = Math.max(amounts[5] ?? 0, tenthsAbove(figures.runOffG, most));
      }
      shortfall = Math.max(shortfall, figures.shortfall);
      middle = Math.max(middle, figures.middle);
    });
    const broken = amounts.flatMap((amount, i) => (amount > 0 ? [i] : []));
    const water = this.#water(runs);
    const key = [
      broken.length,
      ...Array.from({ length: LIMITS }, (_, k) => broken[k] ?? -1),
      ...[...amounts].reverse(),
      steps(shortfall, 0.05),
      steps(middle, 0.02),
      steps(this.#rhythm(runs), 30),
      Math.round(water * 10),
      runs.length,
      ...runs.map((run) => this.at(run.startMinute)),
      ...runs.map((run) => run.seconds),
    ];
    return { runs, broken, key };
  }

  #water(runs: readonly Run[]): number {
    const { pumpFlowGPerHour, lagSeconds, afterDripG } = this.#problem.machine;
    return runs.reduce((sum, run) => sum + (pumpFlowGPerHour * (run.seconds - lagSeconds)) / 3600 + afterDripG, 0);
  }

  #planned(runs: readonly Run[]): number[] {
    const amounts = new Array<number>(LIMITS).fill(0);
    const atLeast = (index: number, amount: number) => {
      amounts[index] = Math.max(amounts[index] ?? 0, amount);
    };
    for (const one of this.#problem.cases) {
      if (one.cadence) {
        const { perDay, seconds, gapMinutes } = one.cadence;
        atLeast(1, Math.max(perDay[0] - runs.length, runs.length - perDay[1]));
        runs.forEach((run, i) => {
          const next = runs[(i + 1) % runs.length] ?? run;
          const apart = (next.startMinute - run.startMinute + 1440) % 1440 || 1440;
          if (gapMinutes !== null) atLeast(0, gapMinutes - apart);
          atLeast(2, Math.max(seconds[0] - run.seconds, run.seconds - seconds[1]));
        });
      }
      if (one.drink) {
        const { when, seconds, mists } = one.drink;
        const there = runs.filter((run) => {
          const lit = (run.startMinute - one.air.lit.onMinute + 1440) % 1440 < one.air.lit.minutes;
          return run.seconds >= seconds && (when === 'any' || lit === (when === 'lit'));
        });
        atLeast(8, mists - there.length);
      }
    }
    const { waterAtMostG } = this.#problem;
    if (waterAtMostG !== null) atLeast(4, tenthsAbove(this.#water(runs), waterAtMostG * (this.#margins ? 0.98 : 1)));
    for (const run of runs) {
      amounts[6] = (amounts[6] ?? 0) + this.#inside(run.startMinute, 'noise');
      amounts[7] = (amounts[7] ?? 0) + this.#inside(run.startMinute, 'noMist');
    }
    return amounts;
  }

  /** Minutes to the nearer end of a closed span, at least 1. */
  #inside(minute: number, which: 'noise' | 'noMist'): number {
    let most = 0;
    for (const one of this.#problem.cases) {
      for (const { fromMinute, toMinute } of one.forbidden[which]) {
        const since = (minute - fromMinute + 1440) % 1440;
        const length = (toMinute - fromMinute + 1440) % 1440 || 1440;
        if (since < length) most = Math.max(most, Math.max(1, Math.min(since + 1, length - since)));
      }
    }
    return most;
  }

  #rhythm(runs: readonly Run[]): number {
    const n = runs.length;
    const { favour, gapMinutes } = this.#problem.rhythm;
    const gap = gapMinutes ?? 120;
    const free = this.#free.map((minute) => this.at(minute));
    const first = free[0] ?? 0;
    const last = Math.max(...free.filter((at) => at <= this.#lightsOff));
    const places: number[] = [];
    const step = this.#problem.machine.startStepMinutes;
    for (let i = 0; i < n; i++) {
      if (favour === 'dawn') places.push(first + i * gap);
      else if (favour === 'dusk') places.push(last - i * gap);
      else if (favour === 'dawn-and-dusk')
        places.push(i % 2 === 0 ? first + (i / 2) * gap : last - ((i - 1) / 2) * gap);
      else {
        const minutes = free.flatMap((at) => Array.from({ length: step }, (_, k) => at + k));
        const where = ((2 * i + 1) * minutes.length) / (2 * n);
        places.push((minutes[Math.floor(where)] ?? 0) + (where - Math.floor(where)));
      }
    }
    places.sort((a, b) => a - b);
    return Math.max(0, ...runs.map((run, i) => Math.abs(this.at(run.startMinute) - (places[i] ?? 0))));
  }
}

function holds(spans: readonly { fromMinute: number; toMinute: number }[], minute: number): boolean {
  return spans.some(({ fromMinute, toMinute }) =>
    fromMinute < toMinute ? minute >= fromMinute && minute < toMinute : minute >= fromMinute || minute < toMinute,
  );
}

/** Returns whether water of even the shortest mist would flow in a span; the instances' spans lie within one day. */
function flowsIn(spans: readonly { fromMinute: number; toMinute: number }[], minute: number, minutes: number): boolean {
  return spans.some(({ fromMinute, toMinute }) => minute < toMinute && minute + minutes > fromMinute);
}

function steps(x: number, s: number): number {
  return Math.ceil(x / s - 1e-6);
}

function tenthsAbove(water: number, most: number): number {
  return Math.max(0, Math.ceil((Math.round(water * 10) / 10 - most) * 10 - 1e-6) / 10);
}

/** The curve's figures from its 1440 minutes and the film's nodes, by plain counting. */
function figuresOf(one: MistCase, day: PeriodicDay, curve: HumidityCurve, runs: readonly Run[]) {
  const five = (x: number) => Math.round(x * 1e5) / 1e5;
  const shrink = (band: Band | null): Band | null => {
    if (!band) return null;
    const low = band[0] <= 0 ? band[0] : band[0] + 0.005;
    const high = band[1] >= 1 ? band[1] : band[1] - 0.005;
    return low <= high ? [low, high] : [(band[0] + band[1]) / 2, (band[0] + band[1]) / 2];
  };
  const targets = one.targets;
  const [dayBand, night, mean, peak] = [targets.day, targets.night, targets.mean, targets.peak].map(shrink);
  const isLit = (minute: number) => (minute - one.air.lit.onMinute + 1440) % 1440 < one.air.lit.minutes;
  let shortfall = 0;
  const outside = (band: Band | null | undefined, x: number) => (band ? Math.max(0, band[0] - x, x - band[1]) : 0);
  shortfall += outside(dayBand, five(curve.lit)) / 0.1;
  shortfall += outside(night, five(curve.dark)) / 0.1;
  shortfall += outside(mean, five(curve.mean)) / 0.1;
  if (targets.floor) shortfall += Math.max(0, targets.floor + 0.005 - five(curve.low)) / 0.1;
  if (targets.ceiling !== null && targets.ceiling < 1) {
    shortfall += Math.max(0, five(curve.high) - (targets.ceiling - 0.005)) / 0.1;
  }
  if (peak && targets.soakedAtMostHours !== null) {
    let soaked = 0;
    for (let minute = 0; minute < 1440; minute++) {
      if (targets.night && !isLit(minute)) continue;
      const a = curve.byMinute[minute] ?? 0;
      const b = curve.byMinute[(minute + 1) % 1440] ?? 0;
      if (a > peak[1] && b > peak[1]) soaked++;
      else if (a > peak[1] || b > peak[1]) {
        for (let part = 0.5; part < 200; part++) if (a + ((b - a) * part) / 200 > peak[1]) soaked += 1 / 200;
      }
    }
    shortfall += Math.max(0, Math.round(soaked) / 60 - targets.soakedAtMostHours);
  }
  if (peak && targets.peaksPerDay) {
    shortfall += 0.3 * outside(targets.peaksPerDay, peaksOf(curve, runs, peak[0], dayBand ?? mean ?? null));
  }
  const centre = targets.day ?? targets.mean;
  const value = targets.day ? five(curve.lit) : five(curve.mean);
  const middle = centre ? Math.abs(value - (centre[0] + centre[1]) / 2) : 0;
  return { shortfall, middle, dryMinutes: dryMinutes(one, day), runOffG: day.balance.runOffG };
}

function peaksOf(curve: HumidityCurve, runs: readonly Run[], reaches: number, band: Band | null): number {
  const rearm = Math.min(band?.[1] ?? 1, reaches - 0.05);
  const values = [...curve.byMinute];
  const from = values.findIndex((value) => value < rearm);
  if (from < 0) return 0;
  let [armed, count] = [true, 0];
  for (let k = 0; k < 1440; k++) {
    const minute = (from + k) % 1440;
    const value = values[minute] ?? 0;
    if (value < rearm) armed = true;
    if (!armed || value < reaches) continue;
    armed = false;
    if (runs.some((run) => (minute - run.startMinute + 1442) % 1440 <= 62)) count++;
  }
  return count;
}

/** Film at each half minute by linear interpolation, the longest run of thin ones. */
function dryMinutes(one: MistCase, day: PeriodicDay): number {
  const limit = (one.dryOut?.below ?? 0.2) * one.body.filmCapacityG;
  const { minutes, count, startMinute } = day.mesh;
  const thin = new Uint8Array(14_400);
  let node = 0;
  for (let k = 0; k < 14_400; k++) {
    const at = k / 10;
    while (node < count - 1 && (minutes[node + 1] ?? 0) <= at) node++;
    const [t0, t1] = [minutes[node] ?? 0, minutes[node + 1] ?? 0];
    const [m0, m1] = [day.film[node] ?? 0, day.film[node + 1] ?? 0];
    thin[(k + startMinute * 10) % 14_400] = m0 + ((m1 - m0) * (at - t0)) / (t1 - t0) < limit ? 1 : 0;
  }
  const { onMinute, minutes: lit } = one.air.lit;
  const when = one.dryOut?.when ?? 'lit';
  const from = when === 'dark' ? onMinute + lit : onMinute;
  const length = when === 'any' ? 2880 : when === 'lit' ? lit : 1440 - lit;
  let [longest, spell] = [0, 0];
  for (let k = 0; k < length * 10; k++) {
    spell = thin[(from * 10 + k) % 14_400] ? spell + 1 : 0;
    longest = Math.max(longest, spell);
  }
  return Math.round(Math.min(longest / 10, when === 'any' ? 1440 : length));
}

export function compareKeys(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.max(a.length, b.length); i++) {
    const more = (a[i] ?? -1) - (b[i] ?? -1);
    if (Math.abs(more) > 1e-9) return more;
  }
  return 0;
}

/** Tries every set of entries; without a margin where none holds all limits with it. */
export function exhaustive(problem: DayProblem, lengths: readonly number[]): Judged {
  const careful = everySet(new SecondJudge(problem, true), problem, lengths);
  return careful.broken.length === 0 ? careful : everySet(new SecondJudge(problem, false), problem, lengths);
}

function everySet(judge: SecondJudge, problem: DayProblem, lengths: readonly number[]): Judged {
  let best: Judged | null = null;
  const visit = (from: number, runs: readonly Run[]) => {
    const judged = judge.judge(runs);
    if (judged && (!best || compareKeys(judged.key, best.key) < 0)) best = judged;
    if (runs.length >= problem.machine.entriesAtMost) return;
    for (let k = from; k < judge.starts.length; k++) {
      for (const seconds of lengths) visit(k + 1, [...runs, { startMinute: judge.starts[k] ?? 0, seconds }]);
    }
  };
  visit(0, []);
  if (!best) throw new Error('nothing could be judged');
  return best;
}
