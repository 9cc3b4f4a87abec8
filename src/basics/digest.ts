import { createHash } from 'node:crypto';

/** Numbers count to so many digits: the last bit of an exponential differs from one version of the runtime to the next. */
const DIGITS = 12;

/** Returns 32 hex digits that stand for a value: equal for equal JSON, whatever the order of keys and the last bits of numbers. */
export function digestOf(value: unknown): string {
  return createHash('sha256').update(JSON.stringify(value, sortedKeys)).digest('hex').slice(0, 32);
}

function sortedKeys(_key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isInteger(value)) return Number(value.toPrecision(DIGITS));
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  if (ArrayBuffer.isView(value)) return Array.from(value as unknown as ArrayLike<number>);
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}
