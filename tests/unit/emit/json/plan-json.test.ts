import { describe, expect, it } from 'vitest';
import { planBytes, planJson } from '../../../../src/emit/json/plan-json.ts';
import type { Plan } from '../../../../src/plan/plan.ts';
import { pagePlan } from '../../../generated/page-plan.ts';

/** Lists longer than are put into text at once, letters of two and four bytes, and a plan kept in the plan. */
function longPlan(): Plan {
  const plan = pagePlan();
  const [feed] = plan.feeding;
  if (!feed) throw new Error('the plan feeds nobody');
  const feeding = Array.from({ length: 1000 }, (_, slot) => ({ ...feed, slot, portion: `${slot} [1,\n2] °C ✓ 🦎` }));
  return { ...plan, feeding, previous: { ...plan, feeding } } as Plan;
}

/** The text as the platform writes it, each list of plain numbers then put on one line, line by line. */
function plainly(plan: Plan): string {
  const lines: string[] = [];
  for (const line of JSON.stringify(plan, null, 2).split('\n')) {
    const last = lines.length - 1;
    const open = lines[last] ?? '';
    const isOpen = /\[(-?[\d.e+-]+,)*(-?[\d.e+-]+)?$/.test(open.replaceAll(', ', ',').replace(/^.*\[/, '['));
    if (isOpen && /^\s*-?[\d.]+(e[+-]?\d+)?,?$/i.test(line)) lines[last] = open + line.trim().replace(/,$/, ', ');
    else if (isOpen && /^\s*\],?$/.test(line) && open !== '[') lines[last] = open + line.trim();
    else lines.push(line);
  }
  return `${lines.join('\n')}\n`;
}

describe('plan.json', () => {
  it.each([
    ['a small plan', pagePlan()],
    ['long lists and an earlier plan', longPlan()],
    ['empty lists', { ...pagePlan(), feeding: [], chores: [], misting: [] } as Plan],
  ])('is the same in pieces as in one: %s', (_name, plan) => {
    expect(planJson(plan) === plainly(plan)).toBe(true);
    expect(JSON.parse(planJson(plan))).toEqual(JSON.parse(JSON.stringify(plan)));
    expect(Buffer.from(planBytes(plan)).equals(Buffer.from(planJson(plan)))).toBe(true);
  });
});
