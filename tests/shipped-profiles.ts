/** The profiles in `profiles/`, read once, and a household text resolved against them. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Diagnostic } from '../src/diagnostics/diagnostic.ts';
import { Log } from '../src/diagnostics/log.ts';
import { readHousehold } from '../src/read/household.ts';
import { type ReadProfile, readProfile } from '../src/read/profile.ts';
import type { Care, CareEnclosure } from '../src/resolve/care.ts';
import { profilesNeeded, reportProfileUnknown, resolve } from '../src/resolve/resolve.ts';

const FOLDER = join(import.meta.dirname, '../profiles');

export const PROFILE_IDS: readonly string[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.slice(0, -'.yaml'.length))
  .sort();

export function profileText(id: string): string {
  return readFileSync(join(FOLDER, `${id}.yaml`), 'utf8');
}

const read = new Map<string, ReadProfile>();

/** Reads one shipped profile; throws with everything that is wrong in it. */
export function shippedProfile(id: string): ReadProfile {
  const known = read.get(id);
  if (known) return known;
  const log = new Log();
  const profile = readProfile(`profiles/${id}.yaml`, profileText(id), log);
  const said = log.sorted();
  if (!profile || said.length > 0)
    throw new Error(said.map((d) => `${id}:${d.place?.line} ${d.code} ${d.because}`).join('\n'));
  read.set(id, profile);
  return profile;
}

export interface Resolved {
  readonly care: Care | null;
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads and resolves a household text; `own` are profile texts by the path under which the file names them. */
export function resolveText(text: string, own: Readonly<Record<string, string>> = {}): Resolved {
  const log = new Log();
  const household = readHousehold('home.yaml', text, log);
  if (!household) return { care: null, diagnostics: log.sorted() };
  const profiles = new Map<string, ReadProfile>();
  for (const need of profilesNeeded(household)) {
    const ownText = own[need.idOrPath];
    const profile =
      ownText === undefined
        ? PROFILE_IDS.includes(need.idOrPath)
          ? shippedProfile(need.idOrPath)
          : null
        : readProfile(need.idOrPath, ownText, log);
    if (profile) profiles.set(need.idOrPath, profile);
    else if (ownText === undefined) reportProfileUnknown(need, PROFILE_IDS, log);
  }
  return { care: resolve(household, profiles, log), diagnostics: log.sorted() };
}

/** Returns the only enclosure of a household that must resolve without an error. */
export function resolvedEnclosure(text: string, own: Readonly<Record<string, string>> = {}): CareEnclosure {
  const { care, diagnostics } = resolveText(text, own);
  const errors = diagnostics.filter(({ weight }) => weight === 'error');
  const enclosure = care?.enclosures[0];
  if (!enclosure || errors.length > 0)
    throw new Error(errors.map((d) => `${d.place?.line} ${d.code} ${d.because}`).join('\n'));
  return enclosure;
}

export interface MinimalHousehold {
  readonly species?: string;
  readonly stage?: string;
  /** Further lines of `hardware`, each a list item without its indent. */
  readonly hardware?: readonly string[];
  /** Further lines of the enclosure, without their indent of four. */
  readonly enclosure?: readonly string[];
  /** Further lines at the top level. */
  readonly top?: readonly string[];
}

/** Returns the shortest household file of one animal: a dial, a lamp, an enclosure of 60 x 45 x 90 cm. */
export function minimalHousehold({
  species = 'panther-chameleon',
  stage = 'adult',
  hardware = [],
  enclosure = [],
  top = [],
}: MinimalHousehold = {}): string {
  return [
    'format: 1',
    'name: One enclosure',
    'site: { timezone: Europe/Madrid, latitude: 41.65, longitude: -0.89, room: { day: 21 °C, night: 18 °C, humidity: 45 % } }',
    'plan: { from: 2027-01-01 }',
    ...top,
    'hardware:',
    '  - { id: dial, kind: pin-dial, step: 15 min, outlets: 4, rating: 1800 W }',
    ...hardware.map((line) => `  - ${line}`),
    'enclosures:',
    '  - id: home',
    `    species: ${species}`,
    `    stage: ${stage}`,
    '    size: { width: 60 cm, depth: 45 cm, height: 90 cm }',
    '    open: 30 %',
    ...(enclosure.some((line) => line.startsWith('lamps:'))
      ? []
      : ['    lamps: [{ id: day, kind: led, for: [daylight], power: 20 W, outlet: dial }]']),
    ...(enclosure.some((line) => line.startsWith('mist:')) ? [] : ['    mist: by-hand']),
    ...enclosure.map((line) => `    ${line}`),
    '',
  ].join('\n');
}
