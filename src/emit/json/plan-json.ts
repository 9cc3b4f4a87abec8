import type { Plan } from '../../plan/plan.ts';

/** Returns plan.json: fixed key order, two-space indent, lists of plain numbers on one line. */
export function planJson(plan: Plan): string {
  return `${compactNumbers(JSON.stringify(plan, null, 2))}\n`;
}

/** A raw line break never stands inside a JSON string, so only real lists match. */
function compactNumbers(json: string): string {
  return json.replace(
    /\[\n\s+(-?[\d.]+(?:e[+-]?\d+)?(?:,\n\s+-?[\d.]+(?:e[+-]?\d+)?)*)\n\s+\]/gi,
    (_whole, numbers: string) => {
      return `[${numbers.replace(/\n\s+/g, ' ')}]`;
    },
  );
}
