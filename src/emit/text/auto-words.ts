/** Whether what `auto` chose could be better, and by how much at most. */
import type { AutoLevel, AutoPlaces, Plan } from '../../plan/plan.ts';

/** Returns a line, with one more for each thing weighed where it could be better; nothing where the lamp or enclosure was not left to `auto`. */
export function autoWords({ auto }: Pick<Plan, 'auto'>, kind: AutoPlaces['kind'], id: string): string {
  const places = auto?.find((each) => each.kind === kind && each.placed.includes(id));
  if (!places) return '';
  const what = kind === 'lamps' ? 'lamps' : 'enclosures';
  const together = places.placed.length === 1 ? '' : ` together with ${places.placed.length - 1} other ${what}`;
  return `  auto chose that${together}; ${places.isProven ? 'no arrangement is better' : gapWords(places)}\n`;
}

function gapWords({ levels }: AutoPlaces): string {
  return ['a better arrangement may be left', ...levels.map((level) => `    ${levelWords(level)}`)].join('\n');
}

const NAMES: Readonly<Record<AutoLevel['name'], string>> = {
  'limits-exceeded': 'the number of limits exceeded at worst',
  'worst-error': 'the worst error',
  'errors-a-day': 'the sum of all errors of a day',
  'worst-shortfall': 'the worst shortfall',
  shortfalls: 'the sum of all shortfalls',
};

function levelWords({ name, value, atLeast }: AutoLevel): string {
  const unit = name === 'worst-error' || name === 'errors-a-day' ? ' min' : '';
  const rounded = (number: number): string => String(Math.round(number * 100) / 100);
  return value === atLeast
    ? `${NAMES[name]} is ${rounded(value)}${unit}, the least there is`
    : `${NAMES[name]} is ${rounded(value)}${unit}, and none is under ${rounded(atLeast)}${unit}`;
}
