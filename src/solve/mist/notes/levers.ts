/**
 * What would meet the targets that the mists miss: each lever is tried on the model, none is guessed. Covering or opening the mesh, more
 * nozzles, a finer timer, more lines, a larger tank or tray, another substrate, another room.
 */
import type { CareEnclosure } from '../../../resolve/care.ts';
import type { Run } from '../../../science/enclosure-day.ts';
import type { MistCase, MistMachine } from '../day/day-problem.ts';
import { isHotLamp } from '../day/forbidden-starts.ts';
import { caseDay } from '../mist-plan.ts';
import type { MistUnit } from '../mist-unit.ts';
import { UnitSolver, unseen } from '../sets/unit-solver.ts';
import { isTooHumidUnmisted, shielded, wettest, withBase, withOpenShare } from './changed-case.ts';
import { type Lever, type LeverKind, NEAR, type Trouble } from './lever.ts';

const OPEN_STEP = 0.1;
const ROOM_STEP = 0.05;
const ROOM_STEPS = 7;
const FINE_STEP_MINUTES = 5;
const FINE_STEP_SECONDS = 5;
const MANY_ENTRIES = 24;
const DAMP_FACTOR = 4;
/** Days of neighbours that are tried along, over all trials of one question: a pump of many enclosures is not worth seconds. */
const NEIGHBOUR_DAYS = 24;

interface Trial {
  readonly met: boolean;
  readonly waterG: number;
  readonly entries: readonly Run[];
}

/** The levers of one unit, each tried on the days that miss their targets. */
export class Levers {
  readonly #unit: MistUnit;
  readonly #cases: readonly MistCase[];
  readonly #near: readonly Run[];
  readonly #others: readonly MistCase[];
  /** The enclosure whose days they are; null where the unit does not have it. */
  readonly #own: CareEnclosure | null;
  readonly #openShare: number;
  #with: Lever['besides'] = null;
  #neighbourDaysLeft = NEIGHBOUR_DAYS;

  /**
   * @param cases days on which an enclosure misses its targets, the hardest first
   * @param near the entries that miss them
   * @param others the same days of the enclosures that the same pump mists: one set of entries is for all of them
   */
  constructor(unit: MistUnit, cases: readonly MistCase[], near: readonly Run[], others: readonly MistCase[] = []) {
    this.#unit = unit;
    this.#cases = cases;
    this.#near = near;
    this.#others = others;
    this.#own = unit.members.find(({ enclosure }) => enclosure.id === cases[0]?.enclosure)?.enclosure ?? null;
    this.#openShare = this.#own?.openShare ?? 0;
  }

