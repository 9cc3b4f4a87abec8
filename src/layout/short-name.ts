/** Names as pages print them: on one line, and no longer than a row of a grid can hold. */
import { cutAt, plainLine } from '../basics/plain-line.ts';
import type { Log } from '../diagnostics/log.ts';
import type { Plan } from '../plan/plan.ts';

const NAME_CHARACTERS = 40;
const TEXT_CHARACTERS = 120;

/** Returns a name for a page; cut, with a dot of omission, where it is longer than 40 characters. */
export function shortName(name: string): string {
  return cutAt(plainLine(name), NAME_CHARACTERS);
}

/** Returns a text of the keeper for a page; cut where it is longer than 120 characters. */
export function shortText(text: string): string {
  return cutAt(plainLine(text), TEXT_CHARACTERS);
}

/** Reports names and texts that pages cut. */
export function reportCuts(plan: Plan, log: Log): void {
  const names = [plan.name, ...plan.enclosures.map(({ name }) => name), ...plan.hardware.map(({ id }) => id)];
  for (const name of new Set(names))
    if (shortName(name) !== plainLine(name)) log.report('name-cut', cut(name, NAME_CHARACTERS));
  const titles = [...plan.chores.map(({ title }) => title), ...Object.values(plan.contacts)];
  for (const title of new Set(titles))
    if (shortText(title) !== plainLine(title)) log.report('name-cut', cut(title, TEXT_CHARACTERS));
}

function cut(text: string, most: number): { readonly start: string; readonly length: number; readonly most: number } {
  const plain = plainLine(text);
  return { start: cutAt(plain, 20), length: [...plain].length, most };
}
