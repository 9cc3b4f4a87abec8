/**
 * Relative humidity over saturated salt solutions, against which a gauge is tested.
 * Source: Greenspan L (1977), J. Res. NBS 81A:89-96, computed from its polynomials (coefficients from memory); held against the CRC Handbook
 * of Chemistry and Physics at 25 °C (opened): 75, 33 and 97 %, each within 2.
 */
export const SALTS = ['nacl', 'mgcl2', 'k2so4'] as const;
export type Salt = (typeof SALTS)[number];

const AT_C: readonly number[] = [15, 20, 25, 30];
const HUMIDITY: Readonly<Record<Salt, readonly number[]>> = {
  nacl: [0.7561, 0.7548, 0.753, 0.7509],
  mgcl2: [0.333, 0.3307, 0.3279, 0.3245],
  k2so4: [0.9789, 0.976, 0.973, 0.9701],
};

/** Returns the humidity over a salt at a temperature from 15 to 30 °C, linear between 5 °C steps; beyond, that of the nearer end. */
export function saltHumidity(salt: Salt, celsius: number): number {
  const values = HUMIDITY[salt];
  const last = AT_C.length - 1;
  const index = Math.min(last - 1, Math.max(0, Math.floor((celsius - 15) / 5)));
  const share = Math.min(1, Math.max(0, (celsius - (AT_C[index] ?? 15)) / 5));
  const low = values[index] ?? 0;
  return low + ((values[index + 1] ?? low) - low) * share;
}
