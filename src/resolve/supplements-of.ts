/** The powders of an enclosure and what each holds: from the label where the keeper says it, else by its name and with a warning. */
import type { Place } from '../diagnostics/diagnostic.ts';
import type { Log } from '../diagnostics/log.ts';
import type { ReadSupplement } from '../read/household-tree.ts';
import type { FilePath } from '../read/placed-file.ts';
import { approximateDays } from './calendar-span.ts';
import type { Content, Stage, Supplement } from './care.ts';

/** Returns what a powder is taken to hold where the keeper does not say. */
export function contentsTaken(id: string): readonly Content[] {
  if (id === 'calcium') return [];
  if (id === 'calcium-d3') return ['d3'];
  if (id === 'vitamin-a') return ['vitamin-a'];
  return ['d3', 'vitamin-a'];
}

/** Returns the file's powders in its order, then those that only a dusting names; reports which contents were taken. */
export function supplementsOf(
  said: readonly ReadSupplement[],
  stages: readonly Stage[],
  context: {
    readonly enclosure: string;
    readonly path: FilePath;
    readonly placeOf: (path: FilePath) => Place;
    readonly log: Log;
  },
): readonly Supplement[] {
  const fromFile = said.map((supplement, index) => supplementOf(supplement, [...context.path, 'supplements', index]));
  const used = new Set(stages.flatMap(({ dusting }) => dusting.map(({ id }) => id)));
  const unlisted = [...used]
    .filter((id) => !said.some((supplement) => supplement.id === id))
    .map((id) => unlistedSupplement(id, context.path));
  const all = [...fromFile, ...unlisted];
  const taken = all.filter((supplement) => !supplement.said && used.has(supplement.id));
  if (taken.length > 0)
    context.log.report(
      'powder-contents-taken',
      { enclosure: context.enclosure, taken: taken.map(contentsInWords).join('; ') },
      context.placeOf([...context.path, 'supplements']),
    );
  return all;
}

function supplementOf(said: ReadSupplement, path: FilePath): Supplement {
  return {
    id: said.id,
    path,
    contains: said.contains ?? contentsTaken(said.id),
    said: said.contains !== undefined,
    opened: said.opened ?? null,
    goodForDays: said.good_for ? approximateDays(said.good_for) : null,
  };
}

function unlistedSupplement(id: string, path: FilePath): Supplement {
  return { id, path, contains: contentsTaken(id), said: false, opened: null, goodForDays: null };
}

function contentsInWords({ id, contains }: Supplement): string {
  const names = contains.map((content) => (content === 'd3' ? 'vitamin D3' : 'vitamin A'));
  return `${id} holds ${names.length === 0 ? 'neither vitamin D3 nor vitamin A' : names.join(' and ')}`;
}
