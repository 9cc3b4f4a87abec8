/** What hangs on a timer, as a person at the shelf calls it. */
import type { Plan } from '../plan.ts';

/** Returns the name of a load: `lamp:fern/sun` reads `Fern sun`, with the enclosure by its name; `device:pump` reads `pump`. */
export function loadName({ enclosures }: Pick<Plan, 'enclosures'>, load: string): string {
  const name = load.slice(load.indexOf(':') + 1);
  if (!load.startsWith('lamp:')) return name;
  const [id = '', lamp = ''] = name.split('/');
  return `${enclosures.find((each) => each.id === id)?.name ?? id} ${lamp}`;
}

/** Returns the name of a lamp of an enclosure. */
export function lampName(
  plan: Pick<Plan, 'enclosures'>,
  { enclosure, lamp }: { enclosure: string; lamp: string },
): string {
  return loadName(plan, `lamp:${enclosure}/${lamp}`);
}
