import type { Plan } from './plan.ts';
import { planFault } from './plan-shape.ts';

export type PlanRead = { readonly ok: true; readonly plan: Plan } | { readonly ok: false; readonly reason: string };

/** Reads the text of a plan.json; a reason in plain words where it is damaged or is no plan of this program. */
export function readPlan(text: string): PlanRead {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { ok: false, reason: 'it is damaged: it is not JSON' };
  }
  if (!isRecord(value) || !('format' in value) || !('lighting' in value))
    return { ok: false, reason: 'it is not a plan of this program' };
  if (value.format !== 1)
    return { ok: false, reason: `it has format ${String(value.format)}, and this version reads format 1` };
  const fault = planFault(value);
  if (fault !== null) return { ok: false, reason: `it is damaged: ${fault}` };
  return { ok: true, plan: value as unknown as Plan };
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
