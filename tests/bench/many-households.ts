/**
 * The shelves of one large house as household files, from a seed alone: each shelf three groups of two enclosures, a dial and, where
 * the animals are misted, a pump a group. Shelves are built by a number of plans: two of one plan differ in names, people, stock and
 * absences, not in what the air is to do. Our own invention.
 */
import { Draw } from '../property/household-generator.ts';
import { KINDS, type Kind } from '../property/kept-species.ts';

export interface ShelfFile {
  /** Name of the file, for instance `shelf-0007.yaml`. */
  readonly file: string;
  readonly text: string;
}

const GROUPS = 3;
const IN_GROUP = 2;
const SHELF = GROUPS * IN_GROUP;

/** Two shelves of one plan ask the same questions about mists: one a group at most. */
export const MIST_PROBLEMS_A_PLAN = GROUPS;

/**
 * Returns shelves that hold so many enclosures together.
 *
 * @param plans how many different plans of a shelf there are; null: no two are alike
 */
export function manyHouseholds(seed: number, enclosures: number, plans: number | null): readonly ShelfFile[] {
  const shelves = Math.ceil(enclosures / SHELF);
  return Array.from({ length: shelves }, (_, index) => {
    const number = String(index + 1).padStart(4, '0');
    const held = Math.min(SHELF, enclosures - index * SHELF);
    const plan = new Draw(seed * 1_000_003 + (plans === null ? index : index % plans));
    return { file: `shelf-${number}.yaml`, text: shelf(plan, new Draw(seed * 7_919 + index), `Shelf ${number}`, held) };
  });
}

/** Returns one household with so many enclosures, shared out to so many dials. */
export function oneLargeHousehold(seed: number, enclosures: number, dials: number): string {
  const plan = new Draw(seed);
  const groups = Array.from({ length: dials }, () => plan.one(KINDS));
  const held = (group: number) =>
    Math.floor(((group + 1) * enclosures) / dials) - Math.floor((group * enclosures) / dials);
  return house(plan, new Draw(seed + 1), 'The large house', groups, held);
}

function shelf(plan: Draw, own: Draw, name: string, enclosures: number): string {
  const groups = Array.from({ length: GROUPS }, () => plan.one(KINDS));
  return house(plan, own, name, groups, (group) => Math.max(0, Math.min(IN_GROUP, enclosures - group * IN_GROUP)));
}

function house(plan: Draw, own: Draw, name: string, groups: readonly Kind[], held: (group: number) => number): string {
  const parts = groups.map((kind, group) => groupOf(plan, own, kind, group + 1, held(group)));
  return [
    'format: 1',
    `name: ${name}`,
    `contacts: { keeper: "desk ${own.whole(100, 999)}", vet: "Exotics clinic" }`,
    `site: { timezone: Europe/Madrid, latitude: 41.65, longitude: -0.89, room: { day: ${plan.whole(21, 23)} °C, night: ${plan.whole(18, 20)} °C, humidity: ${plan.whole(36, 52)} % } }`,
    'plan: { from: 2027-01-01, days: 365, change_on: [sat, sun], settings_at_most: 8, at_least_between: 14 days }',
    'people:',
    `  - { id: keeper-${own.whole(1, 30)}, feeds_at: "09:00", chores_on: sat, shops: true }`,
    '  - { id: sitter }',
    'shopping: { days: [fri], reserve: 14 days }',
    'hardware:',
    ...parts.flatMap(({ hardware }) => hardware),
    '  - { id: sprayer, kind: hand-sprayer, flow: 60 mL/min }',
    'enclosures:',
    ...parts.flatMap(({ enclosures }) => enclosures),
    ...absence(own),
    '',
  ].join('\n');
}

function absence(own: Draw): readonly string[] {
  if (!own.chance(0.3)) return [];
  const month = own.whole(3, 9);
  return [
    'away:',
    `  - { from: 2027-0${month}-03, to: 2027-0${month}-${own.whole(10, 16)}, sitter: sitter, visits: every 1 day }`,
  ];
}

interface Group {
  readonly hardware: readonly string[];
  readonly enclosures: readonly string[];
}

