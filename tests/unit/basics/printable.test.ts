import { describe, expect, it } from 'vitest';
import { cellWidth, printable } from '../../../src/basics/printable.ts';

describe('printable text', () => {
  it.each([
    ['plain', 'plain'],
    ['a\tb\nc', 'a b c'],
    ['\u001b[31mred', '\ufffd[31mred'],
    ['\u202eabc\u2069', '\ufffdabc\ufffd'],
    ['a\u0000b\u007fc\u0085', 'a\ufffdb\ufffdc\ufffd'],
    ['\ud800x', '\ufffdx'],
    ['Müller & 日本 😀', 'Müller & 日本 😀'],
  ])('%j is shown as %j', (text, shown) => {
    expect(printable(text)).toBe(shown);
  });
});

describe('the width in cells', () => {
  it.each([
    ['abc', 3],
    ['é', 1],
    ['e\u0301', 1],
    ['日本', 4],
    ['ｶ', 1],
    ['😀', 2],
    ['', 0],
    ['a\u200bb', 2],
  ])('of %j is %d', (text, width) => {
    expect(cellWidth(text)).toBe(width);
  });
});
