/** Cities, with coordinates and zones as atlases and the IANA table have them (from memory, to a tenth of a degree). */
import { describe, expect, it } from 'vitest';
import { misplacement } from '../../../src/basics/place-in-zone.ts';

const CITIES = [
  ['Europe/Madrid', 40.4, -3.7],
  ['Europe/Dublin', 53.3, -6.3],
  ['America/Chicago', 41.9, -87.6],
  ['Australia/Melbourne', -37.8, 145],
  ['Pacific/Auckland', -36.8, 174.8],
  ['Asia/Shanghai', 39.5, 76],
  ['Asia/Kolkata', 28.6, 77.2],
  ['Pacific/Kiritimati', 1.9, -157.4],
  ['Pacific/Apia', -13.8, -171.8],
  ['America/Santiago', -33.4, -70.7],
  ['America/St_Johns', 47.6, -52.7],
  ['Africa/Casablanca', 33.6, -7.6],
  ['Atlantic/Reykjavik', 64.1, -21.9],
] as const;

describe('a place in its zone', () => {
  it.each(CITIES)('%s has nothing against it', (zone, latitude, longitude) => {
    expect(misplacement(zone, 2027, { latitude, longitude })).toBeNull();
  });

  it('has lost the sign of its longitude', () => {
    expect(misplacement('Australia/Melbourne', 2027, { latitude: -37.8, longitude: -145 })).toEqual({
      kind: 'east-west',
      hours: 4,
    });
    expect(misplacement('America/Chicago', 2027, { latitude: 41.9, longitude: 87.6 })).toEqual({
      kind: 'east-west',
      hours: 12,
    });
  });

  it('has lost the sign of its latitude', () => {
    expect(misplacement('Australia/Melbourne', 2027, { latitude: 37.8, longitude: 145 })).toEqual({
      kind: 'north-south',
      summer: 'January',
    });
    expect(misplacement('Europe/Madrid', 2027, { latitude: -33.9, longitude: 18.4 })).toEqual({
      kind: 'north-south',
      summer: 'July',
    });
  });

  it('has its coordinates changed about', () => {
    expect(misplacement('America/Chicago', 2027, { latitude: -87.6, longitude: 41.9 })?.kind).toBe('east-west');
  });
});
