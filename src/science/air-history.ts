/**
 * The air of an enclosure over days that really passed, one after the other: the same balance as the periodic day, from a first instant
 * to a last, with a room, a temperature and mists that may differ from day to day.
 * Source: the form of Rutter AJ et al. (1971), Agric. Meteorol. 9:367-384, in a box with well-mixed air exchange.
 */

import type { Run, Spray, WetEnclosure } from './enclosure-day.ts';
import { saturationDensityGPerM3 } from './moist-air.ts';

/** A value from its minute on until the next step's. */
export interface Step {
  readonly fromMinute: number;
  readonly value: number;
}

/** What an enclosure met, in minutes since the first instant, all lists ascending. */
export interface History {
  readonly minutes: number;
  readonly roomVapourGPerM3: readonly Step[];
  /** Temperature of the air in °C at a minute. */
  readonly celsiusAt: (minute: number) => number;
  /** Minutes at which the temperature turns. */
  readonly edges: readonly number[];
  /** Runs that do not overlap; their starts may lie on any minute of the history. */
  readonly runs: readonly Run[];
}

/** What of an enclosure a fit may change. */
export interface FreeAir {
  readonly airChangesPerHour: number;
  readonly baseEvaporationGPerHour: number;
  readonly transferMPerHour: number;
}

const CALM_MINUTES = 4;
const AFTER_EDGE_MINUTES = 1;
const SPRAYING_MINUTES = 0.2;
const AFTER_SPRAY_MINUTES = 0.25;
const GROWTH = 1.35;
/** Keeps a sealed, dry box from a division by zero, 1/h. */
const LEAST_RATE = 1e-12;

/** One enclosure through one history; `simulate` may be called again and again and overwrites `humidity` and `film`. */
export class AirHistory {
  /** Minute of each node, ascending. */
  readonly minutes: Float64Array;
  readonly humidity: Float64Array;
  /** Film in g. */
  readonly film: Float64Array;
  readonly #body: WetEnclosure;
  readonly #spray: Spray;
  readonly #saturation: Float64Array;
  readonly #room: Float64Array;
  readonly #spraying: Uint8Array;

  constructor(body: WetEnclosure, spray: Spray, history: History) {
    this.#body = body;
    this.#spray = spray;
    const mesh = nodesOf(history, spray.lagSeconds / 60);
    this.minutes = Float64Array.from(mesh.minutes);
    this.#spraying = Uint8Array.from(mesh.spraying);
    this.#saturation = this.minutes.map((minute) => saturationDensityGPerM3(history.celsiusAt(minute)));
    this.#room = stepsAt(this.minutes, history.roomVapourGPerM3);
    this.humidity = new Float64Array(this.minutes.length);
    this.film = new Float64Array(this.minutes.length);
  }

