/** The plan of an example, compiled in this process from the folder of the project. */
import { readFileSync } from 'node:fs';
import type { Plan } from '../../src/plan/plan.ts';
import { compiledText } from '../generated/page-household.ts';

export function exampleText(example: string): string {
  return readFileSync(`examples/${example}`, 'utf8');
}

export function examplePlan(example: string): Plan {
  const { plan } = compiledText(exampleText(example), '2027-01-01', example);
  if (!plan) throw new Error(`${example} has no plan`);
  return plan;
}
