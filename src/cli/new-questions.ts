/** What `new` asks: each question with why it is asked, what is taken where nothing is typed, and what is wrong with an answer. */
import { readCoordinates } from '../basics/coordinates.ts';
import { misplacement } from '../basics/place-in-zone.ts';
import { isRegionZone, zoneNamed } from '../basics/zone.ts';
import { type SpeciesName, speciesNamed } from './species-named.ts';

export type QuestionKey = 'species' | 'coordinates' | 'timezone' | 'step' | 'units' | 'mist';
export type Answers = ReadonlyMap<QuestionKey, string>;
/** An answer, or what is wrong with it; `isBack` where the question before may have been answered wrongly. */
export type Taken = { readonly value: string } | { readonly fault: string; readonly isBack?: true };

export interface Question {
  readonly key: QuestionKey;
  /** Lines before the place where one types: what it is for. */
  readonly why: string;
  readonly ask: string;
  /** What is taken where nothing is said; empty where something must be. */
  readonly preset: (answers: Answers) => string;
  readonly take: (answer: string, answers: Answers) => Taken;
  /** Whether it is asked at all, by what was answered before. */
  readonly isAsked?: (answers: Answers) => boolean;
}

/** What the questions are made from. */
export interface Asked {
  readonly species: readonly SpeciesName[];
  /** The zone of the machine. */
  readonly machineZone: string;
  /** The year of the plan, for the clocks of a zone. */
  readonly year: number;
  readonly isMisted: (species: string) => boolean;
}

/** Returns the questions in their order. */
export function questions({ species, machineZone, year, isMisted }: Asked): readonly Question[] {
  return [
    {
      key: 'species',
      why: `Which animal? Its profile says what it needs.\n${listed(species)}`,
      ask: 'Name or number',
      preset: () => '',
      take: (answer) => {
        const named = speciesNamed(answer, species);
        return 'id' in named ? { value: named.id } : named;
      },
    },
    {
      key: 'coordinates',
      why: 'Where is it? The length of its day follows the year at your place, north or south of the equator.\nA map or an encyclopedia has the coordinates of your town; the town will do.\n',
      ask: 'Latitude and longitude, for instance 41.65, -0.89 or 37.8 S, 145 E',
      preset: () => '',
      take: (answer) => {
        const found = readCoordinates(answer);
        return found
          ? { value: `${found.latitude}, ${found.longitude}` }
          : { fault: 'latitude first, then longitude, north and east positive: 41.65, -0.89 or 41.65 N, 0.89 W' };
      },
    },
    {
      key: 'timezone',
      why: 'Which clock do you live by? It moves the hours at which you feed, not the lights.\n',
      ask: 'Time zone',
      preset: (answers) => (isOwnZone(machineZone) && !zoneFault(machineZone, year, answers) ? machineZone : ''),
      take: (answer, answers) => {
        const zone = isRegionZone(answer) ? answer : zoneNamed(answer);
        if (zone === null) return { fault: 'a region and a city of the time-zone table, for instance Europe/Madrid' };
        if (zone !== answer) return { fault: `did you mean ${zone}?` };
        const fault = zoneFault(zone, year, answers);
        return fault === null ? { value: zone } : { fault, isBack: true };
      },
    },
    {
      key: 'step',
      why: 'How long is one pin of the timer? It is printed on it; 15 min where an hour has four pins.\n',
      ask: 'Length of one pin',
      preset: () => '15 min',
      take: (answer) => {
        const minutes = Number(/^(\d+)\s*(?:min|minutes?|m)?$/i.exec(answer)?.[1] ?? 0);
        return minutes > 0 && 1440 % minutes === 0
          ? { value: `${minutes} min` }
          : { fault: 'minutes that divide a day, for instance 15 min or 30 min' };
      },
    },
    {
      key: 'units',
      why: '',
      ask: 'Units, metric or us',
      preset: (answers) => (isOfUnitedStates(answers.get('timezone') ?? '') ? 'us' : 'metric'),
      take: (answer) => {
        if (/^(metric|si|cm|m)$/i.test(answer)) return { value: 'metric' };
        return /^(us|usa|imperial|in|inch(es)?)$/i.test(answer) ? { value: 'us' } : { fault: 'metric or us' };
      },
    },
    {
      key: 'mist',
      why: 'Who mists it? A pump needs a timer of its own that counts seconds: a pin of 15 min would flood it.\n',
      ask: 'by-hand or pump',
      preset: () => 'by-hand',
      take: (answer) => {
        if (/^(by[- ])?hand$/i.test(answer)) return { value: 'by-hand' };
        return /^pump$/i.test(answer) ? { value: 'pump' } : { fault: 'by-hand or pump' };
      },
      isAsked: (answers) => isMisted(answers.get('species') ?? ''),
    },
  ];
}

function listed(species: readonly SpeciesName[]): string {
  const width = Math.max(...species.map(({ id }) => id.length));
  return species
    .map(
      ({ id, name, scientific }, index) =>
        `  ${String(index + 1).padStart(2)}  ${id.padEnd(width)}  ${name} (${scientific})\n`,
    )
    .join('');
}

/** UTC is the zone of machines without an owner. */
function isOwnZone(zone: string): boolean {
  return zone.includes('/') && !zone.startsWith('Etc/') && isRegionZone(zone);
}

/** Returns what speaks against living at the coordinates by a zone's clock, null where nothing does or they are not known yet. */
function zoneFault(zone: string, year: number, answers: Answers): string | null {
  const place = readCoordinates(answers.get('coordinates') ?? '');
  const found = place && misplacement(zone, year, place);
  if (!place || !found) return null;
  if (found.kind === 'east-west')
    return `at longitude ${place.longitude} the sun is ${found.hours} h from the clocks of ${zone}: is the zone right, and the longitude positive to the east?`;
  return `${zone} has its summer time in ${found.summer}, which is winter at latitude ${place.latitude}: is the zone right, and the latitude positive to the north?`;
}

const UNITED_STATES =
  /^(America\/(New_York|Chicago|Denver|Los_Angeles|Phoenix|Detroit|Boise|Anchorage|Juneau|Indiana\/.+|Kentucky\/.+|North_Dakota\/.+)|Pacific\/Honolulu)$/;

function isOfUnitedStates(zone: string): boolean {
  return UNITED_STATES.test(zone);
}
