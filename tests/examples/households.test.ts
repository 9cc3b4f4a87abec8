import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/plan/plan.ts';
import { faultsOfPlan } from './check-plan.ts';
import { missingFields } from './contract-fields.ts';
import { compiled, HOUSEHOLDS, type Household, rulesOf } from './every-household.ts';

/** The plan as others read it: through its JSON. */
function planOf(household: Household): Plan {
  const { plan, diagnostics } = compiled(household);
  if (!plan) throw new Error(diagnostics.map(({ code, because }) => `${code}: ${because}`).join('\n'));
  return JSON.parse(JSON.stringify(plan)) as Plan;
}

describe.each(HOUSEHOLDS)('$name', (household) => {
  it('compiles without an error', () => {
    const { diagnostics } = compiled(household);
    expect(diagnostics.filter(({ weight }) => weight === 'error' || weight === 'refusal')).toEqual([]);
  });

  it('has a plan that holds against the file, checked apart', () => {
    expect(faultsOfPlan(planOf(household), rulesOf(household))).toEqual([]);
  });

  it('has every field that others build on', () => expect(missingFields(planOf(household))).toEqual([]));
});

describe('the check of a plan', () => {
  const household = HOUSEHOLDS.find(({ name }) => name === 'reading-room');
  const faultsAfter = (change: (plan: Plan) => void): readonly string[] => {
    if (!household) throw new Error('no example');
    const plan = structuredClone(planOf(household));
    change(plan);
    return faultsOfPlan(plan, rulesOf(household));
  };
  type Loose = { [K in keyof Plan['lighting'][number]]: Plan['lighting'][number][K] };
  const dial = (plan: Plan): Loose & { settings: { from: string; windows: { on: string }[]; slots: number[] }[] } =>
    plan.lighting[0] as never;

  it.each<[string, string, (plan: Plan) => void]>([
    ['a pin that is not in the window', 'slots', (plan) => dial(plan).settings[2]?.slots.pop()],
    [
      'a window that is moved',
      'by the wall clock',
      (plan) => Object.assign(dial(plan).settings[1]?.windows[0] ?? {}, { on: '07:30' }),
    ],
    ['a gap between settings', 'gap', (plan) => Object.assign(dial(plan).settings[3] ?? {}, { from: '2027-04-10' })],
    ['another worst error', 'worst error', (plan) => Object.assign(dial(plan), { worstErrorMinutes: 12 })],
    ['another offset', 'offset', (plan) => Object.assign(plan.site, { standardOffsetMinutes: 0 })],
    ['a feed after the plan', 'feed', (plan) => Object.assign(plan.feeding[0] ?? {}, { date: '2031-01-01' })],
  ])('sees %s', (_, word, change) => {
    expect(faultsAfter(change).some((fault) => fault.includes(word))).toBe(true);
  });

  it('misses no field that is gone', () => {
    if (!household) throw new Error('no example');
    const { lighting: _, ...plan } = planOf(household);
    expect(missingFields(plan)).toContain(' lacks lighting');
  });
});
