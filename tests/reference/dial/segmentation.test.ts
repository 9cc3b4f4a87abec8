/**
 * The least worst error against closed forms and tabulated day lengths (segmentation.json, each with its source). The curves are sampled
 * 3600 times, as the tolerance of the closed forms asks; lengths step by 1 min, a 1440th of the amplitude's range.
 */
import { expect, test } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import { dayLengthsUtc } from '../../../src/science/sun.ts';
import { leastErrors, solveDial } from '../../../src/solve/light/solve-dial.ts';
import { plainProblem } from './plain-problem.ts';
import table from './segmentation.json' with { type: 'json' };

const SAMPLES = 3600;
const AMPLITUDE_MINUTES = 720;
/** 1e-3 of the amplitude, and half a minute by which a length can miss its level. */
const TOLERANCE = 1e-3 + 0.5 / AMPLITUDE_MINUTES;

function sampled(angleOf: (share: number) => number): Int32Array {
  return Int32Array.from({ length: SAMPLES }, (_, at) =>
    Math.round((AMPLITUDE_MINUTES + AMPLITUDE_MINUTES * Math.cos(angleOf((at + 0.5) / SAMPLES))) * 10),
  );
}

function worstShare(targets: Int32Array, settingsAtMost: number): number {
  const { worstErrorTenths } = leastErrors(plainProblem(targets, { stepMinutes: 1, settingsAtMost }));
  return worstErrorTenths / 10 / AMPLITUDE_MINUTES;
}

const entries = (prefix: string) =>
  table.values
    .filter(({ id }) => id.startsWith(prefix))
    .map(({ id, inputs, expected }) => {
      const pieces = 'pieces' in inputs && inputs.pieces !== undefined ? inputs.pieces : Number(id.split('-').at(-1));
      return { id, pieces, expected };
    });

test('a year that starts at the longest day reaches the closed form', () => {
  const targets = sampled((share) => 2 * Math.PI * share);
  const rows = entries('SEG-LIN-MAX').map(({ id, pieces, expected }) => {
    const share = worstShare(targets, pieces);
    expect(Math.abs(share - Number(expected)), id).toBeLessThan(TOLERANCE);
    return Math.abs(share - Number(expected));
  });
  console.info(`closed form from the maximum: worst difference ${Math.max(...rows).toFixed(5)} of the amplitude`);
});

test('a year cut where the circular optimum changes reaches it, and no other cut does better', () => {
  for (const { id, pieces, expected } of entries('SEG-CIRC')) {
    const bands = Math.floor(pieces / 2) + 1;
    const cut = 2 * Math.PI - Math.acos(1 - 2 / bands);
    const share = worstShare(
      sampled((at) => cut + 2 * Math.PI * at),
      pieces,
    );
    expect(Math.abs(share - Number(expected)), id).toBeLessThan(TOLERANCE);
    for (const turn of pieces <= 4 ? [0.4] : []) {
      const other = worstShare(
        sampled((at) => cut + 2 * Math.PI * (at + turn)),
        pieces,
      );
      expect(other, id).toBeGreaterThan(Number(expected) - TOLERANCE);
    }
  }
});

test('from solstice to solstice error and change dates are those of the closed form', () => {
  const targets = sampled((share) => Math.PI * share);
  for (const { id, pieces, expected } of entries('SEG-HALF')) {
    if (typeof expected === 'number' || !('error' in expected)) throw new Error(`${id} has no error`);
    const solution = solveDial(plainProblem(targets, { settingsAtMost: pieces }));
    expect(Math.abs(solution.worstErrorTenths / 7200 - Number(expected.error)), id).toBeLessThan(TOLERANCE);
    const breaks = solution.settings.slice(1).map(({ fromDayIndex }) => (fromDayIndex / SAMPLES) * 180);
    expect(breaks).toHaveLength(pieces - 1);
    breaks.forEach((degrees, at) => {
      expect(Math.abs(degrees - (expected.breakpoints_deg?.[at] ?? 0)), `${id} break ${at}`).toBeLessThan(0.1);
    });
  }
});

test('day lengths of 2027 at three latitudes are met as tabulated, with 15 min pins and with free levels', () => {
  let worst = 0;
  for (const { id, inputs, expected } of table.values) {
    if (!('lat' in inputs) || inputs.lat === undefined || typeof expected === 'number' || !('k1_cal' in expected))
      continue;
    const minutes = dayLengthsUtc(inputs.lat, 0, epochDay('2027-01-01'), 365);
    const targets = Int32Array.from(minutes, (each) => Math.round(each * 10));
    for (const [key, value] of Object.entries(expected)) {
      const pieces = /^k(\d+)_cal(_q15)?$/.exec(key);
      if (!pieces || typeof value !== 'number') continue;
      const stepMinutes = pieces[2] ? 15 : 1;
      const problem = plainProblem(targets, { stepMinutes, settingsAtMost: Number(pieces[1]) });
      const difference = leastErrors(problem).worstErrorTenths / 10 - value;
      const quantum = pieces[2] ? 0 : 0.5;
      expect(difference, `${id} ${key}`).toBeGreaterThan(-0.3);
      expect(difference, `${id} ${key}`).toBeLessThan(0.3 + quantum);
      if (pieces[2]) worst = Math.max(worst, Math.abs(difference));
    }
  }
  console.info(`tabulated 15 min levels: worst difference ${worst.toFixed(2)} min`);
  expect(worst).toBeGreaterThan(0);
});

test.each([
  [15, 75],
  [30, 150],
])('one duration on %i min pins is at most half a pin from its target', (stepMinutes, halfPinTenths) => {
  let worst = 0;
  for (let tenths = 0; tenths <= 14_400; tenths += 5) {
    const problem = plainProblem(Int32Array.of(tenths), { stepMinutes, settingsAtMost: 1 });
    worst = Math.max(worst, leastErrors(problem).worstErrorTenths);
  }
  expect(worst).toBe(halfPinTenths);
});
