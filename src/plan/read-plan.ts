import type { Plan } from './plan.ts';

export type PlanRead = { readonly ok: true; readonly plan: Plan } | { readonly ok: false; readonly reason: string };

const LISTS = [
  'people',
  'enclosures',
  'hardware',
  'lighting',
  'misting',
  'feeding',
  'rotation',
  'chores',
  'stock',
  'away',
  'events',
  'notPlanned',
  'loads',
  'assumptions',
  'warnings',
] as const;
const TEXTS = ['id', 'made', 'tool', 'name', 'timezone', 'from', 'to', 'units', 'paper', 'language'] as const;

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
  const missing = [
    ...TEXTS.filter((key) => typeof value[key] !== 'string'),
    ...LISTS.filter((key) => !Array.isArray(value[key])),
    ...(typeof value.revision === 'number' ? [] : ['revision']),
    ...(isRecord(value.site) ? [] : ['site']),
    ...(isRecord(value.digests) ? [] : ['digests']),
  ];
  if (missing.length > 0)
    return {
      ok: false,
      reason: `it is damaged: ${missing.slice(0, 3).join(', ')} ${missing.length === 1 ? 'is' : 'are'} missing`,
    };
  return { ok: true, plan: value as unknown as Plan };
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
