import { createHash } from 'node:crypto';

/** Returns 32 hex digits that stand for a value: equal for equal JSON, whatever the order of keys. */
export function digestOf(value: unknown): string {
  return createHash('sha256').update(JSON.stringify(value, sortedKeys)).digest('hex').slice(0, 32);
}

function sortedKeys(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  if (ArrayBuffer.isView(value)) return Array.from(value as unknown as ArrayLike<number>);
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}
