/** What each shipped species is kept in: size, mesh, warmth, food and powders of an ordinary enclosure. Our own invention. */

export interface Kind {
  readonly id: string;
  readonly isMisted: boolean;
  readonly basks: boolean;
  readonly isHot: boolean;
  /** What keeps its nights warm behind a thermostat, where a room's nights are too cold for it. */
  readonly heater?: 'mat' | 'cable' | 'ceramic';
  /** Foods that any of its stages eats. */
  readonly foods: readonly string[];
  readonly powders: readonly string[];
  readonly sizeCm: readonly [number, number, number];
  readonly openPercent: readonly [number, number];
  /** Nozzles that wet its leaves; one where left out. */
  readonly nozzles?: number;
}

const CHAMELEON = {
  isMisted: true,
  basks: true,
  isHot: true,
  foods: ['insects'],
  powders: ['calcium', 'calcium-d3', 'multivitamin'],
  sizeCm: [50, 50, 90],
  openPercent: [33, 50],
} as const;
const SNAKE = {
  heater: 'mat',
  isMisted: false,
  basks: true,
  isHot: false,
  foods: ['rodents'],
  powders: [],
  sizeCm: [120, 60, 60],
  openPercent: [5, 15],
} as const;

/** Every shipped species in an ordinary enclosure. */
export const KINDS: readonly Kind[] = [
  { id: 'veiled-chameleon', ...CHAMELEON },
  { id: 'panther-chameleon', ...CHAMELEON },
  { id: 'jacksons-chameleon', ...CHAMELEON },
  {
    id: 'crested-gecko',
    heater: 'cable',
    isMisted: true,
    basks: false,
    isHot: false,
    foods: ['prepared', 'insects'],
    powders: ['calcium'],
    sizeCm: [45, 45, 60],
    openPercent: [18, 30],
  },
  {
    id: 'leopard-gecko',
    heater: 'mat',
    isMisted: false,
    basks: true,
    isHot: false,
    foods: ['insects'],
    powders: ['calcium', 'calcium-d3', 'multivitamin'],
    sizeCm: [90, 45, 45],
    openPercent: [10, 30],
  },
  {
    id: 'bearded-dragon',
    heater: 'ceramic',
    isMisted: false,
    basks: true,
    isHot: true,
    foods: ['insects', 'greens'],
    powders: ['calcium', 'calcium-d3', 'multivitamin'],
    sizeCm: [120, 60, 60],
    openPercent: [10, 30],
  },
  {
    id: 'green-iguana',
    heater: 'cable',
    isMisted: true,
    basks: true,
    isHot: true,
    foods: ['greens'],
    powders: ['calcium', 'multivitamin'],
    sizeCm: [180, 90, 180],
    openPercent: [4, 8],
    nozzles: 4,
  },
  { id: 'ball-python', ...SNAKE },
  { id: 'corn-snake', ...SNAKE },
  {
    id: 'giant-day-gecko',
    heater: 'cable',
    isMisted: true,
    basks: true,
    isHot: true,
    foods: ['insects', 'prepared'],
    powders: ['calcium', 'calcium-d3', 'multivitamin'],
    sizeCm: [45, 45, 90],
    openPercent: [10, 30],
  },
  {
    id: 'red-eyed-tree-frog',
    heater: 'cable',
    isMisted: true,
    basks: false,
    isHot: false,
    foods: ['insects'],
    powders: ['calcium', 'calcium-d3', 'vitamin-a'],
    sizeCm: [45, 45, 60],
    openPercent: [12, 20],
  },
  {
    id: 'dyeing-poison-frog',
    heater: 'cable',
    isMisted: true,
    basks: false,
    isHot: false,
    foods: ['insects'],
    powders: ['calcium-d3-multivitamin', 'vitamin-a'],
    sizeCm: [60, 45, 45],
    openPercent: [5, 12],
  },
  {
    id: 'hermanns-tortoise',
    isMisted: false,
    basks: true,
    isHot: true,
    foods: ['greens'],
    powders: ['calcium', 'multivitamin'],
    sizeCm: [150, 80, 40],
    openPercent: [40, 60],
  },
];
