import { describe, expect, it } from 'vitest';
import { corrected, saltTest, stuckGauge, UNTESTED } from '../../../src/fit/gauge.ts';

describe('a salt test', () => {
  it('puts both points where they belong, whether salts or their humidity are named', () => {
    for (const text of ['NaCl=72,MgCl2=35', '75.3=72, 33=35', 'MgCl2.6H2O = 35 %; nacl = 72 %']) {
      const test = saltTest(text, 25);
      if (!test.ok) throw new Error(`${text}: ${test.why}`);
      expect(corrected(0.72, test.correction)).toBeCloseTo(0.753, 3);
      expect(corrected(0.35, test.correction)).toBeCloseTo(0.33, 2);
    }
  });

  it.each([
    ['75.3=72', 'form'],
    ['75.3=72,33=35,97=90', 'form'],
    ['salt=72,33=35', 'form'],
    ['75.3=0,33=35', 'form'],
    ['75.3=72,72=70', 'too near'],
    ['75.3=35,33=72', 'implausible'],
    ['75.3=40,33=10', 'implausible'],
  ])('%s is refused: %s', (text, why) => {
    expect(saltTest(text, 25)).toEqual({ ok: false, why });
  });

  it('never corrects beyond dry and saturated air; without a test nothing is changed', () => {
    const test = saltTest('75.3=70,33=30', 25);
    if (!test.ok) throw new Error(test.why);
    expect(corrected(1, test.correction)).toBe(1);
    expect(corrected(0.37, UNTESTED)).toBe(0.37);
  });
});

describe('a stuck gauge', () => {
  const hours = (values: readonly number[], everyMinutes = 30) =>
    values.map((humidity, row) => ({ utcMinute: row * everyMinutes, humidity, celsius: null, row }));
  const lively = (count: number) => Array.from({ length: count }, (_, i) => 0.5 + 0.01 * (i % 7));

  it('is one that says the same for twelve hours', () => {
    const stuck = stuckGauge(hours([...lively(20), ...new Array(26).fill(0.61), ...lively(20)]));
    expect(stuck).toMatchObject({ humidity: 0.61, row: 20, hours: 12.5 });
    expect(stuckGauge(hours([...lively(20), ...new Array(23).fill(0.61), ...lively(20)]))).toBeNull();
  });

  it('is not one in saturated air, but for three days', () => {
    expect(stuckGauge(hours([...lively(20), ...new Array(40).fill(1), ...lively(20)]))).toBeNull();
    expect(stuckGauge(hours([...lively(20), ...new Array(150).fill(1), ...lively(20)]))).toMatchObject({ hours: 74.5 });
  });

  it('is one that knows three values in all', () => {
    expect(stuckGauge(hours([0.4, 0.5, 0.6, 0.4, 0.5, 0.6]))).not.toBeNull();
    expect(stuckGauge([])).toBeNull();
  });
});
