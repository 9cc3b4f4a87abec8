/** The commented household file that `dewdial new` writes: one animal, one dial, the lamps that it needs, everything else as comments to uncomment. */
import { starterEnclosure } from './starter-enclosures.ts';
import type { StarterNeeds } from './starter-needs.ts';

export interface StarterAnswers {
  readonly name: string;
  readonly species: string;
  readonly timezone: string;
  readonly latitude: number;
  readonly longitude: number;
  /** For instance `15 min`. */
  readonly step: string;
  readonly units: 'metric' | 'us';
  /** Who mists where the species is misted at all. */
  readonly mist: 'by-hand' | 'pump';
  /** First day of the plan, YYYY-MM-DD. */
  readonly from: string;
  readonly needs: StarterNeeds;
}

/** Measures of a starter file, in each system of units; a keeper corrects them. */
const MEASURES = {
  metric: {
    paper: 'a4',
    room: 'day: 21 °C, night: 18 °C, humidity: 45 %',
    nightC: 18,
    rating: '1800 W',
    flow: '60 mL/min',
    pump: '90 mL/min',
    tank: 'holds: 10 L, reserve: 1 L',
  },
  us: {
    paper: 'letter',
    room: 'day: 70 °F, night: 64 °F, humidity: 45 %',
    nightC: 17.8,
    rating: '1800 W',
    flow: '2 fl oz/min',
    pump: '3 fl oz/min',
    tank: 'holds: 2.5 gal, reserve: 1 qt',
  },
} as const;

/** Hours of a person and of the lights that fit each other the year round, with or without clock changes. */
const LIGHTS_OFF_FOR_DUSK = '19:30';
const FEEDS_AT = { day: '10:30', dusk: '20:00' } as const;

/** Returns the text of the file. */
export function starterFile(a: StarterAnswers): string {
  return [head(a), site(a), plan(a), people(a), hardware(a), enclosure(a), extras()].join('\n');
}

/** A text in YAML's double quotes. */
function q(text: string): string {
  return JSON.stringify(text);
}

/** Lines of code with their comments in one column. */
function commented(lines: readonly (readonly [string, string?])[]): string {
  return lines
    .map(([code, comment]) => (comment === undefined ? code : `${code.padEnd(35)} # ${comment}`))
    .map((line) => `${line}\n`)
    .join('');
}

function head(a: StarterAnswers): string {
  return commented([
    ['# A household file for dewdial: what the animal needs and what hardware you own. Dewdial works out the times.'],
    ['# Every measure carries its unit (15 min, 24 in, 78 °F). Check it with: dewdial check FILE'],
    ['format: 1'],
    [`name: ${q(a.name)}`],
    [`units: ${a.units}`, 'how results are shown: metric or us'],
    [`paper: ${MEASURES[a.units].paper}`, 'a4 or letter'],
    [
      '# contacts: { keeper: "your number", vet: "your exotics vet and number" }      # printed on the sheet for a sitter',
    ],
  ]);
}

function site(a: StarterAnswers): string {
  return commented([
    ['site:'],
    [`  timezone: ${a.timezone}`],
    [`  latitude: ${a.latitude}`, 'degrees, north positive'],
    [`  longitude: ${a.longitude}`, 'degrees, east positive'],
    [`  room: { ${MEASURES[a.units].room} }`, 'where the enclosure stands: measure it, then correct these'],
  ]);
}

function plan(a: StarterAnswers): string {
  return commented([
    ['plan:'],
    [`  from: ${a.from}`],
    ['  days: 365'],
    ['  change_on: [sat, sun]', 'the days on which you are willing to move pins'],
    ['  settings_at_most: 8', 'how many sets of pins in the year at most, the first included'],
  ]);
}

function people({ needs }: StarterAnswers): string {
  const hour = needs.isFedAtDusk ? FEEDS_AT.dusk : FEEDS_AT.day;
  return commented([
    ['people:'],
    [`  - { id: keeper, feeds_at: "${hour}", chores_on: sat, shops: true }`, 'hours of people are on the wall clock'],
    ['shopping: { days: [fri], reserve: 14 days }', 'when food is bought, and how long a stand-in must last'],
  ]);
}

function hardware({ needs, units, step, mist }: StarterAnswers): string {
  const measures = MEASURES[units];
  const isPumped = needs.isMisted && mist === 'pump';
  const mark = isPumped ? '' : '# ';
  return commented([
    ['hardware:'],
    ['  - id: dial'],
    ['    kind: pin-dial', 'a mechanical timer whose day is set with push pins'],
    [`    step: ${step}`, 'the length of one pin, printed on the timer'],
    ['    outlets: 4', 'how many sockets it switches together'],
    [`    rating: ${measures.rating}`, 'printed on its back'],
    ['    pins: down-is-on', 'or up-is-on: try one pin and look'],
    ['    clock: standard', 'it is left alone when the clocks change; wall: you turn it'],
    ...(needs.isMisted && !isPumped
      ? [[`  - { id: sprayer, kind: hand-sprayer, flow: ${measures.flow} }`] as const]
      : []),
    [
      isPumped
        ? '  # The pump hangs on a timer of its own that counts seconds, never on the dial: correct both from their labels.'
        : '  # A misting pump behind a timer that counts seconds: uncomment the two, and set "mist: pump" below.',
    ],
    [
      `  ${mark}- { id: mist-timer, kind: programmable-timer, entries: 8, resolution: 1 s, shortest: 5 s, rating: ${measures.rating}, clock: standard }`,
    ],
    [
      `  ${mark}- { id: pump, kind: mist-pump, outlet: mist-timer, power: 30 W, flow: ${measures.pump}, nozzles: 1, longest_run: 5 min, rest: 10 min, tank: { ${measures.tank} } }`,
    ],
  ]);
}

