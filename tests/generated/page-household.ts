/** Households for the printed pages: any of the shipped species, few or many of everything, names of every sort. */
import { PROFILE_IDS } from '../shipped-profiles.ts';
import { Choices } from './random.ts';

export interface PageHousehold {
  readonly paper: 'a4' | 'letter';
  readonly language: 'en' | 'es';
  readonly enclosures: number;
  readonly chores: number;
  readonly names: readonly string[];
  readonly contacts: boolean;
  readonly seed: number;
}

/** Returns the text of a household file. */
export function householdText(wish: PageHousehold): string {
  const choices = new Choices(wish.seed);
  const pick = <T>(items: readonly T[]): T => choices.oneOf(items);
  const dials = choices.between(1, 2);
  const step = pick([15, 30]);
  const sense = pick(['down-is-on', 'up-is-on']);
  const enclosures = Array.from({ length: wish.enclosures }, (_, index) => {
    const species = pick(PROFILE_IDS);
    const name = wish.names[index % wish.names.length] ?? 'Fern';
    const chores = Array.from(
      { length: Math.ceil(wish.chores / wish.enclosures) },
      (_each, chore) =>
        `      - { id: own-${chore}, title: ${JSON.stringify(`Own job ${chore} of ${name}`)}, every: ${pick([1, 2, 7, 14])} days, minutes: 5, who: keeper, when_away: sitter }`,
    );
    return `  - id: home-${index}
    name: ${JSON.stringify(name)}
    species: ${species}
    stage: adult
    size: { width: ${60 + 10 * index} cm, depth: 50 cm, height: ${pick([50, 90])} cm }
    open: ${pick([15, 30, 45])} %
    planting: ${pick(['none', 'light', 'medium'])}
    where: { food: left drawer }
    lamps:
      - { id: day, kind: led, for: [daylight], power: 20 W, outlet: dial-${index % dials}, warms: 2 °C }
    mist: ${pick(['by-hand', 'none'])}
${chores.length === 0 ? '' : `    chores:\n${chores.join('\n')}\n`}`;
  });
  return `format: 1
name: ${JSON.stringify(wish.names[0] ?? 'Shelf')}
language: ${wish.language}
units: ${pick(['metric', 'us'])}
paper: ${wish.paper}
${wish.contacts ? 'contacts: { keeper: "555-0100", vet: "Exotics practice, 555-0101" }' : ''}
site: { timezone: Europe/Madrid, latitude: ${pick([-35, 28, 41, 52])}, longitude: -1, room: { day: 22 °C, night: 19 °C, humidity: 45 % } }
plan: { from: 2027-01-01, days: 60, settings_at_most: 3 }
people:
  - { id: keeper, chores_on: sat, feeds_at: ["09:15", "19:45"], shops: true }
  - { id: sitter }
hardware:
${Array.from({ length: dials }, (_, index) => `  - { id: dial-${index}, kind: pin-dial, step: ${step} min, rating: 1800 W, pins: ${sense} }`).join('\n')}
  - { id: sprayer, kind: hand-sprayer, flow: 60 mL/min }
enclosures:
${enclosures.join('')}
away:
  - { from: 2027-01-11, to: 2027-01-17, sitter: sitter, visits: every 1 day }
`;
}