function groupOf(plan: Draw, own: Draw, kind: Kind, number: number, count: number): Group {
  const open = plan.whole(...kind.openPercent);
  const planting = kind.isMisted ? plan.one(['medium', 'dense']) : plan.one(['none', 'light']);
  const flow = plan.whole(70, 110);
  const power = plan.whole(12, 30);
  const nozzles = (kind.nozzles ?? 1) * count;
  const hardware = [
    `  - { id: dial-${number}, kind: pin-dial, step: 15 min, outlets: ${Math.max(4, count * 3)}, rating: 3000 W, clock: standard, pins: down-is-on }`,
    ...(kind.isMisted
      ? [
          `  - { id: timer-${number}, kind: programmable-timer, entries: 12, resolution: 1 s, shortest: 5 s, rating: 1000 W, clock: standard, keeps_time: yes }`,
          `  - { id: pump-${number}, kind: mist-pump, outlet: timer-${number}, power: 30 W, flow: ${flow} mL/min, nozzles: ${nozzles}, longest_run: 5 min, rest: 10 min, tank: { holds: 40 L, reserve: 2 L, refill_every: 7 days } }`,
        ]
      : []),
  ];
  const enclosures = Array.from({ length: count }, (_, index) =>
    enclosure(own, kind, { id: `g${number}-${index + 1}`, number, open, planting, power }),
  );
  return count === 0 ? { hardware: [], enclosures: [] } : { hardware, enclosures: enclosures.flat() };
}

interface Place {
  readonly id: string;
  readonly number: number;
  readonly open: number;
  readonly planting: string;
  readonly power: number;
}

function enclosure(own: Draw, kind: Kind, { id, number, open, planting, power }: Place): readonly string[] {
  const [width, depth, height] = kind.sizeCm;
  const dial = `dial-${number}`;
  return [
    `  - id: ${id}`,
    `    species: ${kind.id}`,
    '    stage: adult',
    `    animals: [{ name: ${own.one(['Ash', 'Bay', 'Fig', 'Ivy', 'Oak', 'Rue', 'Sal', 'Yew'])}, born: ${own.whole(2018, 2025)} }]`,
    `    size: { width: ${width} cm, depth: ${depth} cm, height: ${height} cm }`,
    `    open: ${open} %`,
    `    planting: ${planting}`,
    '    lamps:',
    `      - { id: day, kind: led, for: [daylight], power: ${power} W, outlet: ${dial} }`,
    ...(kind.isHot
      ? [
          `      - { id: sun, kind: halogen, for: [basking], power: 50 W, outlet: ${dial}, guard: true, thermostat: dimming, warms: 4 °C }`,
        ]
      : []),
    ...(kind.heater
      ? [
          `      - { id: warm, kind: ${kind.heater}, for: [heat], power: 30 W, outlet: always, guard: true, thermostat: pulse }`,
        ]
      : []),
    `    mist: ${kind.isMisted ? `pump-${number}` : 'none'}`,
    `    nozzles: { ${kind.isMisted ? `count: ${kind.nozzles ?? 1}, ` : ''}hits_lamp: false }`,
    ...(kind.powders.length > 0
      ? [
          `    supplements: [${kind.powders.map((powder) => `{ id: ${powder}, contains: ${contents(powder)} }`).join(', ')}]`,
        ]
      : []),
    `    feeders: [${kind.foods.map((food) => feeder(own, food)).join(', ')}]`,
  ];
}

function contents(powder: string): string {
  if (powder === 'calcium') return '[]';
  if (powder === 'calcium-d3') return '[d3]';
  return powder === 'vitamin-a' ? '[vitamin-a]' : '[d3, vitamin-a]';
}

function feeder(own: Draw, food: string): string {
  if (food === 'insects')
    return `{ id: cricket, share: 100 %, dust: true, shelf_life: 10 days, losses: 10 % a week, gut_load: 24 h, in_stock: ${own.whole(20, 90)} }`;
  if (food === 'greens') return '{ id: greens, food: greens, share: 100 %, dust: true, shelf_life: 4 days }';
  return `{ id: ${food === 'rodents' ? 'mouse' : 'diet'}, food: ${food}, share: 100 %, shelf_life: 180 days }`;
}
