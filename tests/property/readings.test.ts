/** Any log, however mangled, is read or refused in words: never a fault, every place on a line of the file. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { epochDay } from '../../src/basics/calendar-day.ts';
import { zoneOffsets } from '../../src/basics/zone.ts';
import { Log } from '../../src/diagnostics/log.ts';
import { renderText } from '../../src/diagnostics/render.ts';
import { readReadings } from '../../src/fit/read-readings.ts';
import { fitOfLog } from '../generated/fit-of-log.ts';
import { compiledFern, csvOf, fernHousehold, gaugeLog, WEEK } from '../generated/gauge-log.ts';

const OFFSETS = zoneOffsets('Europe/Madrid', epochDay('2027-01-01'), 365);
const FORM = { dates: null, columns: null, clock: 'wall', shiftMinutes: 0 } as const;
const SOUND = [
  'Fecha;Hora;HR (%);Temp. (°C);riego (s)',
  ...Array.from(
    { length: 30 },
    (_, i) => `${10 + (i % 15)}/03/2027;${10 + (i % 12)}:${10 + i};${40 + i},5;2${i % 9},1;${i % 7 === 0 ? 60 : ''}`,
  ),
].join('\n');

const piece = fc.oneof(
  fc.constantFrom(
    ';',
    ',',
    '\t',
    '"',
    '""',
    '\n',
    '\r\n',
    '\r',
    '\ufeff',
    ' ',
    '-',
    '%',
    '°F',
    '1e9',
    '999',
    'NaN',
    '24:00',
    '28/03/2027;02:30',
    '31/10/2027;02:30',
    '29/02/2027',
    '2027-01-31T10:00+25:99',
    '\u0000',
    '𝟡',
    '١٢',
  ),
  fc.string({ maxLength: 6 }),
);
const mutation = fc.record({ at: fc.nat({ max: 2000 }), drop: fc.nat({ max: 40 }), put: piece });

function mangled(text: string, mutations: readonly { at: number; drop: number; put: string }[]): string {
  return mutations.reduce((now, { at, drop, put }) => {
    const place = now.length === 0 ? 0 : at % now.length;
    return now.slice(0, place) + put + now.slice(place + drop);
  }, text);
}

function readSoundly(text: string): void {
  const log = new Log();
  const read = readReadings('g.csv', text, FORM, OFFSETS, epochDay('2027-12-31'), log);
  const said = log.sorted();
  const lines = text.split(/\r\n?|\n/u).length;
  for (const { place, because } of said) {
    expect(because).not.toBe('');
    if (place) expect(place.line >= 1 && place.line <= lines && place.column >= 1 && place.length >= 1).toBe(true);
  }
  renderText(said, new Map([['g.csv', { shown: 'g.csv', text }]]));
  if (!read) expect(said.some(({ weight }) => weight === 'error')).toBe(true);
  const readings = read?.readings ?? [];
  readings.forEach(({ utcMinute, humidity, celsius }, index) => {
    expect(Number.isFinite(utcMinute)).toBe(true);
    expect(humidity >= 0 && humidity <= 1).toBe(true);
    expect(celsius === null || (celsius > -20 && celsius < 60)).toBe(true);
    expect(utcMinute).toBeGreaterThan(readings[index - 1]?.utcMinute ?? Number.NEGATIVE_INFINITY);
  });
  for (const { seconds } of read?.mists ?? []) expect(seconds > 0 && seconds <= 86_400).toBe(true);
}

describe('a mangled log', () => {
  it('is read or refused, never a fault', () => {
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: 12 }), (mutations) =>
        readSoundly(mangled(SOUND, mutations)),
      ),
      { seed: 4, numRuns: 400 },
    );
  });

  it('of nothing but odd pieces is read or refused', () => {
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 60 }), (pieces) => readSoundly(pieces.join(''))),
      { seed: 5, numRuns: 400 },
    );
  });

  it('gives values that stand in bounds, or none, whatever rows it lost or doubled', () => {
    const compiled = compiledFern(fernHousehold());
    const { lines } = gaugeLog(compiled, { ...WEEK, days: 3 });
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            from: fc.nat({ max: 431 }),
            count: fc.nat({ max: 200 }),
            to: fc.double({ min: 0, max: 100, noNaN: true }),
          }),
          { maxLength: 3 },
        ),
        (spoilt) => {
          const rows = lines.map((line, index) => {
            const hit = spoilt.find(({ from, count }) => index >= from && index < from + count);
            return hit ? { ...line, humidity: Math.round(hit.to + (index % 5)) } : line;
          });
          const { fitted, log } = fitOfLog(compiled, csvOf(rows));
          if (!fitted) expect(log.has('error')).toBe(true);
          for (const { value, low, high } of fitted?.fit.values ?? []) {
            expect(low > 0 && low < value && value < high && Number.isFinite(high)).toBe(true);
            expect(high / low).toBeLessThan(9.001);
          }
        },
      ),
      { seed: 6, numRuns: 8 },
    );
  });
});
