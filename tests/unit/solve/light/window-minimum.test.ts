import fc from 'fast-check';
import { expect, test } from 'vitest';
import { windowMinimum } from '../../../../src/solve/light/window-minimum.ts';

const NOTHING = 999;

test('the least of every moving window is that of looking through it', () => {
  const given = fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 1, maxLength: 30 }).chain((values) =>
    fc.record({
      values: fc.constant(values),
      span: fc.tuple(fc.nat(values.length - 1), fc.nat(values.length - 1)),
      reach: fc.nat(6),
    }),
  );
  fc.assert(
    fc.property(given, ({ values, span, reach }) => {
      const [low, high] = [Math.min(...span), Math.max(...span)];
      const first = Int32Array.from(values, (_, at) => Math.max(0, at - reach));
      const last = Int32Array.from(values, (_, at) => Math.min(values.length - 1, at + reach));
      const least = new Int32Array(values.length);
      const queue = new Int32Array(values.length);
      windowMinimum(Int32Array.from(values), low, high, first, last, 0, values.length - 1, least, queue, NOTHING);
      const looked = values.map((_, at) => {
        const inside = values.filter((__, other) => other >= low && other <= high && Math.abs(other - at) <= reach);
        return Math.min(NOTHING, ...inside);
      });
      expect([...least]).toEqual(looked);
    }),
    { seed: 3, numRuns: 300 },
  );
});
