/**
 * Realistic households as YAML text, from a seed alone: eight time zones, both hemispheres, one to six enclosures (or as many as asked),
 * dials, timers, pumps, feeders, absences. Same seed, same text.
 */

import { KINDS, type Kind } from './kept-species.ts';

export interface GeneratorOptions {
  /** Enclosures; 1 to 6 by the seed where left out. */
  readonly enclosures?: number;
  /** Days of the plan; 90 to 400 by the seed where left out. */
  readonly days?: number;
  /** Only these species. */
  readonly species?: readonly string[];
}

/** Zones with summer time north and south, of half an hour, negative, and none. */
export const SITES: readonly (readonly [zone: string, latitude: number, longitude: number])[] = [
  ['Europe/Madrid', 41.65, -0.89],
  ['Europe/Dublin', 53.35, -6.26],
  ['America/New_York', 40.71, -74.01],
  ['America/Denver', 39.74, -104.99],
  ['America/Sao_Paulo', -23.55, -46.63],
  ['Asia/Tokyo', 35.68, 139.69],
  ['Australia/Lord_Howe', -31.55, 159.08],
  ['Pacific/Auckland', -36.85, 174.76],
];

/** Draws from a seed: a 32-bit generator of period 2^32 (mulberry32), good enough to spread cases. */
export class Draw {
  #state: number;
  constructor(seed: number) {
    this.#state = seed >>> 0;
  }
  /** In [0, 1). */
  share(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), this.#state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }
  /** Whole, both ends included. */
  whole(least: number, most: number): number {
    return least + Math.floor(this.share() * (most - least + 1));
  }
  chance(share: number): boolean {
    return this.share() < share;
  }
  one<T>(items: readonly T[]): T {
    const item = items[Math.floor(this.share() * items.length)];
    if (item === undefined) throw new Error('nothing to draw from');
    return item;
  }
}

interface Shelf {
  readonly lines: string[];
  readonly dials: { readonly id: string; free: number }[];
  readonly pump: { readonly id: string; readonly nozzles: number } | null;
}

/** Returns the text of a household file. */
export function generateHousehold(seed: number, options: GeneratorOptions = {}): string {
  const draw = new Draw(seed);
  const count = options.enclosures ?? draw.whole(1, 6);
  const known = KINDS.filter(({ id }) => options.species?.includes(id) ?? true);
  const kinds = Array.from({ length: count }, () => draw.one(known));
  const from = `2027-${two(draw.whole(1, 12))}-${two(draw.whole(1, 28))}`;
  const shelf = shelfOf(draw, kinds);
  return [
    ...head(draw, seed, from, options.days ?? draw.whole(90, 400)),
    ...people(draw),
    'hardware:',
    ...shelf.lines,
    'enclosures:',
    ...kinds.flatMap((kind, index) => enclosure(draw, kind, index, shelf, from)),
    ...absence(draw, from),
    '',
  ].join('\n');
}

function head(draw: Draw, seed: number, from: string, days: number): readonly string[] {
  const [zone, latitude, longitude] = draw.one(SITES);
  const isUs = zone.startsWith('America/') && zone !== 'America/Sao_Paulo';
  const room = isUs
    ? `{ day: ${draw.whole(68, 75)} °F, night: ${draw.whole(62, 67)} °F, humidity: ${draw.whole(25, 60)} % }`
    : `{ day: ${draw.whole(19, 24)} °C, night: ${draw.whole(16, 19)} °C, humidity: ${draw.chance(0.7) ? `${draw.whole(25, 60)} %` : monthly(draw)} }`;
  return [
    'format: 1',
    `name: Shelf ${seed}`,
    `units: ${isUs ? 'us' : 'metric'}`,
    `paper: ${isUs ? 'letter' : 'a4'}`,
    `language: ${draw.chance(0.2) ? 'es' : 'en'}`,
    `site: { timezone: ${zone}, latitude: ${latitude}, longitude: ${longitude}, room: ${room} }`,
    'plan:',
    `  from: ${from}`,
    `  days: ${days}`,
    ...(draw.chance(0.6) ? [`  change_on: [${draw.one(['sat', 'sun', 'sat, sun', 'mon, wed, fri'])}]`] : []),
    ...(draw.chance(0.7) ? [`  settings_at_most: ${draw.whole(2, 12)}`] : []),
    ...(draw.chance(0.3) ? [`  tolerance: ${draw.one([10, 15, 20, 30])} min`] : []),
    ...(draw.chance(0.4) ? [`  at_least_between: ${draw.one([7, 14, 21])} days`] : []),
    ...(draw.chance(0.2) ? ['  jump_at_most: 60 min'] : []),
  ];
}

