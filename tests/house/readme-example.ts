import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const ROOT = resolve(import.meta.dirname, '../..');

/** Returns the program that the README gives as an example of the library. */
export function readmeExample(): string {
  const [, code] =
    /^## As a library\n[^#]*?```js\n([\s\S]*?)```/m.exec(readFileSync(join(ROOT, 'README.md'), 'utf8')) ?? [];
  if (code === undefined) throw new Error('the README has no example of the library');
  return code;
}

/** What the example prints, whatever the plan. */
export const README_PRINTS = ['calendar/keeper.ics', 'plan.json', 'settings.txt'];
