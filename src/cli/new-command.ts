/** `new`: asks little, says why it asks, and writes a file that compiles as it stands. */
import { basename, dirname } from 'node:path';
import { civilOf, isoDateOf } from '../basics/calendar-day.ts';
import { readCoordinates, readDegrees } from '../basics/coordinates.ts';
import { todayIn } from '../basics/today.ts';
import { Log } from '../diagnostics/log.ts';
import { renderText } from '../diagnostics/render.ts';
import { type ReadProfile, readProfile } from '../read/profile.ts';
import { loadText, profilePath } from './files.ts';
import { askMissing } from './new-asking.ts';
import { type Answers, type Question, type QuestionKey, questions } from './new-questions.ts';
import { CannotWrite } from './publish.ts';
import { shippedSpecies } from './species-named.ts';
import { type StarterAnswers, starterFile } from './starter-file.ts';
import { starterNeeds } from './starter-needs.ts';
import { todayOf } from './today-option.ts';
import { type CommonOptions, UsageError } from './usage.ts';
import { EXIT, type World } from './world.ts';

export interface NewOptions extends CommonOptions {
  readonly species?: string;
  readonly coordinates?: string;
  readonly timezone?: string;
  readonly latitude?: string;
  readonly longitude?: string;
  readonly step?: string;
  readonly units?: string;
  readonly mist?: string;
  readonly name?: string;
}

/** Writes a starter file, asking on a terminal for what it is not told. Returns the exit code. */
export async function run(args: readonly string[], options: NewOptions, world: World): Promise<number> {
  const [file = ''] = args;
  if (world.disk.existsSync(file)) throw new CannotWrite(`${file} stands there already; choose another name`);
  if (!world.disk.existsSync(dirname(file))) throw new CannotWrite(`${file}: there is no folder ${dirname(file)}`);
  const list = questions({
    species: shippedSpecies(world),
    machineZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    year: civilOf(todayIn('UTC', todayOf(options.today, world))).year,
    isMisted: (species) => species !== '' && starterNeeds(shippedProfile(species, world)).isMisted,
  });
  const given = givenAnswers(options);
  const { answers, presets } = world.isInTerminal
    ? { answers: await askMissing(list, given, file, world), presets: [] }
    : takeGiven(list, given);
  world.disk.writeFileSync(file, starterFile(starterAnswers(answers, options, file, world)), { flag: 'wx' });
  world.out(
    options.json
      ? `${JSON.stringify({ file, species: answers.get('species') })}\n`
      : writtenText(file, answers, presets),
  );
  return EXIT.done;
}

interface Answered {
  readonly answers: Answers;
  /** The questions whose preset was taken without being asked. */
  readonly presets: readonly QuestionKey[];
}

function writtenText(file: string, answers: Answers, presets: readonly QuestionKey[]): string {
  const taken = presets.map((key) => `--${key} ${quoted(answers.get(key) ?? '')}`);
  return [
    `wrote ${file}`,
    ...(taken.length === 0 ? [] : [`taken, as nothing else was said: ${taken.join(', ')}`]),
    `next: dewdial compile ${file}   gives a first plan`,
    `then: read ${file} and correct what was guessed: the size, the lamps, the room, the hour at which you feed`,
    '',
  ].join('\n');
}

function quoted(value: string): string {
  return /\s/.test(value) ? `"${value}"` : value;
}

/** What was said on the command line; latitude and longitude are one answer. */
function givenAnswers(options: NewOptions): Answers {
  const { latitude, longitude } = options;
  const degrees = [latitude, longitude].filter((each) => each !== undefined);
  if (degrees.length === 1)
    throw new UsageError(`--${latitude === undefined ? 'latitude' : 'longitude'} is needed beside the other`);
  const keys = ['species', 'coordinates', 'timezone', 'step', 'units', 'mist'] as const;
  const given = new Map<QuestionKey, string>(
    keys.flatMap((key) => (options[key] === undefined ? [] : [[key, options[key]] as const])),
  );
  if (latitude === undefined || longitude === undefined) return given;
  const [north, east] = [readDegrees(latitude, 'latitude'), readDegrees(longitude, 'longitude')];
  const faults = [
    ...(north === null ? [`--latitude ${latitude}: degrees from -90 to 90, north positive, for instance 41.65`] : []),
    ...(east === null ? [`--longitude ${longitude}: degrees from -180 to 180, east positive, for instance -0.89`] : []),
  ];
  if (faults.length > 0) throw new UsageError(faults.join('\n'));
  return given.set('coordinates', `${north}, ${east}`);
}

/** Without a terminal: presets where nothing is said, and all that is missing or wrong at once. */
function takeGiven(list: readonly Question[], given: Answers): Answered {
  const answers = new Map<QuestionKey, string>();
  const presets: QuestionKey[] = [];
  const faults: string[] = [];
  for (const question of list) {
    const { key } = question;
    const said = given.get(key);
    if (said === undefined && question.isAsked?.(answers) === false) continue;
    const answer = said ?? question.preset(answers);
    if (answer === '') {
      faults.push(`--${key} is needed where no terminal can be asked: ${example(key)}`);
      continue;
    }
    const taken = question.take(answer, answers);
    if ('fault' in taken) faults.push(`--${key} ${answer}: ${taken.fault}`);
    else answers.set(key, taken.value);
    if (said === undefined) presets.push(key);
  }
  if (faults.length > 0) throw new UsageError(faults.join('\n'));
  return { answers, presets };
}

const EXAMPLES: Readonly<Partial<Record<QuestionKey, string>>> = {
  species: 'the animal, for instance --species leopard-gecko; "dewdial species" lists them',
  coordinates: 'of your town, for instance --coordinates "41.65, -0.89"',
  timezone: 'for instance --timezone Europe/Madrid',
};

function example(key: QuestionKey): string {
  return EXAMPLES[key] ?? '';
}

function starterAnswers(answers: Answers, options: NewOptions, file: string, world: World): StarterAnswers {
  const species = answers.get('species') ?? '';
  const timezone = answers.get('timezone') ?? 'UTC';
  const { latitude, longitude } = readCoordinates(answers.get('coordinates') ?? '') ?? { latitude: 0, longitude: 0 };
  return {
    name: options.name ?? basename(file).replace(/\.ya?ml$/i, ''),
    species,
    timezone,
    latitude,
    longitude,
    step: answers.get('step') ?? '15 min',
    units: answers.get('units') === 'us' ? 'us' : 'metric',
    mist: answers.get('mist') === 'pump' ? 'pump' : 'by-hand',
    from: isoDateOf(todayIn(timezone, todayOf(options.today, world))),
    needs: starterNeeds(shippedProfile(species, world)),
  };
}

function shippedProfile(species: string, world: World): ReadProfile {
  const path = profilePath(species, '.');
  const loaded = loadText(path, world.disk);
  const log = new Log();
  const profile = loaded.ok ? readProfile(path, loaded.text, log) : null;
  if (profile) return profile;
  throw new UsageError(
    loaded.ok
      ? renderText(log.sorted(), new Map([[path, { shown: path, text: loaded.text }]]), { colour: false, columns: 80 })
      : `${path}: ${loaded.reason}`,
  );
}
