/**
 * One household for each shipped species: an ordinary room (21 °C by day, 18 °C by night, 45 %) and an ordinary enclosure of the species,
 * mesh or glass as is usual in the trade. All of them our own invention; sizes and materials are common practice, no source.
 */

export interface OrdinaryEnclosure {
  readonly species: string;
  readonly sizeCm: readonly [number, number, number];
  readonly openPercent: number;
  readonly planting: 'none' | 'light' | 'medium' | 'dense';
  readonly floor: 'dry' | 'damp-below';
  /** Nozzles of a pump of 90 mL a minute each; 0: not misted. */
  readonly nozzles: number;
  /** By how much the lamps warm the air. */
  readonly warmsC: number;
  /** Holds the night band behind a thermostat. */
  readonly heated: boolean;
  readonly stage: string;
}

const CHAMELEON = {
  sizeCm: [60, 60, 120],
  planting: 'medium',
  floor: 'dry',
  warmsC: 4,
  heated: false,
  stage: 'adult',
} as const;

export const ORDINARY: readonly OrdinaryEnclosure[] = [
  { ...CHAMELEON, species: 'veiled-chameleon', openPercent: 33, nozzles: 2 },
  { ...CHAMELEON, species: 'panther-chameleon', openPercent: 25, nozzles: 2 },
  { ...CHAMELEON, species: 'jacksons-chameleon', openPercent: 25, nozzles: 2, warmsC: 2 },
  {
    species: 'crested-gecko',
    sizeCm: [45, 45, 60],
    openPercent: 24,
    planting: 'dense',
    floor: 'dry',
    nozzles: 1,
    warmsC: 2,
    heated: true,
    stage: 'adult',
  },
  {
    species: 'leopard-gecko',
    sizeCm: [90, 45, 45],
    openPercent: 25,
    planting: 'none',
    floor: 'dry',
    nozzles: 0,
    warmsC: 5,
    heated: true,
    stage: 'adult',
  },
  {
    species: 'bearded-dragon',
    sizeCm: [120, 60, 60],
    openPercent: 25,
    planting: 'none',
    floor: 'dry',
    nozzles: 0,
    warmsC: 8,
    heated: true,
    stage: 'adult',
  },
  {
    species: 'green-iguana',
    sizeCm: [180, 90, 180],
    openPercent: 8,
    planting: 'medium',
    floor: 'dry',
    nozzles: 6,
    warmsC: 8,
    heated: true,
    stage: 'adult',
  },
  {
    species: 'ball-python',
    sizeCm: [120, 60, 60],
    openPercent: 15,
    planting: 'light',
    floor: 'damp-below',
    nozzles: 0,
    warmsC: 6,
    heated: true,
    stage: 'adult',
  },
  {
    species: 'corn-snake',
    sizeCm: [120, 60, 60],
    openPercent: 15,
    planting: 'light',
    floor: 'dry',
    nozzles: 0,
    warmsC: 4,
    heated: true,
    stage: 'adult',
  },
  {
    species: 'giant-day-gecko',
    sizeCm: [45, 45, 90],
    openPercent: 18,
    planting: 'dense',
    floor: 'dry',
    nozzles: 1,
    warmsC: 5,
    heated: true,
    stage: 'adult',
  },
  {
    species: 'red-eyed-tree-frog',
    sizeCm: [45, 45, 60],
    openPercent: 15,
    planting: 'dense',
    floor: 'dry',
    nozzles: 1,
    warmsC: 4,
    heated: true,
    stage: 'adult',
  },
  {
    species: 'dyeing-poison-frog',
    sizeCm: [60, 45, 45],
    openPercent: 11,
    planting: 'dense',
    floor: 'damp-below',
    nozzles: 1,
    warmsC: 3,
    heated: true,
    stage: 'adult',
  },
  {
    species: 'hermanns-tortoise',
    sizeCm: [120, 60, 45],
    openPercent: 35,
    planting: 'light',
    floor: 'dry',
    nozzles: 0,
    warmsC: 5,
    heated: false,
    stage: 'adult',
  },
];

/** Returns the household file of one of them; a plan of a year. */
export function ordinaryHousehold(one: OrdinaryEnclosure): string {
  const [width, depth, height] = one.sizeCm;
  const mist = one.nozzles > 0;
  return [
    'format: 1',
    `name: Ordinary ${one.species}`,
    'site: { timezone: Europe/Madrid, latitude: 41.65, longitude: -0.89, room: { day: 21 °C, night: 18 °C, humidity: 45 % } }',
    'plan: { from: 2027-01-01, days: 365 }',
    'people: [{ id: keeper, feeds_at: "10:30" }]',
    'hardware:',
    '  - { id: dial, kind: pin-dial, step: 15 min, outlets: 4, rating: 1800 W }',
    ...(mist
      ? [
          '  - { id: mist-timer, kind: programmable-timer, entries: 12, resolution: 1 s, shortest: 5 s, clock: standard, keeps_time: yes, rating: 1000 W }',
          `  - { id: pump, kind: mist-pump, outlet: mist-timer, power: 30 W, flow: 90 mL/min, nozzles: ${one.nozzles}, longest_run: 5 min, rest: 10 min, tank: { holds: 40 L, reserve: 2 L, refill_every: 7 days } }`,
        ]
      : []),
    'enclosures:',
    '  - id: home',
    `    species: ${one.species}`,
    `    stage: ${one.stage}`,
    `    size: { width: ${width} cm, depth: ${depth} cm, height: ${height} cm }`,
    `    open: ${one.openPercent} %`,
    `    planting: ${one.planting}`,
    `    floor: ${one.floor}`,
    '    lamps:',
    `      - { id: day, kind: led, for: [daylight], power: 20 W, outlet: dial, warms: ${one.warmsC} °C }`,
    ...(one.heated
      ? ['      - { id: warm, kind: mat, for: [heat], power: 15 W, outlet: always, thermostat: on-off, warms: 0 °C }']
      : []),
    `    mist: ${mist ? 'pump' : 'none'}`,
    ...(mist ? [`    nozzles: { count: ${one.nozzles}, hits_lamp: false }`] : []),
    '',
  ].join('\n');
}
