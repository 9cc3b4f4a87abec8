/** The worst deviation of even sequences against HiGHS, with and without days apart. Computed; no published source. */
import { describe, expect, it } from 'vitest';
import type { EvenProblem } from '../../../src/science/even-problem.ts';
import { evenSequence } from '../../../src/science/even-sequence.ts';
import { Choices } from '../../generated/random.ts';
import { leastWorstDeviation } from './mixed-integer.ts';

const SECONDS = 20;
const INSTANCES = 24;

function drawn(choices: Choices): EvenProblem {
  const length = choices.between(6, 16);
  const first = choices.between(1, Math.max(1, Math.floor(length / 3)));
  const second = choices.between(1, Math.max(1, Math.floor(length / 4)));
  const counts = [first, second, length - first - second];
  const gaps = choices.chance(0.6) ? [choices.between(0, 2), choices.between(0, 2), choices.between(0, 2)] : null;
  const days = Array.from({ length }, (_, place) => place);
  if (!gaps) return { rates: counts, denominator: length, counts };
  const [own = 0, other = 0, both = 0] = gaps;
  const apart = [
    [own, both, 0],
    [both, other, 0],
    [0, 0, 0],
  ];
  const cycleDays = choices.chance(0.5) ? length : null;
  return { rates: counts, denominator: length, counts, spacing: { days, apart, notBefore: [0, 0, 0], cycleDays } };
}

describe('even sequences against a program', () => {
  it('have the same worst deviation', () => {
    const choices = new Choices(51);
    let [compared, spaced] = [0, 0];
    for (let instance = 0; instance < INSTANCES; instance++) {
      const problem = drawn(choices);
      const ours = evenSequence(problem);
      const program = leastWorstDeviation(problem, SECONDS);
      if (!ours) {
        expect(program.worst).toBeNull();
        continue;
      }
      expect(program.isProven).toBe(true);
      expect(ours.gap).toBeNull();
      expect(ours.worst).toBe(program.worst);
      compared++;
      spaced += problem.spacing ? 1 : 0;
    }
    console.info(`even sequences: ${compared} equal HiGHS, ${spaced} of them with days apart`);
    expect(compared).toBeGreaterThan(15);
    expect(spaced).toBeGreaterThan(5);
  });
});
