/** The lights of a made-up shelf as solved, and what of them a test asks for. */
import { Log } from '../../src/diagnostics/log.ts';
import type { DialPlan, DialSetting, Plan } from '../../src/plan/plan.ts';
import type { Care } from '../../src/resolve/care.ts';
import { type LightingResult, solveLighting } from '../../src/solve/lighting.ts';

/** Plans the lights of a household, with the codes of what is said. */
export function solved(
  care: Care,
  earlier: Plan | null = null,
  today = care.plan.from,
): LightingResult & { readonly codes: readonly string[] } {
  const log = new Log();
  const result = solveLighting(care, earlier, today, log);
  return { ...result, codes: log.sorted().map(({ code }) => code) };
}

/** Returns the plan of a timer, which must have one. */
export function dialOf({ lighting }: LightingResult, id: string): DialPlan {
  const dial = lighting.find(({ device }) => device === id);
  if (!dial) throw new Error(id);
  return dial;
}

/** Returns the setting in force on a date. */
export function settingAt(dial: DialPlan, date: string): DialSetting {
  const setting = dial.settings.find(({ from, to }) => from <= date && date <= to);
  if (!setting) throw new Error(`${dial.device} on ${date}`);
  return setting;
}
