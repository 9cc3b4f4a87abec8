/** What a person covers of the mesh, or uncovers again, from one plan to the next. */
import type { MistAdvice, MistPlan, Plan } from './plan.ts';

/** Advice that asks for a covering, and when. */
const COVER_CODES: readonly string[] = ['cover-mesh', 'cover-until'];

export interface CoverChange {
  readonly enclosure: string;
  /** What is advised now; empty where a covering that was advised is no longer. */
  readonly advice: readonly MistAdvice[];
}

/** Returns the advice about coverings, which older revisions keep for the sheet. */
export function coverAdvice({ advice }: Pick<MistPlan, 'advice'>): readonly MistAdvice[] {
  return advice.filter(({ code }) => COVER_CODES.includes(code));
}

/** Returns the enclosures whose covering is other than before, in the plan's order; what is over before `on` is left out. */
export function coverChanges(before: Plan, after: Plan, on: string): readonly CoverChange[] {
  return after.misting.flatMap(({ enclosure, advice }) => {
    const then = before.misting.find((each) => each.enclosure === enclosure);
    const [was, is] = [coming(then ?? { advice: [] }, on), coming({ advice }, on)];
    return asked(was) === asked(is) ? [] : [{ enclosure, advice: is }];
  });
}

function coming(mist: Pick<MistPlan, 'advice'>, on: string): readonly MistAdvice[] {
  return coverAdvice(mist).filter(({ values }) => values?.off === undefined || String(values.off) > on);
}

/** How far and when; how much water it saves is no change of the covering. */
function asked(advice: readonly MistAdvice[]): string {
  return JSON.stringify(advice.map(({ code, values }) => [code, values?.open, values?.on, values?.off]));
}
