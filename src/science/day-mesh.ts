/** The instants between which a day is integrated: fine where a mist or a change of warmth begins, coarse in the calm. */
import type { AirDay, Run, Spray, WetEnclosure } from './enclosure-day.ts';

const MINUTES = 1440;
/** Longest step in the calm, and in the hour after a change of warmth. */
const CALM_MINUTES = 8;
const WARMING_MINUTES = 2.5;
const SHORTEST_CALM_MINUTES = 0.25;
/** Longest step while a film fills. */
const FILLING_MINUTES = 0.4;
const FIRST_AFTER_SPRAY_MINUTES = 0.5;
const FIRST_AFTER_EDGE_MINUTES = 1;
const GROWTH = 1.6;
const ROUGH_MINUTES = 20;
/** After so many minutes even a rough day keeps every node: the state that it ends in is what it is for. */
const LAST_MINUTES = 1440 - 90;

/** Nodes of one day, from the start of the run after the longest pause; refilled by each `build`. */
export class DayMesh {
  /** Minute of the day of the first node, a whole number. */
  startMinute = 0;
  /** Steps; there is one node more. */
  count = 0;
  /** Minutes from the first node. */
  minutes = new Float64Array(1024);
  /** Length of each step in hours, and whether water is sprayed in it (0 or 1). */
  hours = new Float64Array(1024);
  spraying = new Uint8Array(1024);
  /** Saturation density at each node. */
  saturation = new Float64Array(1024);
  sprayHours = 0;
  /** The nodes at which a rough day ends its steps: never longer than {@link ROUGH_MINUTES}, spray and calm apart. */
  roughNodes = new Int32Array(1024);
  roughCount = 0;
  #table: Float64Array = new Float64Array(0);
  #refine = 1;
  /** The longest step that this film allows. */
  #longest = CALM_MINUTES;
  #roughFrom = 0;

  /** Lays the nodes for runs sorted by start that do not overlap. */
  build(
    runs: readonly Run[],
    spray: Spray,
    enclosure: WetEnclosure,
    air: AirDay,
    table: Float64Array,
    refine: number,
  ): void {
    this.#table = table;
    this.#refine = refine;
    this.count = 0;
    this.roughCount = 0;
    this.#roughFrom = 0;
    this.sprayHours = 0;
    const first = afterLongestPause(runs);
    this.startMinute = Math.floor(runs[first]?.startMinute ?? 0);
    this.minutes[0] = 0;
    this.saturation[0] = this.#at(0);
    const edges = this.#edges(air);
    this.#longest = longestStepMinutes(enclosure, table);
    const fillMinutes = minutesToFill(spray, enclosure);
    const fine = Math.min(FILLING_MINUTES, fillMinutes / 8, minutesToSaturate(spray, enclosure, table[0] ?? 1) / 3);
    for (let k = 0; k < runs.length; k++) {
      const run = runs[(first + k) % runs.length];
      const next = k + 1 < runs.length ? runs[(first + k + 1) % runs.length] : undefined;
      if (!run) continue;
      const start = wrapped(run.startMinute - this.startMinute);
      const limit = next ? wrapped(next.startMinute - this.startMinute) : MINUTES;
      const end = Math.min(limit, start + run.seconds / 60);
      const wet = Math.min(end, start + spray.lagSeconds / 60);
      if (k === 0 && start > 0) this.#calm(start, edges, FIRST_AFTER_EDGE_MINUTES);
      if (wet > start) this.#span(wet, 0, CALM_MINUTES, FIRST_AFTER_EDGE_MINUTES);
      if (end > wet) {
        const filling = Math.min(end, wet + fillMinutes + FILLING_MINUTES);
        this.#span(filling, 1, FILLING_MINUTES, fine);
        if (end > filling) this.#span(end, 1, CALM_MINUTES, FILLING_MINUTES);
        this.sprayHours += (end - wet) / 60;
      }
      if (limit > end) this.#calm(limit, edges, FIRST_AFTER_SPRAY_MINUTES);
    }
    if (runs.length === 0) this.#calm(MINUTES, edges, FIRST_AFTER_EDGE_MINUTES);
  }

