/** The shipped examples and the households of this folder, compiled once each. */
import { readdirSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { parse } from 'yaml';
import { type Compiled, compile } from '../../src/compile.ts';
import { PROFILE_IDS, profileText } from '../shipped-profiles.ts';
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

const compiledAlready = new Map<string, Compiled>();

/** Compiles a household as of its plan's first day, without an earlier plan. */
export function compiled({ name, text }: Household): Compiled {
  const known = compiledAlready.get(text);
  if (known) return known;
  const fresh = compile({
    file: `${name}.yaml`,
    text,
    profile: (id) => (PROFILE_IDS.includes(id) ? { file: `profiles/${id}.yaml`, text: profileText(id) } : null),
    profileIds: PROFILE_IDS,
    earlier: null,
    today: { date: String(planOf(text)?.from) },
    version: '1.0.0',
  });
  compiledAlready.set(text, fresh);
  return fresh;
}

/** Reads what the file asks of its dials, apart from the program's own reading. */
export function rulesOf({ text }: Household): DialRules {
  const plan = planOf(text) ?? {};
  return {
    changeOn: Array.isArray(plan.change_on) ? plan.change_on.map(String) : null,
    settingsAtMost: numberOf(plan.settings_at_most),
    toleranceMinutes: numberOf(plan.tolerance),
    atLeastBetweenDays: numberOf(plan.at_least_between) ?? 1,
    jumpAtMostMinutes: numberOf(plan.jump_at_most),
  };
}

function planOf(text: string): Readonly<Record<string, unknown>> | undefined {
  return (parse(text) as { readonly plan?: Readonly<Record<string, unknown>> }).plan;
}

/** Minutes or days as these files write them: a number, then `min` or `days`. */
function numberOf(value: unknown): number | null {
  return value === undefined ? null : Number.parseFloat(String(value));
}
