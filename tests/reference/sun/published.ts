/** Access to published-values.json: check values from outside the project, each with its source and provenance. */
import { readFileSync } from 'node:fs';

export interface Published {
  readonly id: string;
  readonly inputs: unknown;
  readonly expected: unknown;
  readonly tolerance: string;
  readonly source: string;
  readonly provenance: string;
}

const file = new URL('./published-values.json', import.meta.url);
export const published: readonly Published[] = (
  JSON.parse(readFileSync(file, 'utf8')) as { readonly values: readonly Published[] }
).values;

/** Ids that a test has asked for, so that a last test can say which were never looked at. */
const asked = new Set<string>();

export function one(id: string): Published {
  const found = published.find((value) => value.id === id);
  if (found === undefined) throw new Error(`no published value ${id}`);
  asked.add(id);
  return found;
}

export function family(prefix: string): readonly Published[] {
  const found = published.filter((value) => value.id.startsWith(prefix));
  for (const value of found) asked.add(value.id);
  return found;
}

export function neverAsked(): readonly string[] {
  return published.map((value) => value.id).filter((id) => !asked.has(id));
}

export function numberIn(value: unknown, key: string): number {
  const found = (value as Readonly<Record<string, unknown>>)[key];
  if (typeof found !== 'number') throw new Error(`no number ${key} in ${JSON.stringify(value)}`);
  return found;
}

export function textIn(value: unknown, key: string): string {
  const found = (value as Readonly<Record<string, unknown>>)[key];
  if (typeof found !== 'string') throw new Error(`no text ${key} in ${JSON.stringify(value)}`);
  return found;
}

export function numberOf(value: unknown): number {
  if (typeof value !== 'number') throw new Error(`not a number: ${JSON.stringify(value)}`);
  return value;
}
