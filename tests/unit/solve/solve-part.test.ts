import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../../src/diagnostics/diagnostic.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { compiledHousehold, planIn } from '../../compiled-household.ts';

const TEXT = readFileSync(new URL('../../golden/replanned.yaml', import.meta.url), 'utf8')
  .replace('shelf_life: 10 days', 'shelf_life: 10 days, in_stock: 60')
  .replace('settings_at_most: 3', 'settings_at_most: 2, tolerance: 15 min')
  .replace('plan:', 'shopping: { days: [fri] }\nplan:');

interface Said {
  readonly plan: Plan;
  readonly diagnostics: readonly Diagnostic[];
}

function compiled(text: string, today: string, earlier: Plan | null): Said {
  const made = compiledHousehold(text, { today, earlier });
  return { plan: planIn(made), diagnostics: made.diagnostics };
}

const withChore = (every: string): string => TEXT.replace('every: 2 weeks', `every: ${every}`);

describe('what is said of a part that is copied', () => {
  const first = compiled(withChore('2 weeks'), '2027-01-01', null);
  const second = compiled(withChore('1 week'), '2027-01-20', first.plan);
  const text = `# a line more\n${withChore('3 weeks')}`;
  const third = compiled(text, '2027-02-10', second.plan);

  it('is what was said when it was solved, two revisions ago, at the places where the file has it now', () => {
    const codes = third.diagnostics.map(({ code }) => code);
    for (const code of ['stock-runs-out', 'tolerance-out-of-reach', 'feed-outside-hours'])
      expect(codes).toContain(code);
    expect(third.plan.revision).toBe(3);
    expect(third.diagnostics).toEqual(compiled(text, '2027-01-01', null).diagnostics);
  });

  it('is kept in the plan, by part, and not with its older revisions', () => {
    expect(Object.keys(third.plan.said ?? {})).toEqual(['feeding.moss', 'lighting.lower', 'lighting.upper', 'stock']);
    expect(third.plan.said).toEqual(first.plan.said);
    expect(third.plan.previous?.said).toEqual(first.plan.said);
    expect(third.plan.previous?.previous?.said).toEqual({});
  });

  it('is said as well by a run that changes nothing', () => {
    expect(compiled(text, '2027-03-01', third.plan)).toEqual({ plan: third.plan, diagnostics: third.diagnostics });
  });
});

describe('a part that was refused', () => {
  it('is refused in every later run', () => {
    const misted = readFileSync(new URL('../../errors/cases/repeat-cycle-no-fit.yaml', import.meta.url), 'utf8');
    const now = compiled(misted, '2027-01-01', null);
    const later = compiled(misted, '2027-01-20', now.plan);
    expect(now.diagnostics.map(({ code }) => code)).toContain('repeat-cycle-no-fit');
    expect(later.diagnostics).toEqual(now.diagnostics);
  });
});
