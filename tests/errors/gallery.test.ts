import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/diagnostics/catalogue.ts';
import { CASES, codesWithCases, saidOf } from './gallery.ts';
import { otherCases } from './other-cases.ts';
import pending from './pending.json' with { type: 'json' };

const codes = Object.keys(catalogue).sort();
const inFiles = codesWithCases();

describe('the gallery of messages', () => {
  it.each(inFiles)('%s is said in exactly these words', (code) => {
    const text = saidOf(code).text((diagnostic) => diagnostic.code === code);
    expect(text, `${code} is not said of its own case`).not.toBe('');
    const file = new URL(`${code}.txt`, CASES);
    if (process.env.GALLERY_WRITE && !existsSync(file)) writeFileSync(file, text);
    expect(text).toBe(readFileSync(file, 'utf8'));
  });

  it.each(Object.entries(otherCases))('%s is said in exactly these words', (code, { said, expected }) => {
    expect(said().text((diagnostic) => diagnostic.code === code)).toBe(expected);
  });

  it.each(inFiles)('%s has a place on a line that stands in the file', (code) => {
    const own = saidOf(code).diagnostics.filter((diagnostic) => diagnostic.code === code);
    for (const { place } of own) expect(place === null || place.line >= 1).toBe(true);
  });

  it('has a case for every code of the catalogue', () => {
    const shown = new Set([...inFiles, ...Object.keys(otherCases), ...pending]);
    expect(codes.filter((code) => !shown.has(code))).toEqual([]);
  });

  it('has no case for a code that the catalogue lacks, and lists none as pending that has one', () => {
    const shown = [...inFiles, ...Object.keys(otherCases)];
    expect(shown.filter((code) => !codes.includes(code))).toEqual([]);
    expect(pending.filter((code) => shown.includes(code) || !codes.includes(code))).toEqual([]);
  });
});
