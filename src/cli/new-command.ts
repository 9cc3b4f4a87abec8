import { existsSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { isoDateOf } from '../basics/calendar-day.ts';
import { nearestSpelling } from '../basics/nearest-spelling.ts';
import { todayIn } from '../basics/today.ts';
import { isKnownZone } from '../basics/zone.ts';
import { Log } from '../diagnostics/log.ts';
import { renderText } from '../diagnostics/render.ts';
import { type ReadProfile, readProfile } from '../read/profile.ts';
import { loadText, profilePath, shippedProfiles } from './files.ts';
import { todayOf } from './household-run.ts';
import { type CommonOptions, UsageError } from './program.ts';
import { CannotWrite } from './publish.ts';
import { type StarterAnswers, starterFile } from './starter-file.ts';
import { starterNeeds } from './starter-needs.ts';
import { EXIT, type World } from './world.ts';

export interface NewOptions extends CommonOptions {
  readonly species?: string;
  readonly timezone?: string;
  readonly latitude?: string;
  readonly longitude?: string;
  readonly step?: string;
  readonly units?: string;
  readonly name?: string;
}

interface Question {
  readonly key: keyof NewOptions & string;
  readonly ask: string;
  readonly why: string;
  readonly preset: string;
  /** Returns what is wrong with an answer, or null. */
  readonly fault: (answer: string) => string | null;
}

export async function run(args: readonly string[], options: NewOptions, world: World): Promise<number> {
  const [file = ''] = args;
  if (existsSync(file)) throw new CannotWrite(`${file} stands there already; choose another name`);
  const species = shippedProfiles(world.disk);
  const answers = await answersTo(questions(species), options, world);
  const text = starterFile(starterAnswers(answers, options, file, world));
  if (!existsSync(dirname(file))) throw new CannotWrite(`${file}: there is no folder ${dirname(file)}`);
  world.disk.writeFileSync(file, text, { flag: 'wx' });
  world.out(
    options.json
      ? `${JSON.stringify({ file, species: answers.get('species') })}\n`
      : `wrote ${file}\nnext: read it, correct the sizes, the lamps and the room, then  dewdial compile ${file}\n`,
  );
  return EXIT.done;
}

function questions(species: readonly string[]): readonly Question[] {
  const number = (low: number, high: number) => (answer: string) =>
    answer.trim() !== '' && Number(answer) >= low && Number(answer) <= high
      ? null
      : `a number from ${low} to ${high}, for instance ${low === -90 ? '41.65' : '-0.89'}`;
  return [
    {
      key: 'species',
      ask: `Species (${species.join(', ')})`,
      why: 'its profile holds what it needs',
      preset: '',
      fault: (a) => (species.includes(a) ? null : unknownSpecies(a, species)),
    },
    {
      key: 'timezone',
      ask: 'Time zone',
      why: 'clock changes move your feeding hours, not the lights',
      preset: Intl.DateTimeFormat().resolvedOptions().timeZone,
      fault: (a) => (isKnownZone(a) ? null : 'a zone of the time-zone database, for instance Europe/Madrid'),
    },
    {
      key: 'latitude',
      ask: 'Latitude in degrees, north positive',
      why: 'the length of the day follows the year at your place',
      preset: '',
      fault: number(-90, 90),
    },
    {
      key: 'longitude',
      ask: 'Longitude in degrees, east positive',
      why: 'for the sun on your own date',
      preset: '',
      fault: number(-180, 180),
    },
    {
      key: 'step',
      ask: 'Length of one pin on the timer',
      why: 'settings are solved in whole pins',
      preset: '15 min',
      fault: (a) =>
        /^\d+ min$/.test(a) && 1440 % Number.parseInt(a, 10) === 0
          ? null
          : 'minutes that divide a day, for instance 15 min or 30 min',
    },
    {
      key: 'units',
      ask: 'Units, metric or us',
      why: 'how measures are written in the file and shown in results',
      preset: 'metric',
      fault: (a) => (a === 'metric' || a === 'us' ? null : 'metric or us'),
    },
  ];
}

function unknownSpecies(answer: string, species: readonly string[]): string {
  const nearest = nearestSpelling(answer, species);
  return nearest === null ? `one of ${species.join(', ')}` : `did you mean ${nearest}?`;
}

async function answersTo(
  list: readonly Question[],
  options: NewOptions,
  world: World,
): Promise<ReadonlyMap<string, string>> {
  const given = new Map(
    list.flatMap(({ key }) => (options[key] === undefined ? [] : [[key, String(options[key])] as const])),
  );
  const faults = list.flatMap((q) => {
    const answer = given.get(q.key) ?? (q.preset === '' ? undefined : q.preset);
    if (answer === undefined)
      return world.isInTerminal ? [] : [`--${q.key} is needed where no terminal can be asked: ${q.ask}`];
    const fault = q.fault(answer);
    return fault === null || (world.isInTerminal && !given.has(q.key)) ? [] : [`--${q.key} ${answer}: ${fault}`];
  });
  if (faults.length > 0) throw new UsageError(faults.join('\n'));
  return world.isInTerminal
    ? askMissing(list, given, world)
    : new Map(list.map((q) => [q.key, given.get(q.key) ?? q.preset]));
}

/** Asks until every answer will do; an end of input (Ctrl-D, Ctrl-C) writes nothing. */
async function askMissing(
  list: readonly Question[],
  given: ReadonlyMap<string, string>,
  world: World,
): Promise<ReadonlyMap<string, string>> {
  const answers = new Map(given);
  const terminal = await world.terminal();
  try {
    for (const q of list) {
      while (!answers.has(q.key)) {
        const text = `${q.ask}\n  (${q.why})${q.preset ? ` [${q.preset}]` : ''}: `;
        const answer = (await terminal.question(text)).trim() || q.preset;
        const fault = q.fault(answer);
        if (fault === null) answers.set(q.key, answer);
        else world.say(`  ${fault}\n`);
      }
    }
  } catch (error) {
    if (!(error instanceof Error) || error.name !== 'AbortError') throw error;
    world.say('\n');
    throw new UsageError('ended early; nothing is written');
  } finally {
    terminal.close();
  }
  return answers;
}

function starterAnswers(
  answers: ReadonlyMap<string, string>,
  options: NewOptions,
  file: string,
  world: World,
): StarterAnswers {
  const species = answers.get('species') ?? '';
  const timezone = answers.get('timezone') ?? 'UTC';
  return {
    name: options.name ?? basename(file).replace(/\.ya?ml$/i, ''),
    species,
    timezone,
    latitude: Number(answers.get('latitude')),
    longitude: Number(answers.get('longitude')),
    step: answers.get('step') ?? '15 min',
    units: answers.get('units') === 'us' ? 'us' : 'metric',
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
