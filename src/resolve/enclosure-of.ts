/** One enclosure with everything said. */
import type { Device } from '../hardware/devices.ts';
import type { ReadAnimal, ReadEnclosure, ReadState } from '../read/household-tree.ts';
import type { FilePath } from '../read/placed-file.ts';
import type { AirOverrides, Animal, AnimalState, CareEnclosure, FittedAir } from './care.ts';
import { cautionsOf } from './cautions-of.ts';
import { choresOf } from './chores-of.ts';
import type { EnclosureInput, EnclosureTargets } from './enclosure-targets.ts';
import { feedersOf } from './feeders-of.ts';
import { inLanguage } from './in-language.ts';
import { askAboutSpray, lampsOf } from './lamps-of.ts';
import { reportRest, restOf } from './rest-of.ts';
import { isYoungest } from './stages.ts';
import { supplementsOf } from './supplements-of.ts';

export interface EnclosureContext {
  readonly devices: readonly Device[];
  readonly mist: CareEnclosure['mist'];
  readonly nozzles: number;
  readonly fitted: FittedAir | null;
  /** Who does a chore that names nobody. */
  readonly who: string;
}

/** Returns the enclosure; reports unsafe rests, the question about spray, and contents of powders that were taken. */
export function enclosureOf(
  input: EnclosureInput,
  resolved: EnclosureTargets,
  context: EnclosureContext,
): CareEnclosure {
  const { said, path, household, profile, log } = input;
  const { targets, stageBook } = resolved;
  const language = household.tree.language ?? 'en';
  const states = statesOf(said.states ?? [], path);
  const rest = said.rest ? restOf(said.rest, [...path, 'rest']) : null;
  const enclosure: Omit<CareEnclosure, 'cautions'> = {
    ...housing(said, context.fitted),
    id: said.id,
    path,
    name: said.name ?? said.id,
    species: profile.tree.species,
    speciesName: inLanguage(profile.tree.name, language),
    scientific: profile.tree.scientific,
    activity: resolved.activity,
    ...animalsOf(said.animals ?? 1),
    stages: resolved.stages,
    lamps: lampsOf(said, path),
    mist: context.mist,
    nozzles: { count: context.nozzles, hitsLamp: said.nozzles?.hits_lamp ?? null },
    targets,
    targetRecords: resolved.records,
    rest,
    states,
    last: said.last ?? {},
    supplements: supplementsOf(said.supplements ?? [], usedStages(resolved), {
      enclosure: said.id,
      path,
      placeOf: household.placeOf,
      log,
    }),
    feeders: feedersOf(said.feeders ?? [], path),
    chores: choresOf(
      said.chores ?? [],
      [...stageBook.tables].map(({ tree, speaker }) => ({ chores: tree.chores ?? [], speaker })),
      { path, who: context.who, language },
    ),
    choresOff: Object.entries(said.defaults ?? {}).flatMap(([id, isOn]) => (isOn ? [] : [id])),
  };
  askAboutSpray(enclosure, household.placeOf, log);
  if (rest) {
    const isHatchling = (stage: string) => isYoungest(stageBook, stage);
    reportRest(rest, {
      enclosure: said.id,
      stages: resolved.stages,
      states,
      isHatchling,
      placeOf: household.placeOf,
      log,
    });
  }
  return { ...enclosure, cautions: cautionsOf(enclosure, context.devices) };
}

function usedStages({ targets, stages }: EnclosureTargets) {
  return [...new Set(stages.map(({ stage }) => stage))].flatMap((name) =>
    Object.hasOwn(targets.stages, name) ? (targets.stages[name] ?? []) : [],
  );
}

function housing(
  said: ReadEnclosure,
  fitted: FittedAir | null,
): Pick<
  CareEnclosure,
  'sizeM' | 'openShare' | 'planting' | 'floor' | 'tray' | 'where' | 'dripper' | 'air' | 'fittedAir'
> {
  const measured = airOf(said.air ?? {});
  return {
    sizeM: said.size,
    openShare: said.open,
    planting: said.planting ?? 'none',
    floor: said.floor ?? 'dry',
    tray: said.tray ? { holdsG: said.tray.holds, emptyEveryDays: said.tray.empty_every } : null,
    where: said.where ?? {},
    dripper: said.dripper ?? null,
    air: { ...fitted?.values, ...measured },
    fittedAir: fitted && withoutSaid(fitted, measured),
  };
}

/** The file's own word stands before anything fitted. */
function withoutSaid({ values, sources }: FittedAir, measured: Partial<AirOverrides>): FittedAir {
  const own = <T extends object>(map: T): T =>
    Object.fromEntries(Object.entries(map).filter(([key]) => !Object.hasOwn(measured, key))) as T;
  return { values: own(values), sources: own(sources) };
}

function airOf(air: NonNullable<ReadEnclosure['air']>): Partial<AirOverrides> {
  return {
    ...(air.changes_per_hour === undefined ? {} : { airChangesPerHour: air.changes_per_hour }),
    ...(air.wettable_area === undefined ? {} : { wettableAreaM2: air.wettable_area }),
    ...(air.film === undefined ? {} : { filmGPerM2: air.film }),
    ...(air.transfer === undefined ? {} : { transferMPerHour: air.transfer }),
    ...(air.base_evaporation === undefined ? {} : { baseEvaporationGPerHour: air.base_evaporation }),
    ...(air.warm_up === undefined ? {} : { warmUpMinutes: air.warm_up }),
  };
}

function animalsOf(said: number | readonly ReadAnimal[]): {
  readonly animals: readonly Animal[];
  readonly animalCount: number;
} {
  if (typeof said === 'number') return { animals: [], animalCount: said };
  const animals = said.map((animal) => ({
    name: animal.name ?? null,
    sex: animal.sex ?? null,
    born: animal.born ?? null,
    weightG: animal.weight ?? null,
  }));
  return { animals, animalCount: animals.length };
}

function statesOf(said: readonly ReadState[], path: FilePath): readonly AnimalState[] {
  return said.map((state, index) => ({
    is: state.is,
    path: [...path, 'states', index],
    from: state.from,
    to: state.to,
    vet: state.vet ?? null,
  }));
}
