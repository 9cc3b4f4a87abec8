import { basename, resolve as resolvePath } from 'node:path';
import { Log } from '../diagnostics/log.ts';
import { renderText } from '../diagnostics/render.ts';
import { speciesListText, speciesText } from '../emit/text/species.ts';
import type { SpeciesSheet } from '../plan/species-sheet.ts';
import { readProfile } from '../read/profile.ts';
import { speciesSheet } from '../resolve/species-sheet.ts';
import { isProfilePath, loadText, profilePath, shippedProfiles } from './files.ts';
import { usesColour } from './run-messages.ts';
import { shippedSpecies, speciesNamed } from './species-named.ts';
import { type CommonOptions, UsageError } from './usage.ts';
import { EXIT, type World } from './world.ts';

/** Prints what the profiles say. Returns the exit code. */
export async function run(args: readonly string[], options: CommonOptions, world: World): Promise<number> {
  const [name] = args;
  const sheets =
    name === undefined
      ? shippedProfiles(world.disk).map((id) => sheetOf(id, world))
      : [sheetOf(known(name, world), world)];
  const found = sheets.flatMap((sheet) => (sheet === null ? [] : [sheet]));
  if (options.json) world.out(`${JSON.stringify(name === undefined ? found : found[0], null, 2)}\n`);
  else world.out(name === undefined ? speciesListText(found) : found.map(speciesText).join(''));
  return found.length === sheets.length ? EXIT.done : EXIT.unusable;
}

function known(name: string, world: World): string {
  if (isProfilePath(name) || shippedProfiles(world.disk).includes(name)) return name;
  const named = speciesNamed(name, shippedSpecies(world));
  if ('id' in named) return named.id;
  throw new UsageError(`species "${name}": ${named.fault}`);
}

function sheetOf(idOrPath: string, world: World): SpeciesSheet | null {
  const path = isProfilePath(idOrPath) ? resolvePath(world.cwd, idOrPath) : profilePath(idOrPath, '.');
  const loaded = loadText(path, world.disk);
  if (!loaded.ok) {
    world.say(`dewdial: cannot read ${path}: ${loaded.reason}\n`);
    return null;
  }
  const log = new Log();
  const label = isProfilePath(idOrPath) ? idOrPath : basename(path);
  const profile = readProfile(label, loaded.text, log);
  const messages = log.sorted();
  if (messages.length > 0)
    world.say(
      renderText(messages, new Map([[label, { shown: path, text: loaded.text }]]), {
        colour: usesColour(world),
        columns: world.columns,
      }),
    );
  return profile && speciesSheet(profile);
}
