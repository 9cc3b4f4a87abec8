/** What is normal for each animal and when to act, in the household's units. */
import { watchWords } from '../../plan/phrases/watch-words.ts';
import type { UnitSystem } from '../../plan/plan.ts';
import type { WatchFor } from '../../plan/watch-for.ts';
import type { Words } from '../../plan/words/words.ts';

export interface WatchLook {
  readonly units: UnitSystem;
  readonly contacts: Readonly<Partial<Record<'keeper' | 'vet' | 'note', string>>>;
}

/** Returns a few lines an enclosure, and whom to call; nothing where no target says anything. */
export function watchLines(watch: readonly WatchFor[], look: WatchLook, told: Words): readonly string[] {
  const lines = watch.flatMap((each) => oneEnclosure(each, look, told));
  const { keeper, vet } = look.contacts;
  const numbers = [
    ...(keeper === undefined ? [] : [`${told.today.keeper} ${keeper}`]),
    ...(vet === undefined ? [] : [`${told.today.vet} ${vet}`]),
  ];
  if (lines.length === 0) return [];
  return [told.today.watch, ...lines, ...(numbers.length > 0 ? [`  ${told.today.call(numbers.join('; '))}`] : [])];
}

function oneEnclosure(watch: WatchFor, { units }: WatchLook, told: Words): readonly string[] {
  const { states, normal, act } = watchWords(watch, units, told);
  const [first = '', ...rest] = [...states, ...normal, ...(act === '' ? [] : [act])];
  return first === '' ? [] : [`  ${watch.name}: ${first}`, ...rest.map((line) => `    ${line}`)];
}
