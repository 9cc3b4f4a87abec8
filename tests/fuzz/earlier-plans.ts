import { compile } from '../../src/compile.ts';
import { planJson } from '../../src/emit/json/plan-json.ts';
import { readPlan } from '../../src/plan/read-plan.ts';
import { generateHousehold } from '../property/household-generator.ts';
import type { Target } from './campaign.ts';
import { compiledWell, PROFILES, textOf } from './compile-target.ts';
import { changedJson, damagedBytes } from './mutations.ts';

interface Base {
  readonly household: string;
  readonly changed: string;
  readonly plan: string;
  readonly from: string;
}

let bases: readonly Base[] | null = null;

/** Plans of some households, and what the keeper changed since. */
function basesOf(): readonly Base[] {
  bases ??= Array.from({ length: 6 }, (_, seed) => {
    const household = generateHousehold(seed + 300, { days: 28, enclosures: 1 });
    const { plan } = compile({
      file: 'fuzz.yaml',
      text: household,
      profile: (id) => ({ file: `profiles/${id}.yaml`, text: PROFILES.get(id) ?? '' }),
      profileIds: [],
      earlier: null,
      today: { date: '2027-01-01' },
      version: 'fuzz',
    });
    const changed = household
      .replace(/open: \d+ %/, 'open: 21 %')
      .replace(/feeds_at: "0\d/, 'feeds_at: "10')
      .replace(/latitude: (-?)\d+/, 'latitude: $133');
    return plan ? [{ household, changed, plan: planJson(plan), from: plan.from }] : [];
  }).flat();
  return bases;
}

/** A plan.json that stands in the folder of results, damaged, when the household is compiled again. */
export const earlierPlans: Target = {
  name: 'plan.json',
  share: 0.15,
  prepare: async () => void basesOf(),
  run: async (draw, index) => {
    const { household, changed, plan, from } = draw.one(basesOf());
    const text = index % 3 === 0 ? textOf(damagedBytes(Buffer.from(plan), draw)) : changedJson(plan, draw);
    if (text === null) return 'no text';
    const read = readPlan(text);
    if (!read.ok) {
      if (read.reason === '' || read.reason.includes('undefined')) throw new Error(`said of a plan: ${read.reason}`);
      return 'refused';
    }
    const today = `${from.slice(0, 8)}${String(Math.min(28, Number(from.slice(8)) + draw.whole(0, 12))).padStart(2, '0')}`;
    return compiledWell({ text: draw.chance(0.8) ? changed : household, earlier: read.plan, today });
  },
};
