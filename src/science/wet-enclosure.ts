/**
 * The running water balance of a wetted, well-mixed enclosure over the periodic day: vapour density of the air and film on the leaves.
 * Source: the form of Rutter AJ et al. (1971), Agric. Meteorol. 9:367-384, in a box with well-mixed air exchange.
 */

import { DayMesh } from './day-mesh.ts';
import type { AirDay, Run, Spray, WetEnclosure } from './enclosure-day.ts';
import { laggedTemperatures } from './lagged-temperature.ts';
import { saturationDensityGPerM3 } from './moist-air.ts';

/** Totals of one periodic day in g. */
export interface DayBalance {
  sprayedG: number;
  airborneG: number;
  evaporatedG: number;
  baseG: number;
  condensedG: number;
  /** Past the leaves, dripped off, and the drip after each run. */
  runOffG: number;
  /** What the pump draws from the tank through these nozzles: sprayed and dripped after. */
  waterG: number;
  /** Carried out by air exchange, net. */
  carriedOutG: number;
  filmChangeG: number;
  vapourChangeG: number;
}

const MINUTES = 1440;
const MAX_PASSES = 60;
/** Keeps a sealed, dry box from a division by zero, 1/h. */
const LEAST_RATE = 1e-12;
/** Where the day counts as periodic: share of saturation and share of the film's capacity. */
const AIR_CLOSES_WITHIN = 9e-5;
const FILM_CLOSES_WITHIN = 5e-4;
/** The least share of a difference that a day is taken to forget. */
const LEAST_FORGOTTEN = 0.02;

/**
 * The periodic day of one enclosure under one kind of day. `simulate` fills the fields; they are overwritten by the next call.
 * Each step solves the linear vapour equation exactly with the film of its middle and a linear saturation; water and vapour are conserved to rounding.
 */
export class PeriodicDay {
  readonly enclosure: WetEnclosure;
  readonly spray: Spray;
  readonly air: AirDay;
  /** Saturation density at each whole minute, 1441 values, with the lag of `warmUpMinutes`. */
  readonly saturation = new Float64Array(MINUTES + 1);
  /** Temperature at each whole minute, 1441 values. */
  readonly temperatureC = new Float64Array(MINUTES + 1);
  readonly mesh = new DayMesh();
  /** Film in g at each node of the mesh. */
  film = new Float64Array(1024);
  /** Relative humidity at each node, and its integral from the first node in minutes. */
  humidity = new Float64Array(1024);
  integral = new Float64Array(1024);
  readonly balance: DayBalance = emptyBalance();
  passes = 0;
  #filmEnd = 0;
  #airEnd = 0;
  #filmMemory = 1;
  #airMemory = 1;

  constructor(enclosure: WetEnclosure, spray: Spray, air: AirDay) {
    this.enclosure = enclosure;
    this.spray = spray;
    this.air = air;
    laggedTemperatures(this.temperatureC, air.temperatureSteps, enclosure.warmUpMinutes);
    for (let minute = 0; minute <= MINUTES; minute++) {
      this.saturation[minute] = saturationDensityGPerM3(this.temperatureC[minute] ?? 0);
    }
  }

  /** Simulates the periodic day under these runs, sorted by start and not overlapping; `refine` divides every step (1: the ordinary mesh). */
  simulate(runs: readonly Run[], refine = 1): void {
    this.mesh.build(runs, this.spray, this.enclosure, this.air, this.saturation, refine);
    if (this.film.length < this.mesh.count + 1) this.#grow(this.mesh.count + 1);
    this.#close();
    const balance = this.balance;
    const { flowGPerHour, landsShare, airborneShare, afterDripG } = this.spray;
    balance.sprayedG = flowGPerHour * this.mesh.sprayHours;
    balance.airborneG = airborneShare * balance.sprayedG;
    balance.waterG = balance.sprayedG + afterDripG * runs.length;
    balance.runOffG += (1 - airborneShare - landsShare) * balance.sprayedG + afterDripG * runs.length;
  }