  /** Returns the minutes from the first node at which warmth or light changes, ascending. */
  #edges(air: AirDay): number[] {
    const edges = air.temperatureSteps.map((step) => wrapped(step.fromMinute - this.startMinute));
    if (air.lit.minutes > 0 && air.lit.minutes < MINUTES) {
      edges.push(wrapped(air.lit.onMinute - this.startMinute));
      edges.push(wrapped(air.lit.onMinute + air.lit.minutes - this.startMinute));
    }
    return edges.sort((a, b) => a - b);
  }

  /** Fills up to a minute without spray, with a node at each edge and shorter steps after it. */
  #calm(until: number, edges: readonly number[], firstStep: number): void {
    let first = firstStep;
    let warmingUntil = 0;
    for (const edge of edges) {
      const here = this.minutes[this.count] ?? 0;
      if (edge < here - 90) continue;
      if (edge >= until) break;
      if (edge > here) {
        if (warmingUntil > here) this.#span(Math.min(edge, warmingUntil), 0, WARMING_MINUTES, first);
        if (edge > (this.minutes[this.count] ?? 0))
          this.#span(edge, 0, CALM_MINUTES, warmingUntil > here ? WARMING_MINUTES : first);
        first = FIRST_AFTER_EDGE_MINUTES;
      }
      warmingUntil = edge + 90;
    }
    const here = this.minutes[this.count] ?? 0;
    if (warmingUntil > here) {
      this.#span(Math.min(until, warmingUntil), 0, WARMING_MINUTES, first);
      first = WARMING_MINUTES;
    }
    if (until > (this.minutes[this.count] ?? 0)) this.#span(until, 0, CALM_MINUTES, first);
  }

  /** Adds steps up to a minute, the first of a given length, each longer than the one before up to a longest. */
  #span(until: number, spraying: 0 | 1, longest: number, firstStep: number): void {
    let at = this.minutes[this.count] ?? 0;
    let step = Math.min(firstStep, this.#longest);
    while (at < until) {
      const left = until - at;
      const taken = left < 1.5 * step ? left : step;
      for (let part = 1; part <= this.#refine; part++) {
        this.#add(part === this.#refine ? at + taken : at + (taken * part) / this.#refine, spraying);
      }
      at += taken;
      if (at < until && (at - this.#roughFrom >= ROUGH_MINUTES || at > LAST_MINUTES)) this.#endRough();
      step = Math.min(longest, this.#longest, step * GROWTH);
    }
    this.minutes[this.count] = until;
    this.#endRough();
  }

  #endRough(): void {
    if (this.roughCount >= this.roughNodes.length) {
      const longer = new Int32Array(2 * this.roughNodes.length);
      longer.set(this.roughNodes);
      this.roughNodes = longer;
    }
    this.roughNodes[this.roughCount++] = this.count;
    this.#roughFrom = this.minutes[this.count] ?? 0;
  }

  #add(minute: number, spraying: 0 | 1): void {
    const i = this.count;
    if (i + 2 > this.minutes.length) this.#grow();
    this.hours[i] = (minute - (this.minutes[i] ?? 0)) / 60;
    this.spraying[i] = spraying;
    this.minutes[i + 1] = minute;
    this.saturation[i + 1] = this.#at(minute);
    this.count = i + 1;
  }

  /** Returns the saturation density so many minutes after the first node, linear between whole minutes. */
  #at(minutes: number): number {
    let minute = this.startMinute + minutes;
    if (minute >= MINUTES) minute -= MINUTES;
    const whole = minute | 0;
    const low = this.#table[whole] ?? 1;
    return low + ((this.#table[whole + 1] ?? low) - low) * (minute - whole);
  }

  #grow(): void {
    this.minutes = doubled(this.minutes);
    this.hours = doubled(this.hours);
    this.saturation = doubled(this.saturation);
    const spraying = new Uint8Array(2 * this.spraying.length);
    spraying.set(this.spraying);
    this.spraying = spraying;
  }
}

function doubled(values: Float64Array): Float64Array<ArrayBuffer> {
  const longer = new Float64Array(2 * values.length);
  longer.set(values);
  return longer;
}

function wrapped(minute: number): number {
  return minute < 0 ? minute + MINUTES : minute >= MINUTES ? minute - MINUTES : minute;
}

/** Returns the index of the run that follows the longest pause: there the film is thinnest. */
function afterLongestPause(runs: readonly Run[]): number {
  let best = 0;
  let longest = -1;
  for (let k = 0; k < runs.length; k++) {
    const run = runs[k];
    const previous = runs[(k + runs.length - 1) % runs.length];
    if (!run || !previous) continue;
    const pause = run.startMinute - previous.startMinute;
    const around = pause <= 0 ? pause + MINUTES : pause;
    if (around > longest + 1e-9) {
      longest = around;
      best = k;
    }
  }
  return best;
}

/** Returns the longest step in which a film at its thinnest air loses no more than a good third of itself, 8 min at most. */
function longestStepMinutes(enclosure: WetEnclosure, table: Float64Array): number {
  const { transferMPerHour, wettableAreaM2, filmCapacityG } = enclosure;
  if (filmCapacityG <= 0) return CALM_MINUTES;
  const perHour = (transferMPerHour * wettableAreaM2 * Math.max(table[0] ?? 1, table[720] ?? 1)) / filmCapacityG;
  return Math.max(SHORTEST_CALM_MINUTES, Math.min(CALM_MINUTES, (0.4 * 60) / perHour));
}

/** Returns how long a spray takes to fill a dry film, at least a few seconds; an hour where nothing lands. */
function minutesToFill(spray: Spray, enclosure: WetEnclosure): number {
  const landing = spray.landsShare * spray.flowGPerHour;
  return landing > 0 ? Math.max(0.05, Math.min(60, (60 * enclosure.filmCapacityG) / landing)) : 60;
}

/** Returns how long a fog takes to saturate half-dry air, at least a few seconds; an hour where nothing stays in the air. */
function minutesToSaturate(spray: Spray, enclosure: WetEnclosure, saturation: number): number {
  const rising = spray.airborneShare * spray.flowGPerHour;
  return rising > 0 ? Math.max(0.05, Math.min(60, (30 * enclosure.volumeM3 * saturation) / rising)) : 60;
}
