import { describe, expect, it } from 'vitest';
import { words } from '../../../src/plan/words/words.ts';

/** Every word of a catalogue, said with the same values: numbers where a number stands, texts elsewhere. */
function said(value: unknown, path: string): readonly (readonly [string, string])[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value === 'function') return [[path, String(Reflect.apply(value, null, argumentsOf(path)))]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => said(inner, `${path}.${key}`));
}

function argumentsOf(path: string): readonly unknown[] {
  return path.endsWith('inOrder') || path.endsWith('list') ? [['one', 'two']] : [3, 4, 5];
}

const calendar = { en: said(words('en').calendar, ''), es: said(words('es').calendar, '') };

describe('words of the calendar', () => {
  it('say something in each language, and nothing undefined', () => {
    expect(calendar.en.length).toBeGreaterThan(40);
    for (const [path, text] of [...calendar.en, ...calendar.es]) {
      expect(text, path).not.toBe('');
      expect(text, path).not.toContain('undefined');
    }
  });

  it('differ between the languages wherever they are words', () => {
    const same = calendar.en.filter(
      ([path, text], index) => calendar.es[index]?.[1] === text && /[a-z]{4}/i.test(text) && path !== '.inOrder',
    );
    expect(same).toEqual([]);
  });

  it('write dates', () => {
    expect(words('en').calendar.date(2027, 3, 14)).toBe('14 March 2027');
    expect(words('es').calendar.date(2027, 12, 1)).toBe('1 de diciembre de 2027');
  });
});