  /** Repeats the day until it ends as it began: a rough day first, then Newton with what a day remembers, then secants. */
  #close(): void {
    const { filmCapacityG } = this.enclosure;
    const saturation = this.mesh.saturation[0] ?? 1;
    this.#guess(Math.min(this.air.roomVapourGPerM3, saturation), 0);
    if (this.#filmMemory * this.#filmEnd > FILM_CLOSES_WITHIN * filmCapacityG) {
      this.#guess(this.#airEnd, this.#filmEnd / Math.max(LEAST_FORGOTTEN, 1 - this.#filmMemory));
    }
    let film = Math.min(filmCapacityG, Math.max(0, this.#filmEnd));
    let air = Math.min(saturation, Math.max(0, this.#airEnd));
    let filmBefore = film;
    let offBefore = 0;
    for (this.passes = 1; ; this.passes++) {
      this.#pass(air, film);
      const filmOff = this.#filmEnd - film;
      const airOff = this.#airEnd - air;
      const closed =
        Math.abs(filmOff) <= FILM_CLOSES_WITHIN * filmCapacityG && Math.abs(airOff) <= AIR_CLOSES_WITHIN * saturation;
      if (closed || this.passes >= MAX_PASSES) return;
      const secant = (filmOff - offBefore) / (film - filmBefore);
      const steep = this.passes > 1 && secant < -LEAST_FORGOTTEN ? -secant : 1 - this.#filmMemory;
      filmBefore = film;
      offBefore = filmOff;
      film = Math.min(filmCapacityG, Math.max(0, film + filmOff / Math.max(LEAST_FORGOTTEN, steep)));
      air = Math.min(saturation, Math.max(0, air + airOff / Math.max(LEAST_FORGOTTEN, 1 - this.#airMemory)));
    }
  }

  /** Runs one day roughly, a few nodes at a time, for the state that it ends in. */
  #guess(startAir: number, startFilm: number): void {
    const { volumeM3, airChangesPerHour, filmCapacityG, wettableAreaM2, transferMPerHour, baseEvaporationGPerHour } =
      this.enclosure;
    const { flowGPerHour, landsShare, airborneShare } = this.spray;
    const perFilm = filmCapacityG > 0 ? (transferMPerHour * wettableAreaM2) / filmCapacityG : 0;
    const { roughNodes, roughCount, minutes, spraying, saturation } = this.mesh;
    let air = startAir;
    let film = startFilm;
    let memory = 0;
    let node = 0;
    for (let i = 0; i < roughCount; i++) {
      const next = roughNodes[i] ?? 0;
      const step = ((minutes[next] ?? 0) - (minutes[node] ?? 0)) / 60;
      const flow = (spraying[node] ?? 0) * flowGPerHour;
      const after = saturation[next] ?? 1;
      const middle = 0.5 * ((saturation[node] ?? 1) + after);
      const landed = landsShare * flow * step;
      const fades = 1 - Math.min(0.5, 0.5 * perFilm * Math.max(0, middle - air) * step);
      const exchange = (perFilm * Math.min(filmCapacityG, film * fades + 0.5 * landed)) / volumeM3;
      const rate = airChangesPerHour + exchange + baseEvaporationGPerHour / (volumeM3 * middle) + LEAST_RATE;
      const supply = airChangesPerHour * this.air.roomVapourGPerM3 + exchange * middle;
      const settled = Math.min(middle, (supply + (baseEvaporationGPerHour + airborneShare * flow) / volumeM3) / rate);
      const fallen = 1 - Math.exp(-rate * step);
      const mean = settled + ((air - settled) * fallen) / (rate * step);
      const lost = perFilm * Math.max(0, middle - mean) * step;
      air = settled + (air - settled) * (1 - fallen);
      film = (film * (1 - 0.5 * lost) + landed) / (1 + 0.5 * lost) + volumeM3 * Math.max(0, air - after);
      air = Math.min(air, after);
      memory += lost;
      if (film > filmCapacityG) {
        film = filmCapacityG;
        memory = 50;
      }
      node = next;
    }
    this.#airEnd = air;
    this.#filmEnd = film;
    this.#filmMemory = Math.exp(-memory);
  }

  /** Runs one day from a state. */
  #pass(startAir: number, startFilm: number): void {
    const { volumeM3, airChangesPerHour, filmCapacityG, wettableAreaM2, transferMPerHour, baseEvaporationGPerHour } =
      this.enclosure;
    const { flowGPerHour, landsShare, airborneShare } = this.spray;
    const room = this.air.roomVapourGPerM3;
    const perFilm = filmCapacityG > 0 ? (transferMPerHour * wettableAreaM2) / filmCapacityG : 0;
    const perVolume = 1 / volumeM3;
    const filmShare = perFilm * perVolume;
    const baseShare = baseEvaporationGPerHour * perVolume;
    const landing = landsShare * flowGPerHour;
    const rising = airborneShare * flowGPerHour;
    const { count, hours, spraying, saturation } = this.mesh;
    const { film: filmAt, humidity, integral } = this;
    let air = startAir;
    let film = startFilm;
    let evaporated = 0;
    let based = 0;
    let condensed = 0;
    let dripped = 0;
    let carried = 0;
    let memory = 0;
    let airMemory = 0;
    let before = saturation[0] ?? 1;
    let total = 0;
    filmAt[0] = film;
    humidity[0] = air / before;
    integral[0] = 0;
    for (let i = 0; i < count; i++) {
      const step = hours[i] ?? 0;
      const on = spraying[i] ?? 0;
      const after = saturation[i + 1] ?? 1;
      const middle = 0.5 * (before + after);
      const perMiddle = 1 / middle;
      const landed = on * landing * step;
      const risen = on * rising;
      const halfLoss = 0.5 * perFilm * (middle > air ? middle - air : 0) * step;
      let filmMiddle = (film + 0.5 * landed) / (1 + halfLoss);
      if (film + landed > filmCapacityG) filmMiddle = cappedMiddle(film, landed, filmCapacityG);
      const exchange = filmShare * filmMiddle;
      const rate = airChangesPerHour + exchange + baseShare * perMiddle + LEAST_RATE;
      const perRate = 1 / rate;
      const settled = (airChangesPerHour * room + exchange * middle + baseShare + risen * perVolume) * perRate;
      const exponent = rate * step;
      const fallen = exponent > 1e-6 ? 1 - Math.exp(-exponent) : exponent;
      // The air trails behind where it would settle while that moves with the saturation.
      const drift = exponent > 1e-6 ? exchange * perRate * (after - before) : 0;
      const trail = exponent > 1e-6 ? drift / exponent : 0;
      const lead = (air - settled + 0.5 * drift + trail) * fallen;
      const next = air + drift - lead;
      const area = (settled - trail) * step + lead * perRate;
      const spare = middle * step - area;
      let surplus = -1;
      if (next > after) {
        // Part of the step lies at saturation: what would be above it condenses onto the film, nothing evaporates.
        const short = before - air;
        const free = short > 0 ? short / (short + next - after) : 0;
        const freeStep = free * step;
        const wetStep = step - freeStep;
        const crossing = before + (after - before) * free;
        const meanFree = 0.5 * (air + crossing);
        const middleFree = 0.5 * (before + crossing);
        const loss = perFilm * filmMiddle * (middleFree - meanFree) * freeStep;
        const base = baseEvaporationGPerHour * (1 - meanFree / middleFree) * freeStep;
        const out = (meanFree - room) * freeStep + (0.5 * (crossing + after) - room) * wetStep;
        surplus = volumeM3 * (air - after - airChangesPerHour * out) + loss + base + risen * step;
        if (surplus >= 0) {
          film += landed - loss + surplus;
          evaporated += loss;
          based += base;
          carried += out;
          condensed += surplus;
          airMemory += 50;
          total += ((meanFree / middleFree) * freeStep + wetStep) * 60;
          air = after;
        }
      }
      if (surplus < 0) {
        const loss = perFilm * filmMiddle * spare;
        const dew = next > after ? volumeM3 * (next - after) : 0;
        film += landed - loss + dew;
        evaporated += loss;
        based += baseEvaporationGPerHour * spare * perMiddle;
        carried += area - room * step;
        condensed += dew;
        memory += 2 * halfLoss;
        airMemory += exponent;
        total += area * perMiddle * 60;
        air = dew > 0 ? after : next;
      }
      if (film > filmCapacityG) {
        dripped += film - filmCapacityG;
        film = filmCapacityG;
        memory = 50;
      } else if (film < 0) {
        film = 0;
      }
      before = after;
      filmAt[i + 1] = film;
      humidity[i + 1] = air / after;
      integral[i + 1] = total;
    }
    const balance = this.balance;
    balance.evaporatedG = evaporated;
    balance.baseG = based;
    balance.condensedG = condensed;
    balance.runOffG = dripped;
    balance.carriedOutG = carried * airChangesPerHour * volumeM3;
    balance.filmChangeG = film - startFilm;
    balance.vapourChangeG = volumeM3 * (air - startAir);
    this.#filmEnd = film;
    this.#airEnd = air;
    this.#filmMemory = Math.exp(-memory);
    this.#airMemory = Math.exp(-airMemory);
  }

  #grow(size: number): void {
    this.film = new Float64Array(2 * size);
    this.humidity = new Float64Array(2 * size);
    this.integral = new Float64Array(2 * size);
  }
}

/** Returns the mean film of a step in which the film reaches its capacity. */
function cappedMiddle(film: number, landed: number, capacity: number): number {
  const missing = capacity - film;
  return landed > 0 ? capacity - (0.5 * missing * missing) / landed : capacity;
}

function emptyBalance(): DayBalance {
  return {
    sprayedG: 0,
    airborneG: 0,
    evaporatedG: 0,
    baseG: 0,
    condensedG: 0,
    runOffG: 0,
    waterG: 0,
    carriedOutG: 0,
    filmChangeG: 0,
    vapourChangeG: 0,
  };
}
