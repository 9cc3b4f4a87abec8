/**
 * The gallery: for each code of the catalogue an input that provokes it and the exact text that is said.
 * `cases/CODE.yaml` is a household, `cases/CODE.profile.yaml` a profile, `cases/CODE.txt` what is said of it: the messages of that code.
 * `cases/CODE.csv` is a gauge's log of the household in `readings-cases.ts`; logs that are long are made there.
 * A code that needs more than a household (an earlier plan, a log of readings) is provoked in `other-cases.ts`.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { type Compiled, compile } from '../../src/compile.ts';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { Log } from '../../src/diagnostics/log.ts';
import { renderText } from '../../src/diagnostics/render.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readProfile } from '../../src/read/profile.ts';
import { readingsCases, saidOfLog } from './readings-cases.ts';

export const CASES = new URL('./cases/', import.meta.url);
const PROFILES = new URL('../../profiles/', import.meta.url);
const PROFILE = '.profile.yaml';
const LOG = '.csv';

export interface Said {
  readonly diagnostics: readonly Diagnostic[];
  /** All of them as text. */
  readonly text: (wanted: (diagnostic: Diagnostic) => boolean) => string;
}

/** Returns the codes that have an input, in order. */
export function codesWithCases(): readonly string[] {
  const files = readdirSync(CASES).filter((file) => file.endsWith('.yaml') && !file.endsWith(PROFILE));
  const profiles = readdirSync(CASES).filter((file) => file.endsWith(PROFILE));
  const logs = readdirSync(CASES).filter((file) => file.endsWith(LOG));
  return [
    ...files.map((file) => basename(file, '.yaml')),
    ...profiles.map((file) => basename(file, PROFILE)),
    ...logs.map((file) => basename(file, LOG)),
    ...Object.keys(readingsCases),
  ].sort();
}

const saidAlready = new Map<string, Said>();

/** Returns what is said of the input of a code. */
export function saidOf(code: string): Said {
  const profile = `${code}${PROFILE}`;
  const fresh = () => {
    if (existsSync(new URL(profile, CASES))) return saidOfProfile(profile);
    if (existsSync(new URL(`${code}${LOG}`, CASES)))
      return saidOfLog(readFileSync(new URL(`${code}${LOG}`, CASES), 'utf8'));
    return readingsCases[code]?.() ?? saidOfHousehold(`${code}.yaml`);
  };
  const said = saidAlready.get(code) ?? fresh();
  saidAlready.set(code, said);
  return said;
}

/** Returns what is said of a text, as of a household file of that name; `before` is the text that the plan in the folder was made from. */
export function saidOfText(file: string, text: string, before: string | null = null): Said {
  const texts = new Map([[file, text]]);
  const earlier = before === null ? null : compiled(file, before, null, new Map()).plan;
  return said(compiled(file, text, earlier, texts).diagnostics, texts);
}

function compiled(file: string, text: string, earlier: Plan | null, texts: Map<string, string>): Compiled {
  return compile({
    file,
    text,
    profile: (idOrPath) => profileOf(idOrPath, texts),
    profileIds: readdirSync(PROFILES).map((each) => basename(each, '.yaml')),
    earlier,
    today: { date: todayOf(text) },
    version: '1.0.0',
  });
}

function saidOfHousehold(file: string): Said {
  return saidOfText(file, readFileSync(new URL(file, CASES), 'utf8'));
}

function saidOfProfile(file: string): Said {
  const text = readFileSync(new URL(file, CASES), 'utf8');
  const log = new Log();
  readProfile(file, text, log);
  return said(log.sorted(), new Map([[file, text]]));
}

/** A line `# today: 2027-03-01` at the top of a case sets the day; else the plan's usual first. */
function todayOf(text: string): string {
  return /^# today: (\d{4}-\d{2}-\d{2})$/mu.exec(text)?.[1] ?? '2027-01-01';
}

function profileOf(idOrPath: string, texts: Map<string, string>): { file: string; text: string } | null {
  const own = idOrPath.endsWith('.yaml');
  const url = own ? new URL(idOrPath, CASES) : new URL(`${idOrPath}.yaml`, PROFILES);
  if (!existsSync(url)) return null;
  const file = own ? idOrPath : `profiles/${idOrPath}.yaml`;
  const text = readFileSync(url, 'utf8');
  texts.set(file, text);
  return { file, text };
}

function said(diagnostics: readonly Diagnostic[], texts: ReadonlyMap<string, string>): Said {
  const sources = new Map([...texts].map(([file, text]) => [file, { shown: file, text }]));
  return { diagnostics, text: (wanted) => renderText(diagnostics.filter(wanted), sources) };
}