function monthly(draw: Draw): string {
  return `[${Array.from({ length: 12 }, () => `${draw.whole(25, 60)} %`).join(', ')}]`;
}

function people(draw: Draw): readonly string[] {
  return [
    'people:',
    `  - { id: keeper, feeds_at: "${two(draw.whole(7, 9))}:${draw.one(['00', '15', '30'])}", chores_on: ${draw.one(['sat', 'sun', 'wed'])}, shops: true }`,
    '  - { id: sitter }',
    ...(draw.chance(0.5) ? ['noise: { none: [["22:00", "06:00"]] }'] : []),
    ...(draw.chance(0.5) ? ['shopping: { days: [fri], reserve: 14 days }'] : []),
  ];
}

/** Enough dials that every lamp has an outlet, one pump behind a seconds timer where anything is misted, a sprayer always. */
function shelfOf(draw: Draw, kinds: readonly Kind[]): Shelf {
  const lines: string[] = [];
  const dials: { id: string; free: number }[] = [];
  const wanted = kinds.length * 4;
  for (let outlets = 0; outlets < wanted; outlets += dials.at(-1)?.free ?? wanted) {
    const id = `dial-${dials.length + 1}`;
    const free = draw.whole(4, 8);
    const step = draw.one([15, 15, 30]);
    const now = draw.chance(0.4) ? ', now: { on: "08:00", off: "20:00" }' : '';
    lines.push(
      `  - { id: ${id}, kind: pin-dial, step: ${step} min, outlets: ${free}, rating: ${draw.one([1800, 3000])} W, clock: standard, pins: ${draw.one(['down-is-on', 'up-is-on'])}${now} }`,
    );
    dials.push({ id, free });
  }
  const misted = kinds.filter(({ isMisted }) => isMisted).reduce((sum, { nozzles }) => sum + (nozzles ?? 1), 0);
  const pump = misted > 0 && draw.chance(0.8) ? { id: 'pump', nozzles: misted } : null;
  if (pump) {
    lines.push(
      `  - { id: mist-timer, kind: programmable-timer, entries: ${draw.whole(6, 20)}, resolution: 1 s, shortest: 5 s, rating: 1000 W, clock: ${draw.one(['standard', 'wall', 'automatic'])}, keeps_time: ${draw.one(['yes', 'no'])} }`,
    );
    lines.push(
      `  - { id: pump, kind: mist-pump, outlet: mist-timer, power: 30 W, flow: ${draw.whole(50, 110)} mL/min, nozzles: ${pump.nozzles}, longest_run: 5 min, rest: 10 min, tank: { holds: ${draw.whole(8, 30)} L, reserve: 1 L, refill_every: 7 days } }`,
    );
  }
  lines.push('  - { id: sprayer, kind: hand-sprayer, flow: 60 mL/min }');
  return { lines, dials, pump };
}

function enclosure(draw: Draw, kind: Kind, index: number, shelf: Shelf, from: string): readonly string[] {
  const [width, depth, height] = kind.sizeCm;
  const mist = !kind.isMisted ? 'none' : shelf.pump ? shelf.pump.id : 'by-hand';
  return [
    `  - id: e${index + 1}`,
    `    species: ${kind.id}`,
    `    stage: ${stage(draw, from)}`,
    `    animals: ${draw.whole(1, 2)}`,
    `    size: { width: ${width} cm, depth: ${depth} cm, height: ${height} cm }`,
    `    open: ${draw.whole(...kind.openPercent)} %`,
    `    planting: ${kind.isMisted ? draw.one(['light', 'medium', 'dense']) : draw.one(['none', 'light'])}`,
    '    lamps:',
    ...lamps(draw, kind, shelf),
    `    mist: ${mist}`,
    `    nozzles: { ${mist === 'pump' ? `count: ${kind.nozzles ?? 1}, ` : ''}hits_lamp: ${draw.chance(0.7) ? 'false' : 'true'} }`,
    ...(kind.powders.length > 0
      ? [`    supplements: [${kind.powders.map((id) => `{ id: ${id}, contains: ${contents(id)} }`).join(', ')}]`]
      : []),
    `    feeders: [${kind.foods.flatMap((food) => feedersFor(draw, food)).join(', ')}]`,
    ...(draw.chance(0.4)
      ? ['    chores: [{ id: wipe-glass, title: Wipe the glass, every: 1 week, minutes: 5, leeway: 2 days }]']
      : []),
    ...(draw.chance(0.2) ? ['    targets: { day: { midday: "13:00", why: as on the shelf } }'] : []),
  ];
}

