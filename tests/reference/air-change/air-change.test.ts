/** Well-mixed decay in the wet enclosure's own integrator against the air-change tables of CDC and Health Canada. */
import { describe, expect, it } from 'vitest';
import { saturationDensityGPerM3 } from '../../../src/science/moist-air.ts';
import { PeriodicDay } from '../../../src/science/wet-enclosure.ts';
import values from './values.json' with { type: 'json' };

interface Row {
  readonly id: string;
  readonly inputs: { readonly ACH: number };
  readonly expected: Readonly<Record<string, number>> | number;
  readonly source: string;
}
const rows = values as unknown as readonly Row[];
const REMOVED: Readonly<Record<string, number>> = { min_90: 0.9, min_99: 0.99, min_999: 0.999 };

/** An empty box of no water at all, into which a fogger gives one short puff a day; what is above the room then only leaves by air exchange. */
function decayMinutes(changesPerHour: number, removed: number): number {
  const room = 0.2 * saturationDensityGPerM3(25);
  const day = new PeriodicDay(
    {
      volumeM3: 1,
      airChangesPerHour: changesPerHour,
      wettableAreaM2: 0,
      filmCapacityG: 0,
      transferMPerHour: 5,
      baseEvaporationGPerHour: 0,
      warmUpMinutes: 20,
    },
    { flowGPerHour: 600, landsShare: 0, airborneShare: 1, lagSeconds: 0, afterDripG: 0 },
    { roomVapourGPerM3: room, temperatureSteps: [{ fromMinute: 0, celsius: 25 }], lit: { onMinute: 0, minutes: 720 } },
  );
  day.simulate([{ startMinute: 0, seconds: 60 }]);
  const relativeRoom = room / saturationDensityGPerM3(25);
  const { minutes, count } = day.mesh;
  const above = (node: number) => (day.humidity[node] ?? 0) - relativeRoom;
  const start = minutes.findIndex((minute, node) => node > 0 && minute === 1);
  const aim = (1 - removed) * above(start);
  for (let node = start; node < count; node++) {
    if (above(node + 1) > aim) continue;
    const [t0, t1] = [minutes[node] ?? 0, minutes[node + 1] ?? 0];
    const share = Math.log(above(node) / aim) / Math.log(above(node) / above(node + 1));
    return t0 + share * (t1 - t0) - 1;
  }
  return Number.POSITIVE_INFINITY;
}

describe('well-mixed decay', () => {
  // CDC/HICPAC (2003) Appendix B, table B.1 (six rows opened, three from memory): every row, exact after rounding to a minute.
  const table = rows.filter(({ id }) => id.startsWith('ACH-B1'));
  it('has the nine rows of the table', () => expect(table.length).toBe(9));
  it.each(table)('$id', ({ inputs, expected }) => {
    for (const [key, minutes] of Object.entries(expected)) {
      expect(Math.round(decayMinutes(inputs.ACH, REMOVED[key] ?? 0))).toBe(minutes);
    }
  });

  // Health Canada CCDR 22S1 (1996) Appendix F (opened): to 1 min.
  it.each(rows.filter(({ id }) => id.startsWith('ACH-CAN')))('$id', ({ inputs, expected }) => {
    for (const [key, minutes] of Object.entries(expected)) {
      expect(Math.abs(decayMinutes(inputs.ACH, REMOVED[key] ?? 0) - minutes)).toBeLessThanOrEqual(1);
    }
  });

  // Computed: ln 2 / n.
  it('ACH-HALF to 0.01 min', () => {
    const row = rows.find(({ id }) => id === 'ACH-HALF');
    expect(Math.abs(decayMinutes(1, 0.5) - Number(row?.expected))).toBeLessThan(0.01);
  });
});
