import { describe, expect, it } from 'vitest';
import { cutAt, plainLine, plainLines } from '../../../src/basics/plain-line.ts';

describe('text for other programs', () => {
  it.each([
    ['Feed Fern: 5 × cricket', 'Feed Fern: 5 × cricket'],
    ['two\nlines\r\nand\u2028three', 'two lines and three'],
    ['  tabs\t and   spaces ', 'tabs and spaces'],
    ['bell\u0007 nul\u0000 escape\u001b[31m', 'bell nul escape[31m'],
    ['turned \u202eround\u202c and \u2066isolated\u2069', 'turned round and isolated'],
    ['\ufeffmarked', 'marked'],
    ['half a pair \ud83d.', 'half a pair \ufffd.'],
    ['水を替える, שטיפה, Línea', '水を替える, שטיפה, Línea'],
    ['🦎 👩‍🚀 é', '🦎 👩‍🚀 é'],
    ['', ''],
  ])('%j is one plain line', (text, expected) => {
    expect(plainLine(text)).toBe(expected);
  });

  it('keeps the lines of a description', () => {
    expect(plainLines(' one \r\ntwo\u2029three\n\n')).toBe('one\ntwo\nthree');
  });

  it.each([
    ['short', 10, 'short'],
    ['exactly', 7, 'exactly'],
    ['somewhat longer', 9, 'somewhat…'],
    ['🦎🦎🦎🦎', 3, '🦎🦎…'],
    ['ab👩‍🚀cd', 4, 'ab…'],
    ['abe\u0301\u0302xyz', 4, 'ab…'],
  ])('%j is cut at %i', (text, most, expected) => {
    expect(cutAt(text, most)).toBe(expected);
    expect([...cutAt(text, most)].length).toBeLessThanOrEqual(most);
  });
});
