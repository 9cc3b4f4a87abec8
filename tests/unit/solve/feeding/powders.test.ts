import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../../src/basics/calendar-day.ts';
import { type ApartRule, daysApart, firstDayFor } from '../../../../src/solve/feeding/powders.ts';
import { careOf, insects } from '../../../generated/solved-feeding.ts';

/** Calcium holds nothing, calcium-d3 D3, the multivitamin D3 and vitamin A. */
const [enclosure] = careOf({ enclosure: insects() }, 7).enclosures;
if (!enclosure) throw new Error('no enclosure');
const rules: readonly ApartRule[] = [
  { between: ['d3', 'd3'], days: 7, path: 'apart.0' },
  { between: ['d3', 'vitamin-a'], days: 2, path: 'apart.1' },
];

describe('days between two powders', () => {
  it.each([
    ['calcium-d3', 'calcium-d3', 7],
    ['calcium-d3', 'multivitamin', 7],
    ['multivitamin', 'multivitamin', 7],
    ['calcium', 'multivitamin', 0],
  ] as const)('are the strictest of all rules that name them or what they hold: %s, %s', (a, b, days) => {
    expect(daysApart(enclosure, rules, a, b)).toBe(days);
    expect(daysApart(enclosure, rules.toReversed(), b, a)).toBe(days);
  });

  it('are kept from whatever was given last, under the rules of then and of now', () => {
    const day = epochDay('2027-03-01');
    const given = (powder: string, own: readonly ApartRule[]) => [{ powder, day, rules: own }];
    expect(firstDayFor(enclosure, rules, 'multivitamin', given('calcium-d3', []))).toBe(day + 7);
    expect(firstDayFor(enclosure, [], 'multivitamin', given('vitamin-a', rules))).toBe(day + 2);
    expect(firstDayFor(enclosure, rules, 'calcium', given('calcium-d3', rules))).toBe(Number.NEGATIVE_INFINITY);
    const both = [...given('d3', rules), { powder: 'vitamin-a', day: day + 6, rules }];
    expect(firstDayFor(enclosure, rules, 'calcium-d3', both)).toBe(day + 8);
  });
});