  /** Runs through the history from room air and dry leaves: let it begin a day or two before what matters. */
  simulate({ airChangesPerHour, baseEvaporationGPerHour, transferMPerHour }: FreeAir): void {
    const { volumeM3, filmCapacityG, wettableAreaM2 } = this.#body;
    const { flowGPerHour, landsShare, airborneShare } = this.#spray;
    const saturation = this.#saturation;
    const perFilm = filmCapacityG > 0 ? (transferMPerHour * wettableAreaM2) / filmCapacityG : 0;
    const perVolume = 1 / volumeM3;
    const baseShare = baseEvaporationGPerHour * perVolume;
    let before = saturation[0] ?? 1;
    let air = Math.min(before, this.#room[0] ?? 0);
    let film = 0;
    this.humidity[0] = air / before;
    this.film[0] = film;
    for (let i = 0; i + 1 < this.minutes.length; i++) {
      const hours = ((this.minutes[i + 1] ?? 0) - (this.minutes[i] ?? 0)) / 60;
      const flow = (this.#spraying[i] ?? 0) * flowGPerHour;
      const room = this.#room[i] ?? 0;
      const after = saturation[i + 1] ?? 1;
      const middle = 0.5 * (before + after);
      const landed = flow * landsShare * hours;
      const halfLoss = 0.5 * perFilm * Math.max(0, middle - air) * hours;
      const filmMiddle =
        film + landed > filmCapacityG && landed > 0
          ? filmCapacityG - (0.5 * (filmCapacityG - film) ** 2) / landed
          : (film + 0.5 * landed) / (1 + halfLoss);
      const exchange = perFilm * filmMiddle * perVolume;
      const rate = airChangesPerHour + exchange + baseShare / middle + LEAST_RATE;
      const risen = flow * airborneShare * perVolume;
      const settled = (airChangesPerHour * room + exchange * middle + baseShare + risen) / rate;
      const exponent = rate * hours;
      const fallen = -Math.expm1(-exponent);
      // The air trails behind where it would settle while that moves with the saturation.
      const drift = (exchange * (after - before)) / rate;
      const trail = drift / exponent;
      const lead = (air - settled + 0.5 * drift + trail) * fallen;
      const next = air + drift - lead;
      const area = (settled - trail) * hours + lead / rate;
      const dew = next > after ? volumeM3 * (next - after) : 0;
      film += landed + dew - perFilm * filmMiddle * Math.max(0, middle * hours - area);
      film = Math.min(filmCapacityG, Math.max(0, film));
      air = dew > 0 ? after : next;
      before = after;
      this.humidity[i + 1] = air / after;
      this.film[i + 1] = film;
    }
  }
}

/** Returns the value of steps at each of ascending minutes; before the first step, the first's. */
function stepsAt(minutes: Float64Array, steps: readonly Step[]): Float64Array {
  let next = 0;
  let value = steps[0]?.value ?? 0;
  return minutes.map((minute) => {
    for (let step = steps[next]; step && step.fromMinute <= minute + 1e-9; step = steps[++next]) value = step.value;
    return value;
  });
}

interface Nodes {
  readonly minutes: number[];
  readonly spraying: number[];
}

/** Lays nodes: at every turn of temperature, room or water, fine after it and coarser the longer it is calm. */
function nodesOf({ minutes: end, edges, roomVapourGPerM3, runs }: History, lagMinutes: number): Nodes {
  const turns: { minute: number; first: number; spraying: 0 | 1 | null }[] = [
    ...[...edges, ...roomVapourGPerM3.map(({ fromMinute }) => fromMinute)].map((minute) => ({
      minute,
      first: AFTER_EDGE_MINUTES,
      spraying: null,
    })),
    ...runs.flatMap(({ startMinute, seconds }) => {
      const [wet, off] = [startMinute + lagMinutes, startMinute + seconds / 60];
      if (off <= wet) return [];
      return [
        { minute: wet, first: SPRAYING_MINUTES / 4, spraying: 1 as const },
        { minute: off, first: AFTER_SPRAY_MINUTES, spraying: 0 as const },
      ];
    }),
  ];
  turns.sort((a, b) => a.minute - b.minute || Number(a.spraying ?? -1) - Number(b.spraying ?? -1));
  const nodes: Nodes = { minutes: [0], spraying: [] };
  let state = { step: AFTER_EDGE_MINUTES, spraying: 0 };
  for (const { minute, first, spraying } of turns) {
    if (minute >= end) break;
    if (minute > 0) state = fill(nodes, minute, state);
    state = { step: Math.min(state.step, first), spraying: spraying ?? state.spraying };
  }
  fill(nodes, end, state);
  return nodes;
}

function fill(nodes: Nodes, until: number, state: { step: number; spraying: number }) {
  const longest = state.spraying === 1 ? SPRAYING_MINUTES : CALM_MINUTES;
  let [at, step] = [nodes.minutes.at(-1) ?? 0, state.step];
  while (until - at > 1e-9) {
    const left = until - at;
    at = left < 1.5 * step ? until : at + step;
    nodes.minutes.push(at);
    nodes.spraying.push(state.spraying);
    step = Math.min(longest, step * GROWTH);
  }
  return { ...state, step };
}
