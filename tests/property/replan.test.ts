/**
 * Chains of edits of generated households, each compiled against the plan that stands: the past is left as it was, rotations go on, events
 * keep who they are, and a change sheet leads from what stands to what is planned. `REPLAN_CHAINS` sets the number of chains,
 * `REPLAN_FIRST` the first seed.
 */

import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../src/basics/calendar-day.ts';
import type { Compiled } from '../../src/compile.ts';
import { emitIcs } from '../../src/emit/ics/ics.ts';
import { planJson } from '../../src/emit/json/plan-json.ts';
import { changesText } from '../../src/emit/text/changes.ts';
import { settingsText } from '../../src/emit/text/settings.ts';
import { changeSheet } from '../../src/plan/change-sheet.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read-plan.ts';
import { compiledHousehold } from '../compiled-household.ts';
import { planSection, rulesOf } from '../examples/every-household.ts';
import { faultsOfSheet } from '../generated/applied-sheet.ts';
import { EDITS, editedHousehold } from '../generated/household-edits.ts';
import { faultsOfReplan } from '../generated/replan-faults.ts';
import { tries } from '../tries.ts';
import { Draw, generateHousehold } from './household-generator.ts';

const CHAINS = Number(process.env.REPLAN_CHAINS ?? tries(5, 40));
const FIRST = Number(process.env.REPLAN_FIRST ?? 0);
const STEPS = 5;

function compiled(text: string, earlier: Plan | null, today: string): Compiled {
  return compiledHousehold(text, { earlier, today });
}

/** Returns the plan as it is read back from its file. */
function stored(plan: Plan): Plan {
  const read = readPlan(planJson(plan));
  if (!read.ok) throw new Error(read.reason);
  return read.plan;
}

interface Step {
  readonly edit: string;
  readonly text: string;
  readonly today: string;
  readonly before: Plan;
  readonly after: Plan;
  readonly compiled: Compiled;
}

/** Edits on random days, several on one day now and then; an edit that cannot be done leaves the file as it was. */
function chainOf(seed: number): readonly Step[] {
  const draw = new Draw(seed + 77_000);
  let text = generateHousehold(seed, { enclosures: draw.whole(1, 2), days: draw.whole(60, 150) });
  let day = epochDay(String(planSection(text).from)) + draw.whole(-10, 5);
  const first = compiled(text, null, isoDateOf(day));
  if (!first.plan) throw new Error(first.diagnostics.map(({ because }) => because).join('\n'));
  let before = stored(first.plan);
  return Array.from({ length: STEPS }).flatMap(() => {
    day += draw.whole(0, 25);
    const edited = editedHousehold(text, draw, day);
    const next = compiled(edited.text, before, isoDateOf(day));
    if (!next.plan) return [];
    const after = next.plan === before ? before : stored(next.plan);
    const step = { edit: edited.name, text: edited.text, today: isoDateOf(day), before, after, compiled: next };
    before = after;
    text = edited.text;
    return [step];
  });
}

const chains = Array.from({ length: CHAINS }, (_, index) => ({ seed: FIRST + index, steps: chainOf(FIRST + index) }));

function faults(steps: readonly Step[], of: (step: Step) => readonly string[]): readonly string[] {
  return steps.flatMap((step) => of(step).map((fault) => `${step.today}, ${step.edit}: ${fault}`));
}

describe.each(chains)('edits of household $seed', ({ steps }) => {
  it('leave the past, go on with the rotations, and keep identities', () => {
    const found = faults(steps, ({ before, after, today, text, compiled: { care } }) =>
      care ? faultsOfReplan({ before, after, care, today, rules: rulesOf({ text }) }) : ['not resolved'],
    );
    expect(found).toEqual([]);
  });

  it('have a change sheet that leads from what stands to what is planned', () => {
    const found = faults(steps, ({ after }) => {
      const { previous } = after;
      if (!previous) return [];
      const on = [after.from, after.made, after.to].sort()[1] ?? after.made;
      return faultsOfSheet(changeSheet(previous, after, on), previous, after);
    });
    expect(found).toEqual([]);
  });

  it('compiled again on any later day are the same bytes', () => {
    for (const { text, after, today } of steps.slice(-2)) {
      const later = isoDateOf(epochDay(today) + 40);
      const again = compiled(text, after, later).plan;
      if (!again) throw new Error(later);
      const write = (plan: Plan) => [
        planJson(plan),
        settingsText(plan),
        changesText(plan),
        ...plan.people.map(({ id }) => emitIcs(plan, id, 'import')),
      ];
      expect(write(again)).toEqual(write(after));
    }
  });
});

it('tries enough', () => {
  const steps = chains.flatMap((chain) => chain.steps);
  const tried = new Set(steps.map(({ edit }) => edit));
  const settings = steps.flatMap(({ after }) => after.lighting.flatMap((dial) => dial.settings));
  console.info(
    `${steps.length} re-plans in ${chains.length} chains, ${tried.size} of ${EDITS.length} kinds of edit, ${settings.filter(({ past }) => past).length} past settings`,
  );
  expect(steps.length).toBeGreaterThan(CHAINS * 3);
  expect(settings.some(({ past }) => past)).toBe(true);
});