function enclosure(a: StarterAnswers): string {
  const { needs, species } = a;
  const kept = starterEnclosure(species);
  return commented([
    ['enclosures:'],
    ['  - id: home'],
    [`    name: ${q(a.name)}`],
    [`    species: ${species}`, `its profile says what it needs: dewdial species ${species}`],
    [`    stage: ${needs.stage}`],
    ['    animals: 1'],
    [`    size: { ${sizeWords(kept.sizeCm, a.units)} }`, 'inside'],
    [`    open: ${kept.openPercent} %`, 'bare mesh as a share of the walls and the top'],
    [`    planting: ${kept.planting}`, 'none, light, medium or dense'],
    [`    floor: ${kept.floor}`, 'dry or damp-below'],
    ...lamps(a),
    [`    mist: ${needs.isMisted ? a.mist : 'none'}`, 'by-hand, none, or the id of a pump'],
    ['    nozzles: { hits_lamp: false }', 'whether spray can reach a hot lamp'],
    ...targets(needs),
    ...powders(needs),
    ['    feeders:', 'what you feed, each with its share of the feeds'],
    ...needs.foods.map((food) => [feeder(food, needs)] as const),
    ['    # chores:'],
    ['    #   - { id: wipe-glass, title: Wipe the glass, every: 1 week, minutes: 5 }'],
  ]);
}

const CM_PER_INCH = 2.54;

function sizeWords(sizeCm: readonly [number, number, number], units: 'metric' | 'us'): string {
  const words = (cm: number): string => (units === 'us' ? `${Math.round(cm / CM_PER_INCH)} in` : `${cm} cm`);
  return `width: ${words(sizeCm[0])}, depth: ${words(sizeCm[1])}, height: ${words(sizeCm[2])}`;
}

const INSET_WORDS = { basking: 'a basking place', uvb: 'UV' } as const;

type Lines = readonly (readonly [string, string?])[];

function lamps({ needs, units }: StarterAnswers): Lines {
  const isColdAtNight = needs.nightLowC !== null && needs.nightLowC > MEASURES[units].nightC;
  return [
    ['    lamps:'],
    ['      - { id: day, kind: led, for: [daylight], power: 20 W, outlet: dial }'],
    ...(isColdAtNight
      ? ([
          [
            '      # The room above is too cold for it by night: heat on a thermostat. outlet: always is a live socket, no timer.',
          ],
          [
            '      - { id: heat, kind: ceramic, for: [heat], power: 60 W, outlet: always, thermostat: pulse, guard: true }',
          ],
        ] as const)
      : []),
    ...(needs.insets.length > 0
      ? ([
          [
            `      # Its profile asks for ${needs.insets.map((use) => INSET_WORDS[use]).join(' and ')}. Take out what you do not have;`,
          ],
          ['      # on a dial of its own each would keep its own hours.'],
        ] as const)
      : []),
    ...(needs.insets.includes('basking')
      ? ([
          [
            '      - { id: basking, kind: halogen, for: [basking], power: 50 W, outlet: dial, thermostat: dimming, guard: true }',
          ],
        ] as const)
      : []),
    ...(needs.insets.includes('uvb')
      ? ([
          ['      - { id: uv, kind: fluorescent, for: [uvb], power: 24 W, outlet: dial, replace_after: 12 months }'],
        ] as const)
      : []),
  ];
}

function targets({ isFedAtDusk }: StarterNeeds): Lines {
  if (!isFedAtDusk)
    return [
      ['    # targets:', 'anything of the profile can be set here, with why'],
      ['    #   humidity: { day: [45 %, 60 %], why: "the vet\'s advice" }'],
    ];
  return [
    ['    targets:', 'anything of the profile can be set here, with why'],
    [`      day: { lights_off: "${LIGHTS_OFF_FOR_DUSK}", why: "fed at dusk, at one hour all year" }`],
  ];
}

function powders({ powders }: StarterNeeds): Lines {
  if (powders.length === 0) return [];
  return [
    ['    supplements:', "correct what each holds from its label; doses are your veterinarian's to say"],
    ...powders.map(({ id, contains }) => [`      - { id: ${id}, contains: [${contains.join(', ')}] }`] as const),
  ];
}

/** How long each keeps: common practice, no source; a keeper corrects it. */
function feeder(food: StarterNeeds['foods'][number], { powders, eatsFlies }: StarterNeeds): string {
  const dust = powders.length > 0 ? ', dust: true' : '';
  const lines = {
    insects: eatsFlies
      ? `{ id: fruit-fly, food: insects, share: 100 %${dust}, shelf_life: 14 days }`
      : `{ id: cricket, food: insects, share: 100 %${dust}, shelf_life: 10 days, gut_load: 24 h }`,
    greens: `{ id: greens, food: greens, share: 100 %${dust}, shelf_life: 4 days }`,
    prepared: '{ id: diet, food: prepared, share: 100 %, shelf_life: 180 days }',
    rodents: '{ id: rodent, food: rodents, share: 100 %, shelf_life: 180 days }',
  } as const;
  return `      - ${lines[food]}`;
}

function extras(): string {
  return commented([
    ['# away:', 'when a sitter comes instead of you; add them to people'],
    ['#   - { from: 2027-03-05, to: 2027-03-14, sitter: sitter, visits: every 1 day }'],
    [''],
    ['# Another animal: copy the block under enclosures from its "- id:" on, and give it an id and lamps of its own.'],
  ]);
}
