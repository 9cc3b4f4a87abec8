/** Small households with lamps and timers, as the lighting stage takes them; everything else is left empty. */
import { epochDay } from '../../src/basics/calendar-day.ts';
import type { Place } from '../../src/diagnostics/diagnostic.ts';
import type { Device, MistPump, PinDial, ProgrammableTimer, RepeatCycleTimer } from '../../src/hardware/devices.ts';
import type { Care, CareEnclosure, CarePlan, Inset, Lamp, Path, Photoperiod, Targets } from '../../src/resolve/care.ts';

/** Stands for the line that says a value: the path as a file name. */
export function placeOfPath(path: Path): Place {
  return { file: path.join('.'), line: 1, column: 1, length: 1 };
}

export function shelfCare(parts: {
  readonly plan?: Partial<CarePlan>;
  readonly devices: readonly Device[];
  readonly enclosures: readonly CareEnclosure[];
  readonly room?: { readonly dayC: number; readonly nightC: number };
  readonly timezone?: string;
}): Care {
  return {
    placeOf: placeOfPath,
    placeOfTarget: (enclosure, path) => placeOfPath([enclosure, path]),
    id: null,
    name: 'Shelf',
    language: 'en',
    units: 'metric',
    paper: 'a4',
    contacts: {},
    site: {
      timezone: parts.timezone ?? 'Europe/Madrid',
      latitude: 41.65,
      longitude: -0.89,
      roomByMonth: Array.from({ length: 12 }, () => ({ dayC: 21, nightC: 18, humidity: 0.4, ...parts.room })),
    },
    plan: {
      from: epochDay('2027-01-01'),
      days: 365,
      changeOn: null,
      settingsAtMost: null,
      toleranceMinutes: null,
      atLeastBetweenDays: 1,
      jumpAtMostMinutes: null,
      mistSetsAtMost: 4,
      ...parts.plan,
    },
    people: [],
    noise: [],
    shopping: { days: [], reserveDays: 14 },
    devices: parts.devices,
    enclosures: parts.enclosures,
    away: [],
    shortages: [],
    sources: {},
    cautions: [],
  };
}

const DEVICE = { path: [], where: null, outlets: 4, ratingW: 1800, outlet: 'always' } as const;

export function pinDial(id: string, more: Partial<PinDial> = {}): PinDial {
  return {
    ...DEVICE,
    id,
    path: ['hardware', id],
    kind: 'pin-dial',
    stepMinutes: 15,
    turnsInDays: 1,
    pins: 'down-is-on',
    clock: 'standard',
    now: null,
    ...more,
  };
}

export function programmableTimer(id: string, more: Partial<ProgrammableTimer> = {}): ProgrammableTimer {
  return {
    ...DEVICE,
    id,
    path: ['hardware', id],
    kind: 'programmable-timer',
    entries: 12,
    entryForm: 'on-and-off',
    resolutionSeconds: 60,
    shortestSeconds: 60,
    clock: 'standard',
    keepsTime: true,
    ...more,
  };
}

export function repeatTimer(id: string, more: Partial<RepeatCycleTimer> = {}): RepeatCycleTimer {
  return {
    ...DEVICE,
    id,
    path: ['hardware', id],
    kind: 'repeat-cycle-timer',
    onSeconds: [1, 600],
    offSeconds: [60, 86_400],
    resolutionSeconds: 1,
    ...more,
  };
}

export function mistPump(id: string, more: Partial<MistPump> = {}): MistPump {
  return {
    id,
    path: ['hardware', id],
    where: null,
    kind: 'mist-pump',
    outlet: 'always',
    powerW: 30,
    flowGPerHour: 5400,
    nozzles: 1,
    landsShare: 0.6,
    airborneShare: 0,
    lagSeconds: 0,
    afterDripG: 0,
    longestRunSeconds: 300,
    restSeconds: 600,
    dutyFactor: null,
    startStepMinutes: 15,
    lengthStepSeconds: 15,
    tank: null,
    ...more,
  };
}

export function lamp(id: string, more: Partial<Lamp> = {}): Lamp {
  return {
    id,
    path: ['lamps', id],
    kind: 'led',
    uses: ['daylight'],
    powerW: 20,
    outlet: 'auto',
    thermostat: 'none',
    fitted: null,
    replaceAfter: null,
    replaceAfterHours: null,
    guard: null,
    warmsC: 3,
    ...more,
  };
}

export function hours(minutes: number): Photoperiod {
  return { form: { kind: 'constant', minutes }, season: { kind: 'site' }, atLeastMinutes: null, atMostMinutes: null };
}

export function seasonal(shortestMinutes: number, longestMinutes: number): Photoperiod {
  return { ...hours(0), form: { kind: 'seasonal', shortestMinutes, longestMinutes } };
}

export function edges(afterLightsOnMinutes: number, beforeLightsOffMinutes: number): Inset {
  return { form: 'edges', afterLightsOnMinutes, beforeLightsOffMinutes };
}

export function enclosure(
  id: string,
  photoperiod: Photoperiod,
  lamps: readonly Lamp[],
  targets: Partial<Targets> = {},
  more: Partial<CareEnclosure> = {},
): CareEnclosure {
  return {
    id,
    path: ['enclosures', id],
    name: id,
    species: 'panther-chameleon',
    speciesName: 'Panther chameleon',
    scientific: 'Furcifer pardalis',
    activity: 'diurnal',
    animals: [],
    animalCount: 1,
    stages: [{ from: epochDay('2027-01-01'), stage: 'adult' }],
    sizeM: { width: 0.5, depth: 0.5, height: 0.9 },
    openShare: 0.45,
    planting: 'medium',
    floor: 'dry',
    tray: null,
    where: {},
    lamps,
    mist: 'none',
    dripper: null,
    nozzles: { count: 1, hitsLamp: false },
    air: {},
    targets: { ...TARGETS, photoperiod, ...targets },
    targetRecords: [],
    rest: null,
    states: [],
    last: {},
    supplements: [],
    feeders: [],
    chores: [],
    choresOff: [],
    cautions: [],
    ...more,
  };
}

const TARGETS: Omit<Targets, 'photoperiod'> = {
  rangeLatitude: null,
  day: { anchor: { kind: 'midday', minute: 780 }, noLightBeforeMinute: null, noLightAfterMinute: null },
  basking: null,
  uvb: null,
  temperature: {
    dayC: null,
    nightC: null,
    baskingC: null,
    neverBelowC: null,
    neverAboveC: null,
    limitsWaivedBecause: null,
  },
  humidity: {
    day: null,
    night: null,
    mean: null,
    peak: null,
    peaksPerDay: null,
    floor: null,
    ceiling: null,
    soakedAtMostHours: null,
  },
  water: { drink: null, dish: null, soak: null, dryOut: null, noMist: [] },
  misting: null,
  moistHide: null,
  feeding: null,
  mayGoWithoutDays: {},
  stages: {},
};
