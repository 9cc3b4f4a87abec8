import { describe, expect, it } from 'vitest';
import { minimalHousehold, resolveText } from '../../shipped-profiles.ts';

/** Each case: targets of the file, what is reported, and the words of the line that is named (in the file, or in the profile). */
const CASES: readonly (readonly [string, string, string, string])[] = [
  ['a floor above the whole day band', 'humidity: { floor: 75 % }', 'humidity-limits-crossed', 'floor: 75 %'],
  ['a ceiling below the whole night band', 'humidity: { ceiling: 60 % }', 'humidity-limits-crossed', 'ceiling: 60 %'],
  ['a peak below the day band', 'humidity: { peak: [30 %, 95 %] }', 'peak-below-day', 'peak:'],
  [
    'a cold limit above the night band',
    'temperature: { never_below: 23 °C }',
    'temperature-limits-crossed',
    'never_below: 23',
  ],
  [
    'a warm limit below the day band',
    'temperature: { never_above: 20 °C }',
    'temperature-limits-crossed',
    'never_above: 20',
  ],
  [
    'edges that leave nothing of the longest day',
    'basking: { after_lights_on: 7 h, before_lights_off: 6 h }',
    'inset-leaves-nothing',
    'basking:',
  ],
  ['hours longer than the longest day', 'basking: { hours: 14 h }', 'inset-outlasts-day', 'basking:'],
  ['a drink from mists that are refused', 'misting: none', 'drink-without-misting', 'misting: none'],
  [
    'a cadence that does not fit into a day',
    'misting: { per_day: [13, 14], seconds: [60 s, 90 s], gap: 2 h }',
    'cadence-too-dense',
    'misting:',
  ],
  [
    'a dry-out longer than the lit hours',
    'water: { dry_out: { at_least: 14 h } }',
    'dry-out-outlasts-hours',
    'dry_out:',
  ],
  [
    'light hours that cross',
    'day: { no_light_before: "20:00", no_light_after: "08:00" }',
    'no-light-hours-crossed',
    'no_light_after',
  ],
];

describe('targets that cannot hold together', () => {
  it.each(CASES)('%s', (_, line, code, words) => {
    const text = minimalHousehold({ enclosure: ['targets:', `  ${line}`] });
    const { diagnostics } = resolveText(text);
    const found = diagnostics.filter((diagnostic) => diagnostic.code === code);
    expect(diagnostics.filter(({ weight }) => weight === 'error').map((d) => d.code)).toEqual(found.map(() => code));
    expect(found.length).toBeGreaterThan(0);
    expect(text.split('\n')[(found[0]?.place?.line ?? 0) - 1]).toContain(words.split(':')[0]);
    expect(found[0]?.place?.file).toBe('home.yaml');
  });

  it('accepts each limit on the very edge of its band', () => {
    const { diagnostics } = resolveText(
      minimalHousehold({
        enclosure: [
          'targets:',
          '  humidity: { floor: 70 %, ceiling: 80 %, peak: [50 %, 95 %] }',
          '  temperature: { never_below: 22 °C, never_above: 29 °C }',
          '  basking: { after_lights_on: 7 h, before_lights_off: 359 min }',
        ],
      }),
    );
    expect(diagnostics.filter(({ weight }) => weight === 'error')).toEqual([]);
  });

  it('asks where the home of a species is before its season can be native', () => {
    const profile =
      'format: 1\nspecies: own\nname: Own\nscientific: Sine patria\nactivity: diurnal\nphotoperiod: { longest: 13 h, shortest: 11 h, season: native }\nstages: { adult: { feeds: [] } }\n';
    const text = minimalHousehold({ species: './own.yaml', enclosure: ['mist: none'] });
    expect(resolveText(text, { './own.yaml': profile }).diagnostics.map(({ code }) => code)).toEqual(['range-unknown']);
    const home = `${profile}range: { latitude: -15 }\n`;
    expect(resolveText(text, { './own.yaml': home }).diagnostics).toEqual([]);
  });

  it('asks for a day length where neither file has one', () => {
    const profile =
      'format: 1\nspecies: own\nname: Own\nscientific: Sine die\nactivity: diurnal\nstages: { adult: { feeds: [] } }\n';
    const { care, diagnostics } = resolveText(minimalHousehold({ species: './own.yaml', enclosure: ['mist: none'] }), {
      './own.yaml': profile,
    });
    expect(care).toBeNull();
    expect(diagnostics.map(({ code }) => code)).toEqual(['photoperiod-missing']);
  });
});
