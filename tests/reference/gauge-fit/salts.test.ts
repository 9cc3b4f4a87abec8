/**
 * Humidity over saturated salts. Source: CRC Handbook of Chemistry and Physics, at 25 °C (opened): 75, 33, 97 %, each within 2; Wexler A,
 * Hasegawa S (1954), J. Res. NBS 53:19-26 (opened): sodium chloride greatest near 30 °C at 75.6 %, 74.9 % at 0 °C.
 */
import { describe, expect, it } from 'vitest';
import { SALTS, saltHumidity } from '../../../src/science/salt-points.ts';

describe('humidity over saturated salts', () => {
  it.each([
    ['nacl', 0.75],
    ['mgcl2', 0.33],
    ['k2so4', 0.97],
  ] as const)('%s at 25 °C is within 2 points of the handbook', (salt, humidity) => {
    expect(Math.abs(saltHumidity(salt, 25) - humidity)).toBeLessThan(0.02);
  });

  it('sodium chloride stays within 1 point of the earlier measurement from 15 to 30 °C', () => {
    for (let celsius = 15; celsius <= 30; celsius++)
      expect(Math.abs(saltHumidity('nacl', celsius) - 0.755)).toBeLessThan(0.01);
  });

  it('falls as it gets warmer and ends at the ends of the table', () => {
    for (const salt of SALTS) {
      for (let celsius = 15; celsius < 30; celsius++)
        expect(saltHumidity(salt, celsius)).toBeGreaterThan(saltHumidity(salt, celsius + 1));
      expect(saltHumidity(salt, 5)).toBe(saltHumidity(salt, 15));
      expect(saltHumidity(salt, 40)).toBe(saltHumidity(salt, 30));
    }
  });
});