function stage(draw: Draw, from: string): string {
  if (draw.chance(0.8)) return draw.one(['adult', 'adult', 'juvenile', 'hatchling']);
  return `[{ from: ${from}, stage: juvenile }, { from: 2028-01-15, stage: adult }]`;
}

function lamps(draw: Draw, kind: Kind, shelf: Shelf): readonly string[] {
  const outlet = () => outletFor(draw, shelf);
  const hot = draw.one(['halogen', 'mercury', 'metal-halide']);
  const lines = [
    `      - { id: day, kind: ${draw.one(['led', 'fluorescent'])}, for: [daylight], power: ${draw.whole(10, 40)} W, outlet: ${outlet()} }`,
  ];
  if (kind.isHot)
    lines.push(
      `      - { id: sun, kind: ${hot}, for: [basking${draw.chance(0.5) ? ', uvb' : ''}], power: ${draw.one([50, 75, 100])} W, outlet: ${outlet()}, guard: true, warms: ${draw.whole(3, 6)} °C }`,
    );
  if (draw.chance(0.6))
    lines.push(
      `      - { id: uv, kind: fluorescent, for: [uvb], power: 24 W, outlet: ${outlet()}, fitted: 2026-11-02, replace_after: 12 months }`,
    );
  if (kind.heater)
    lines.push(
      `      - { id: warm, kind: ${kind.heater}, for: [heat], power: 30 W, outlet: always, thermostat: on-off }`,
    );
  return lines;
}

/** Names a dial with a free outlet, else a live one. */
function outletFor(draw: Draw, shelf: Shelf): string {
  if (draw.chance(0.2)) return 'auto';
  const dial = shelf.dials.find(({ free }) => free > 1);
  if (!dial) return 'always';
  dial.free -= 1;
  return dial.id;
}

function contents(powder: string): string {
  if (powder === 'calcium') return '[]';
  if (powder === 'calcium-d3') return '[d3]';
  return powder === 'vitamin-a' ? '[vitamin-a]' : '[d3, vitamin-a]';
}

function feedersFor(draw: Draw, food: string): readonly string[] {
  if (food === 'insects') {
    const share = draw.one([100, 75, 60]);
    const cricket = `{ id: cricket, share: ${share} %, dust: true, shelf_life: 10 days, losses: 10 % a week, gut_load: 24 h }`;
    return share === 100
      ? [cricket]
      : [cricket, `{ id: locust, share: ${100 - share} %, dust: true, shelf_life: 14 days, gut_load: 24 h }`];
  }
  if (food === 'greens') return ['{ id: greens, food: greens, share: 100 %, dust: true, shelf_life: 4 days }'];
  return [`{ id: ${food === 'rodents' ? 'mouse' : 'diet'}, food: ${food}, share: 100 %, shelf_life: 180 days }`];
}

function absence(draw: Draw, from: string): readonly string[] {
  if (!draw.chance(0.4)) return [];
  const [year, month] = [Number(from.slice(0, 4)), Number(from.slice(5, 7))];
  const next = month === 12 ? `${year + 1}-01` : `${year}-${two(month + 1)}`;
  return [
    'away:',
    `  - { from: ${next}-03, to: ${next}-${two(draw.whole(5, 16))}, sitter: sitter, visits: every ${draw.whole(1, 2)} day${draw.chance(0.5) ? '' : 's'} }`,
  ];
}

function two(number: number): string {
  return String(number).padStart(2, '0');
}
