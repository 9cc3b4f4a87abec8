/** Ids stand once, and what is named exists. */
import { nearestSpelling } from '../basics/nearest-spelling.ts';
import type { Findings, RawPart } from './raw-file.ts';

/** Finds ids that stand twice, and names of people and feeders that the file lacks. */
export function checkIds(root: RawPart, findings: Findings): void {
  const enclosures = root.at('enclosures').items;
  for (const list of ['people', 'hardware', 'enclosures']) unique(root.at(list).items, list, findings);
  for (const enclosure of enclosures) {
    for (const list of ['lamps', 'feeders', 'supplements', 'chores']) unique(enclosure.at(list).items, list, findings);
  }
  checkPeople(root, enclosures, findings);
  checkFeeders(root, enclosures, findings);
}

function unique(items: readonly RawPart[], of: string, findings: Findings): void {
  const first = new Map<string, RawPart>();
  for (const id of items.map((item) => item.at('id'))) {
    if (id.text === null) continue;
    const earlier = first.get(id.text);
    if (earlier) findings.say('duplicate-id', { id: id.text, of, line: findings.lineOf(earlier.path) }, id.path);
    else first.set(id.text, id);
  }
}

function checkPeople(root: RawPart, enclosures: readonly RawPart[], findings: Findings): void {
  const people = idsOf(root.at('people').items);
  const named = [
    ...root.at('away').items.map((absence) => absence.at('sitter')),
    ...enclosures.flatMap((enclosure) => enclosure.at('chores').items.map((chore) => chore.at('who'))),
  ];
  for (const name of named) mustExist(name, people, 'person', [], findings);
}

function checkFeeders(root: RawPart, enclosures: readonly RawPart[], findings: Findings): void {
  const feeders = [...new Set(enclosures.flatMap((enclosure) => idsOf(enclosure.at('feeders').items)))];
  for (const shortage of root.at('shortage').items) mustExist(shortage.at('feeder'), feeders, 'feeder', [], findings);
}

/** Reports a name that nothing in the file has. */
export function mustExist(
  name: RawPart,
  known: readonly string[],
  wanted: string,
  words: readonly string[],
  findings: Findings,
): void {
  const id = name.text;
  if (id === null || known.includes(id) || words.includes(id)) return;
  findings.say(
    'unknown-id',
    { id, wanted, known, words, nearest: nearestSpelling(id, [...known, ...words]) },
    name.path,
  );
}

/** Returns the ids of items that have one. */
export function idsOf(items: readonly RawPart[]): readonly string[] {
  return items.flatMap((item) => item.at('id').text ?? []);
}