  /** Returns the levers that do, the cheapest to try first. */
  thatDo(trouble: Trouble): readonly Lever[] {
    if (this.#unit.means === 'repeat-cycle') return [this.#timer()].filter((lever) => lever !== null);
    const single = this.#single(trouble);
    if (single.length > 0) return single;
    for (const besides of this.#besides(trouble)) {
      this.#with = besides;
      const found = this.#single(trouble);
      this.#with = null;
      if (found.length > 0) return found;
    }
    const wantsWater = trouble.tooDry || trouble.peaks;
    const room = trouble.tooHumid ? this.#room(-1) : wantsWater ? this.#room(1) : null;
    return room ? [room] : [];
  }

  #single(trouble: Trouble): readonly Lever[] {
    const found: (Lever | null)[] = [];
    const wantsWater = trouble.tooDry || trouble.peaks;
    if (wantsWater || trouble.exceeded.length > 0) found.push(this.#shield());
    if (wantsWater) found.push(this.#cover(), this.#nozzle(), this.#dampFloor());
    if (trouble.tooHumid || trouble.exceeded.some(({ limit }) => limit === 'dry-out'))
      found.push(this.#dryFloor(), this.#open());
    if (wantsWater || trouble.exceeded.length > 0) found.push(this.#timer(), this.#entries());
    for (const { limit } of trouble.exceeded) {
      if (limit === 'tank') found.push(this.#tank());
      if (limit === 'tray') found.push(this.#tray());
    }
    return found.flatMap((lever) => (lever ? [{ ...lever, besides: this.#with }] : []));
  }

  /** What is worth doing besides another lever, where none does by itself. */
  #besides(trouble: Trouble): readonly ('shield' | 'dry-floor')[] {
    return [
      ...(trouble.tooHumid && this.#isDamp() ? (['dry-floor'] as const) : []),
      ...((trouble.tooDry || trouble.peaks || trouble.exceeded.length > 0) && this.#isBlockedByLamp()
        ? (['shield'] as const)
        : []),
    ];
  }

  #isDamp(): boolean {
    return this.#own !== null && this.#own.floor !== 'dry';
  }

  #isBlockedByLamp(): boolean {
    const isWarm = this.#cases.every(({ air }) => air.temperatureSteps.every(({ celsius }) => celsius > 0));
    return (
      isWarm &&
      this.#unit.supply === null &&
      this.#cases.some(({ forbidden }) => forbidden.runs.length > 0) &&
      (this.#own?.lamps ?? []).some(({ kind }) => isHotLamp(kind))
    );
  }

  /** Returns the largest bare-mesh share below the present one at which all targets are met, to 1 %; null where no covering does. */
  #cover(): Lever | null {
    const steps = Math.floor(this.#openShare / OPEN_STEP + 1e-9);
    return this.#firstShare(steps, (step) => Math.max(0, this.#openShare - step * OPEN_STEP), 'cover');
  }

  #open(): Lever | null {
    const steps = Math.floor((1 - this.#openShare) / OPEN_STEP + 1e-9);
    return this.#firstShare(steps, (step) => Math.min(1, this.#openShare + step * OPEN_STEP), 'open');
  }

  #firstShare(steps: number, shareOf: (step: number) => number, kind: 'cover' | 'open'): Lever | null {
    for (let step = 1; step <= steps; step++) {
      if (!this.#isInReach(shareOf(step), kind)) continue;
      const trial = this.#withOpenShare(shareOf(step));
      if (trial.met) return this.#refined(shareOf(step - 1), shareOf(step), trial, kind);
    }
    return null;
  }

  /** The rough share did, the one before did not: closes in to whole percents. */
  #refined(failing: number, doing: number, found: Trial, kind: 'cover' | 'open'): Lever | null {
    let [bad, good, best] = [failing, doing, found];
    while (Math.abs(good - bad) > 0.011) {
      const middle = Math.round(((good + bad) / 2) * 100) / 100;
      if (middle === good || middle === bad) break;
      const trial = this.#withOpenShare(middle);
      if (trial.met) [good, best] = [middle, trial];
      else bad = middle;
    }
    return leverOf(kind, Math.round(good * 100) / 100, best);
  }

  /** A peak that even fully wet air does not reach needs no search. */
  #isInReach(openShare: number, kind: 'cover' | 'open'): boolean {
    if (kind === 'open') return true;
    return this.#cases.every((one) => {
      const edge = Math.max(one.targets.peak?.[0] ?? 0, one.targets.day?.[0] ?? 0, one.targets.mean?.[0] ?? 0);
      return wettest(withOpenShare(one, this.#openShare, openShare)) >= edge;
    });
  }

  #withOpenShare(openShare: number): Trial {
    return this.#try(this.#unit, (one) => withOpenShare(one, this.#openShare, openShare));
  }

  #nozzle(): Lever | null {
    const { pump, machine } = this.#unit;
    if (!pump || !machine) return null;
    const count = this.#own?.nozzles.count ?? 1;
    const factor = (count + 1) / count;
    const pumpFlowGPerHour = machine.pumpFlowGPerHour + pump.flowGPerHour;
    const unit = { ...this.#unit, machine: { ...machine, pumpFlowGPerHour } };
    const more = (one: MistCase) => ({
      ...one,
      spray: { ...one.spray, flowGPerHour: one.spray.flowGPerHour * factor },
    });
    return leverOf('nozzle', count + 1, this.#try(unit, more));
  }

  #timer(): Lever | null {
    const { machine, means } = this.#unit;
    if (!machine || means === 'by-hand') return null;
    if (
      means !== 'repeat-cycle' &&
      machine.lengthStepSeconds <= FINE_STEP_SECONDS &&
      machine.startStepMinutes <= FINE_STEP_MINUTES
    )
      return null;
    const finer: MistMachine = {
      ...machine,
      lengthStepSeconds: Math.min(machine.lengthStepSeconds, FINE_STEP_SECONDS),
      startStepMinutes: Math.min(machine.startStepMinutes, FINE_STEP_MINUTES),
      shortestSeconds: Math.min(machine.shortestSeconds, 15),
      entriesAtMost: Math.min(machine.entriesAtMost, MANY_ENTRIES),
    };
    return leverOf('timer', FINE_STEP_SECONDS, this.#try({ ...this.#unit, machine: finer, means: 'timer' }, same));
  }

  #entries(): Lever | null {
    const { machine, means } = this.#unit;
    if (!machine || means === 'by-hand' || machine.entriesAtMost >= MANY_ENTRIES) return null;
    if (this.#near.length < machine.entriesAtMost) return null;
    const trial = this.#try({ ...this.#unit, machine: { ...machine, entriesAtMost: MANY_ENTRIES } }, same);
    return leverOf('entries', trial.entries.length, trial);
  }

  /** Mists while a hot lamp is on, where the spray cannot reach it. */
  #shield(): Lever | null {
    if (!this.#isBlockedByLamp() || this.#with) return null;
    return leverOf('shield', 0, this.#try(this.#unit, shielded));
  }

  #tank(): Lever | null {
    const trial = this.#try({ ...this.#unit, waterAtMostG: null }, same);
    return leverOf('tank', trial.waterG, trial);
  }

  #tray(): Lever | null {
    const trial = this.#try(this.#unit, (one) => ({ ...one, runOffAtMostG: null }));
    const most = Math.max(0, ...this.#cases.map((one) => caseDay(one, trial.entries).figures.runOffG));
    return leverOf('tray', most, trial);
  }

  #dampFloor(): Lever | null {
    if (this.#own !== null && this.#own.floor !== 'dry') return null;
    return leverOf(
      'damp-floor',
      DAMP_FACTOR,
      this.#try(this.#unit, (one) => withBase(one, DAMP_FACTOR)),
    );
  }

  #dryFloor(): Lever | null {
    if (this.#own?.floor === 'dry') return null;
    return leverOf(
      'dry-floor',
      1 / DAMP_FACTOR,
      this.#try(this.#unit, (one) => withBase(one, 1 / DAMP_FACTOR)),
    );
  }

  /** Returns the nearest humidity of the room, 5 points at a time, at which all targets are met. */
  #room(sign: 1 | -1): Lever | null {
    for (let step = 1; step <= ROOM_STEPS; step++) {
      const factor = 1 + sign * step * ROOM_STEP * 2;
      if (factor <= 0.2) return null;
      const inRoom = (one: MistCase) => ({
        ...one,
        air: { ...one.air, roomVapourGPerM3: one.air.roomVapourGPerM3 * factor },
      });
      const trial = this.#try(this.#unit, inRoom, inRoom);
      if (trial.met) return leverOf(sign > 0 ? 'wetter-room' : 'drier-room', factor, trial);
    }
    return null;
  }

  /** Tries a change of the enclosure, which leaves the others behind its pump as they are unless it is one of theirs too. */
  #try(unit: MistUnit, change: (one: MistCase) => MistCase, changeOther: (one: MistCase) => MistCase = same): Trial {
    const cases = this.#cases.map((one) => this.#besidesOf(change(one)));
    if (!unit.machine) {
      const shortfall = Math.max(0, ...cases.map((one) => caseDay(one, []).shortfall));
      return { met: shortfall <= 1e-9, waterG: 0, entries: [] };
    }
    if (cases.some(isTooHumidUnmisted) || !this.#fitsTheClock(unit, cases)) return FAILED;
    const [hardest] = cases;
    const first = cases.length > 1 && hardest ? this.#solved(unit, [hardest], []) : null;
    if (first && !first.met) return first;
    const own = this.#solved(unit, cases, first ? [first.entries] : []);
    if (!own.met || this.#others.length === 0) return own;
    this.#neighbourDaysLeft -= this.#others.length;
    if (this.#neighbourDaysLeft < 0) return { ...own, met: false };
    return this.#shared(unit, cases, this.#others.map(changeOther), own.entries);
  }

  /** What the enclosure comes to under the entries that are the best for all behind its pump; so small a miss as is only told is none. */
  #shared(unit: MistUnit, cases: readonly MistCase[], others: readonly MistCase[], seed: readonly Run[]): Trial {
    const seeds = [seed, this.#near].filter((entries) => entries.length > 0);
    const day = new UnitSolver(unit).solveCases([...cases, ...others], { untilMet: true, seeds });
    const own = day.cases.slice(0, cases.length);
    const met = day.exceeded.length === 0 && own.every(({ shortfall }) => shortfall <= NEAR + 1e-9);
    return { met, waterG: day.waterG, entries: day.entries };
  }

  #besidesOf(one: MistCase): MistCase {
    if (this.#with === 'shield') return shielded(one);
    return this.#with === 'dry-floor' ? withBase(one, 1 / DAMP_FACTOR) : one;
  }

  /**
   * Where no entries hold the limits of the clock (gap, count, hours without mist), none meet the targets besides: told without a
   * simulated day. The air is the untouched one's, so that all levers that leave the clock alone ask the same question, once.
   */
  #fitsTheClock(unit: MistUnit, cases: readonly MistCase[]): boolean {
    const asked = cases.map((one, index) => unseen({ ...one, ...airOf(this.#cases[index] ?? one) }));
    return new UnitSolver(unit).solveCases(asked, { untilMet: true }).exceeded.length === 0;
  }

  #solved(unit: MistUnit, cases: readonly MistCase[], seeds: readonly (readonly Run[])[]): Trial {
    const near = this.#near.length > 0 ? [this.#near] : [];
    const day = new UnitSolver(unit).solveCases(cases, { untilMet: true, seeds: [...seeds, ...near] });
    return { met: day.exceeded.length === 0 && day.shortfall <= 1e-9, waterG: day.waterG, entries: day.entries };
  }
}

const FAILED: Trial = { met: false, waterG: 0, entries: [] };

function airOf({ air, body, spray }: MistCase): Pick<MistCase, 'air' | 'body' | 'spray'> {
  return { air, body, spray };
}

function same(one: MistCase): MistCase {
  return one;
}

function leverOf(kind: LeverKind, value: number, { met, waterG, entries }: Trial): Lever | null {
  return met ? { kind, value, waterG, entries, besides: null } : null;
}
