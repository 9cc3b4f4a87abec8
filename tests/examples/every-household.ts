/** The shipped examples and the households of this folder, compiled once each. */
import { readdirSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { parse } from 'yaml';
import type { Compiled } from '../../src/compile.ts';
import { compiledOnce } from '../compiled-household.ts';
import type { DialRules } from './check-plan.ts';

const FOLDERS = [new URL('../../examples/', import.meta.url), new URL('./households/', import.meta.url)];

export interface Household {
  readonly name: string;
  readonly text: string;
}

/** Returns every household file of the two folders, by name. */
export const HOUSEHOLDS: readonly Household[] = FOLDERS.flatMap((folder) =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .sort()
    .map((file) => ({ name: basename(file, '.yaml'), text: readFileSync(new URL(file, folder), 'utf8') })),
);

/** Compiles a household as of its plan's first day, without an earlier plan. */
export function compiled({ name, text }: Household): Compiled {
  return compiledOnce(text, { file: `${name}.yaml`, today: String(planSection(text).from) });
}

/** Reads what a file asks of its dials, apart from the program's own reading. */
export function rulesOf({ text }: Pick<Household, 'text'>): DialRules {
  const plan = planSection(text);
  return {
    changeOn: Array.isArray(plan.change_on) ? plan.change_on.map(String) : null,
    settingsAtMost: numberOf(plan.settings_at_most),
    toleranceMinutes: numberOf(plan.tolerance),
    atLeastBetweenDays: numberOf(plan.at_least_between) ?? 1,
    jumpAtMostMinutes: numberOf(plan.jump_at_most),
  };
}

/** Returns the `plan` of a file as its data stand there; empty where it has none. */
export function planSection(text: string): Readonly<Record<string, unknown>> {
  return (parse(text) as { readonly plan?: Readonly<Record<string, unknown>> }).plan ?? {};
}

/** Minutes or days as these files write them: a number, then `min` or `days`. */
function numberOf(value: unknown): number | null {
  return value === undefined ? null : Number.parseFloat(String(value));
}
