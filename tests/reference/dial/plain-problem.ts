import type { DialProblem } from '../../../src/solve/light/dial-problem.ts';

/** A dial without any limit but the given ones; targets in tenths of a minute, the same longest and shortest. */
export function plainProblem(targetTenths: Int32Array, given: Partial<DialProblem>): DialProblem {
  return {
    days: targetTenths.length,
    firstWeekday: 4,
    highTenths: targetTenths,
    lowTenths: targetTenths,
    stepMinutes: 15,
    placement: { kind: 'midday', minute: 780 },
    noLightBeforeMinute: null,
    noLightAfterMinute: null,
    changeOnWeekdays: null,
    settingsAtMost: null,
    toleranceTenths: null,
    atLeastBetweenDays: 1,
    jumpAtMostMinutes: null,
    earlier: null,
    insideByDay: null,
    past: null,
    ...given,
  };
}
