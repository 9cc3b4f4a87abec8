import { expect, it } from 'vitest';
import { digestOf } from '../../../src/basics/digest.ts';

it('is equal whatever the order of keys and the last bits of numbers', () => {
  expect(digestOf({ a: 1, b: [0.1 + 0.2, 7.979601448202563] })).toBe(digestOf({ b: [0.3, 7.979601448202565], a: 1 }));
});

it.each([
  [{ a: 1 }, { a: 2 }],
  [{ a: 0.5 }, { a: 0.5000001 }],
  [123_456_789_012_345, 123_456_789_012_346],
  [
    [1, 2],
    [2, 1],
  ],
  [{ a: null }, {}],
])('tells %j from %j', (one, other) => {
  expect(digestOf(one)).not.toBe(digestOf(other));
});
