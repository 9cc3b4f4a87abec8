/** The fitted values beside a household file: changed whole, taken away one by one. */
import { basename } from 'node:path';
import { Log } from '../diagnostics/log.ts';
import { renderText } from '../diagnostics/render.ts';
import { fittedText } from '../fit/fitted-text.ts';
import { readFitted } from '../read/fitted.ts';
import type { FittedTree } from '../read/fitted-tree.ts';
import { fittedPath, loadText, resultFolderName } from './files.ts';
import type { FitOptions } from './fit-options.ts';
import { underLock } from './lock.ts';
import { CannotWrite, guardName } from './publish.ts';
import { usesColour } from './run-messages.ts';
import { UsageError } from './usage.ts';
import { EXIT, type World } from './world.ts';
import { writeWhole } from './write-whole.ts';

type Fitted = FittedTree['fitted'];

/** Returns what stands; an empty map where nothing does. Throws CannotWrite where it cannot be read, which is said first. */
function standing(file: string, world: World): Fitted {
  const path = fittedPath(file);
  const loaded = loadText(path, world.disk);
  if (!loaded.ok && loaded.isMissing) return {};
  const refused = `${path} stands there and cannot be read; mend it, or take it away with --remove all`;
  if (!loaded.ok) throw new CannotWrite(refused);
  const log = new Log();
  const read = readFitted(basename(path), loaded.text, log);
  if (read) return read.tree.fitted;
  const sources = new Map([[basename(path), { shown: path, text: loaded.text }]]);
  world.say(renderText(log.sorted(), sources, { colour: usesColour(world), columns: world.columns }));
  throw new CannotWrite(refused);
}

/** Changes the values that stand; the file goes where none is left. */
export function changeFitted(file: string, change: (standing: Fitted) => Fitted, world: World): void {
  const path = fittedPath(file);
  const next = change(standing(file, world));
  if (Object.keys(next).length === 0) world.disk.rmSync(path, { force: true });
  else writeWhole(path, fittedText(basename(file), next), world.disk);
}

/** Takes an enclosure's fitted values away, or all of them. */
export async function removeFitted(file: string, which: string, options: FitOptions, world: World): Promise<number> {
  const path = fittedPath(file);
  const name = resultFolderName(file);
  guardName(name);
  return underLock(options.out, name, world, async () => {
    if (which === 'all') world.disk.rmSync(path, { force: true });
    else {
      const ids = Object.keys(standing(file, world));
      if (!ids.includes(which))
        throw new UsageError(
          ids.length === 0
            ? `--remove ${which}: there are no fitted values beside ${file}`
            : `--remove ${which}: fitted are ${ids.join(', ')}`,
        );
      changeFitted(file, (fitted) => Object.fromEntries(Object.entries(fitted).filter(([id]) => id !== which)), world);
    }
    world.out(
      options.json
        ? `${JSON.stringify({ removed: which, fittedFile: path })}\n`
        : `taken away: ${which === 'all' ? 'all fitted values' : which}; estimates hold again\n`,
    );
    return EXIT.done;
  });
}
