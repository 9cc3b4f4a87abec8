/** The plan of an example, compiled in this process from the folder of the project. */
import { readFileSync } from 'node:fs';
import type { Plan } from '../../src/plan/plan.ts';
import { compiledHousehold, planIn } from '../compiled-household.ts';

export function exampleText(example: string): string {
  return readFileSync(`examples/${example}`, 'utf8');
}

export function examplePlan(example: string): Plan {
  return planIn(compiledHousehold(exampleText(example), { file: example }));
}
