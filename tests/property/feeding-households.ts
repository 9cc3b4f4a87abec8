/** Household texts for the feeding properties: every key that feeding reads, drawn from a seed. */
import { minimalHousehold } from '../shipped-profiles.ts';

export interface DrawnHousehold {
  readonly text: string;
  /** The same household with a change that a keeper makes in mid-plan. */
  readonly changed: string;
}

class Draw {
  #state: number;

  constructor(seed: number) {
    this.#state = (seed % 2_147_483_646) + 1;
    for (let turn = 0; turn < 8; turn++) this.number(0, 1);
  }

  number(from: number, to: number): number {
    this.#state = (this.#state * 48_271) % 2_147_483_647;
    return from + (this.#state % (to - from + 1));
  }

  one<T>(choices: readonly T[]): T {
    const choice = choices[this.number(0, choices.length - 1)];
    if (choice === undefined) throw new Error('nothing to choose from');
    return choice;
  }

  often(outOfTen: number): boolean {
    return this.number(1, 10) <= outOfTen;
  }
}

const SPECIES = [
  'panther-chameleon',
  'veiled-chameleon',
  'jacksons-chameleon',
  'leopard-gecko',
  'bearded-dragon',
  'giant-day-gecko',
  'red-eyed-tree-frog',
  'green-iguana',
  'corn-snake',
] as const;
const SHARES: readonly (readonly number[])[] = [[100], [75, 25], [50, 50], [60, 40], [40, 35, 25], [70, 20, 10]];
const INSECTS = ['cricket', 'mealworm', 'roach'] as const;

/** Returns the household of a seed. */
export function drawnHousehold(seed: number): DrawnHousehold {
  const draw = new Draw(seed);
  const species = draw.one(SPECIES);
  const days = draw.one([60, 120, 365] as const);
  const feeders = insectLines(draw);
  const changedFeeders = draw.often(5) ? feeders : insectLines(draw);
  const own = draw.often(5) ? [ownStage(draw)] : [];
  const stage = draw.often(4) ? '[{ from: 2026-06-01, stage: juvenile }, { from: 2027-02-15, stage: adult }]' : 'adult';
  const rest = [
    ...(draw.often(7) ? [powders(draw)] : []),
    ...(draw.often(6)
      ? [
          `last: { feed: 2026-12-${draw.number(27, 31)}, calcium-d3: 2026-12-${draw.number(20, 31)}, multivitamin: 2026-12-${draw.number(15, 31)} }`,
        ]
      : []),
    ...(draw.often(4) ? [stateLine(draw)] : []),
    ...(draw.often(2) ? ['animals: 3'] : []),
    ...own,
  ];
  const top = [
    draw.often(8)
      ? 'people: [{ id: keeper, feeds_at: ["10:15", "17:00"] }, { id: sitter }]'
      : 'people: [{ id: keeper }, { id: sitter }]',
    ...(draw.often(6) ? ['shopping: { days: [tue, fri], reserve: 14 days }'] : []),
  ];
  const away = draw.often(6) ? [awayLine(draw)] : [];
  const short = draw.often(6)
    ? [`shortage: [{ from: 2027-02-0${draw.number(1, 5)}, to: 2027-02-1${draw.number(0, 9)}, feeder: cricket }]`]
    : [];
  const write = (lines: readonly string[], short: readonly string[]): string =>
    minimalHousehold({
      species,
      stage,
      enclosure: [...rest, 'feeders:', ...lines.map((line) => `  ${line}`)],
      top: [...top, ...away, ...short],
    }).replace('plan: { from: 2027-01-01 }', `plan: { from: 2027-01-01, days: ${days} }`);
  return {
    text: write(feeders, short),
    changed: write(changedFeeders, draw.often(5) ? short : []),
  };
}

function insectLines(draw: Draw): readonly string[] {
  const shares = draw.one(SHARES);
  const insects = shares.map((share, i) => {
    const dust = i === 0 || draw.often(7) ? 'true' : 'false';
    const standIn = i === 1 ? ', stand_in: true' : '';
    const count = draw.often(5) ? `, count: ${draw.number(2, 6)}` : '';
    const load = draw.often(5) ? ', gut_load: 24 h' : '';
    return `- { id: ${INSECTS[i]}, share: ${share} %, dust: ${dust}, shelf_life: ${draw.number(7, 60)} days, losses: 10 % a week${count}${load}${standIn} }`;
  });
  return [
    ...insects,
    '- { id: weeds, food: greens, share: 100 %, dust: true, shelf_life: 5 days }',
    '- { id: diet, food: prepared, share: 100 %, shelf_life: 180 days }',
    '- { id: mouse, food: rodents, share: 100 %, shelf_life: 180 days, in_stock: 4 }',
  ];
}

/** A stage of the keeper's own: rhythm, dustings and days apart that need not fit one another. */
function ownStage(draw: Draw): string {
  const rhythm = draw.one([
    'per_week: 3',
    'per_week: 5',
    'per_week: 10',
    'every: 2 days',
    'every: 3 days',
    'days: [mon, thu, sat]',
  ] as const);
  const dusting = draw.one([
    '{ id: calcium-d3, times: 2, weeks: 4 }, { id: multivitamin, times: 2, weeks: 4 }, { id: calcium, at: the rest }',
    '{ id: calcium-d3, every: 3 feeds }, { id: multivitamin, every: 4 feeds }',
    '{ id: calcium-d3, every: 1 feeds }',
    '{ id: multivitamin, times: 1, weeks: 2 }, { id: vitamin-a, times: 1, weeks: 4 }, { id: calcium, every: 2 feeds }',
  ] as const);
  const days = draw.number(2, 9);
  return `targets: { stages: { adult: { feeds: [{ food: insects, ${rhythm}, portion: { pieces: 5 } }], dusting: [${dusting}], apart: [{ between: [d3, d3], days: ${days} }, { between: [vitamin-a, vitamin-a], days: ${days + 2} }], why: "drawn" } } }`;
}

function powders(draw: Draw): string {
  const multivitamin = draw.one(['d3, vitamin-a', 'vitamin-a', 'd3'] as const);
  return `supplements: [{ id: calcium, contains: [] }, { id: calcium-d3, contains: [d3] }, { id: multivitamin, contains: [${multivitamin}] }]`;
}

function stateLine(draw: Draw): string {
  const is = draw.one(['quarantine', 'ill', 'shedding', 'gravid', 'new'] as const);
  const vet = draw.often(3) ? ', vet: "as ordered"' : '';
  return `states: [{ is: ${is}, from: 2027-01-${draw.number(10, 28)}, to: 2027-03-0${draw.number(1, 9)}${vet} }]`;
}

function awayLine(draw: Draw): string {
  const visits = draw.one(['every 1 day', 'every 2 days'] as const);
  return `away: [{ from: 2027-02-0${draw.number(1, 9)}, to: 2027-02-${draw.number(12, 24)}, sitter: sitter, visits: ${visits} }]`;
}
