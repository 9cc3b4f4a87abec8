import { describe, expect, it } from 'vitest';
import { speciesListText, speciesText } from '../../../../src/emit/text/species.ts';
import { targetWords } from '../../../../src/emit/text/target-value.ts';
import { speciesSheet } from '../../../../src/resolve/species-sheet.ts';
import { PROFILE_IDS, shippedProfile } from '../../../shipped-profiles.ts';

describe('a target in words', () => {
  it.each([
    [[22, 28], '°C', false, '22 to 28 °C (72 to 82 °F)'],
    [15, '°C', false, '15 °C (59 °F)'],
    [[0.7, 0.95], '1', true, '70 to 95 %'],
    [0.3, '1', true, '30 %'],
    [[1, 3], '1', false, '1 to 3'],
    [[1, 1], '1', false, '1'],
    [780, 'min', false, '13 h'],
    [90, 'min', false, '1 h 30 min'],
    [[60, 300], 's', false, '60 to 300 s'],
    [1, 'd', false, '1 day'],
    [7, 'd', false, '7 days'],
    [-15, '°', false, '15° south'],
    [{ before_lights_off: 120 }, 'min', false, '2 h before lights off'],
    [{ after_lights_on: 0 }, 'min', false, 'at lights on'],
    ['13:00', 'text', false, '13:00'],
    [['calcium-d3', 'multivitamin'], 'text', false, 'calcium-d3, multivitamin'],
  ] as const)('%j in %s', (value, unit, isShare, words) => {
    expect(targetWords(value, unit, isShare)).toBe(words);
  });
});

describe('the sheet of a species', () => {
  const text = speciesText(speciesSheet(shippedProfile('panther-chameleon')));
  const lines = text.split('\n');

  it('says that it is a template, and that no dose stands there', () => {
    expect(lines[1]).toContain('template: verify with your veterinarian');
    expect(text).toContain('No vitamin doses stand here');
  });

  it('puts each target beside its source, and what disagrees below it', () => {
    const at = lines.findIndex((line) => line.includes('ferguson zone'));
    expect(lines[at]).toMatch(/ferguson zone\s+3\s+baines2016 \(from memory\)/);
    expect(lines.slice(at + 1, at + 3).some((line) => /^\s+4\s+says ferguson2021$/.test(line))).toBe(true);
    expect(text).toMatch(/never below\s+15 °C \(59 °F\)\s+ours/);
    expect(text).toMatch(/day\s+50 to 70 %\s+common practice, no source/);
  });

  it('prints the UV index of the zone with the zone', () => {
    expect(text).toMatch(/zone 3 mean\s+UV index 1\.0 to 2\.6/);
    expect(text).toMatch(/zone 3 basking\s+UV index 2\.9 to 7\.4/);
  });

  it('tells feeds, dustings and spacings of every stage in a line each', () => {
    expect(text).toContain('insects, 3 a week: 5, no longer than the head is wide');
    expect(text).toContain('calcium-d3, 2 times in 4 weeks');
    expect(text).toContain('calcium every 2 feeds');
    expect(text).toContain('calcium on the rest');
    expect(text).toContain('d3 and the next: 3 days');
  });

  it('lists each source with how it was read, and counts the numbers', () => {
    expect(text).toMatch(/ferguson2002: Ferguson GW.*\[an excerpt was read\]/);
    const { counts } = speciesSheet(shippedProfile('panther-chameleon'));
    expect(text).toContain(
      `Of its ${counts.all} numbers ${counts.published} published (${counts.remembered} of them from memory), ${counts.practice} common practice, ${counts.ours} ours`,
    );
  });

  it('has no line without words and none that names an unknown source, for every species', () => {
    for (const id of PROFILE_IDS) {
      const sheet = speciesText(speciesSheet(shippedProfile(id)));
      expect([id, /undefined|NaN|no source named|\[object/.test(sheet)]).toEqual([id, false]);
      expect(sheet.endsWith('\n')).toBe(true);
    }
  });
});

describe('the list of species', () => {
  it('has a line each, in the order of ids', () => {
    const sheets = [...PROFILE_IDS].reverse().map((id) => speciesSheet(shippedProfile(id)));
    const lines = speciesListText(sheets).trimEnd().split('\n');
    expect(lines.map((line) => line.split(' ')[0])).toEqual(PROFILE_IDS);
    expect(lines[0]).toBe('ball-python         Ball (royal) python (Python regius)');
    expect(speciesListText([])).toBe('');
  });
});
