import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { DialWindow } from '../../../src/hardware/pins.ts';
import type { DialProblem } from '../../../src/solve/light/dial-problem.ts';
import { leastErrors, solveDial } from '../../../src/solve/light/solve-dial.ts';
import { tries } from '../../tries.ts';
import { everyPlan } from './every-plan.ts';
import { plainProblem } from './plain-problem.ts';

const RUNS = Number(process.env.DEWDIAL_DIAL_RUNS ?? tries(1200, 12_000));

/** Longest and shortest target of a day; those on half steps are as far from one length as from the next, so that many plans tie. */
type Envelope = readonly [high: number, low: number];

const stepOf = fc.constantFrom(240, 360, 480);
const orNull = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null, freq: 3 });

/** A daylight window that lies about the place of the insets, as the daylight dial of the same enclosure has it. */
function dayAround(
  [before, after]: readonly [number, number],
  { kind, minute }: { readonly kind: string; readonly minute: number },
  step: number,
): DialWindow {
  const place = Math.floor(minute / step + 0.5) * step;
  const [early, late] =
    kind === 'lights-on' ? [Math.min(before, 1), after] : [before, kind === 'lights-off' ? Math.min(after, 1) : after];
  const lengthMinutes = (early + late) * step;
  const edgeless = lengthMinutes === 0 || lengthMinutes === 1440;
  return { onMinute: edgeless ? 0 : (place - early * step + 1440) % 1440, lengthMinutes };
}

const problemOf = stepOf.chain((step) => {
  const pins = 1440 / step;
  const window = fc
    .record({ on: fc.integer({ min: 0, max: pins - 1 }), length: fc.integer({ min: 0, max: pins }) })
    .map(({ on, length }) => ({
      onMinute: length === 0 || length === pins ? 0 : on * step,
      lengthMinutes: length * step,
    }));
  const half = fc.integer({ min: 0, max: Math.floor(pins / 2) });
  const reach = fc.tuple(half, half);
  const most = step === 480 ? 6 : step === 360 ? 5 : 4;
  const loose = fc
    .tuple(fc.integer({ min: 0, max: 36 }), fc.integer({ min: 0, max: 6 }))
    .map(([low, more]): Envelope => [Math.min(14_400, low * 400 + more * 150), low * 400]);
  const halfSteps = fc.integer({ min: 0, max: 2 * pins }).map((half): Envelope => [half * step * 5, half * step * 5]);
  return fc
    .record({
      targets: fc.oneof(
        fc.array(loose, { minLength: 2, maxLength: most }),
        fc.array(halfSteps, { minLength: most, maxLength: most }),
      ),
      firstWeekday: fc.integer({ min: 0, max: 6 }),
      kind: fc.constantFrom('midday' as const, 'lights-on' as const, 'lights-off' as const),
      minute: fc.integer({ min: 0, max: 48 }).map((half) => half * 30),
      before: orNull(fc.integer({ min: 0, max: 24 }).map((hour) => hour * 60)),
      after: orNull(fc.integer({ min: 0, max: 24 }).map((hour) => hour * 60)),
      weekdays: orNull(fc.subarray([0, 1, 2, 3, 4, 5, 6], { minLength: 1 })),
      atMost: orNull(fc.integer({ min: 1, max: 4 })),
      tolerance: orNull(fc.integer({ min: 0, max: 5000 })),
      gap: fc.integer({ min: 1, max: 3 }),
      jump: orNull(fc.integer({ min: 0, max: 4 }).map((steps) => steps * step)),
      earlier: orNull(fc.record({ window, daysSinceChange: orNull(fc.integer({ min: 0, max: 4 })) })),
      inside: fc.option(fc.array(reach, { minLength: 7, maxLength: 7 }), { nil: null, freq: 2 }),
      pastDays: fc.option(fc.integer({ min: 1, max: 3 }), { nil: 0, freq: 2 }),
      pastWindow: window,
    })
    .map((given): DialProblem => {
      const days = given.targets.length;
      const past = given.pastDays > 0 && given.pastDays < days;
      return {
        days,
        firstWeekday: given.firstWeekday,
        highTenths: Int32Array.from(given.targets, ([high]) => high),
        lowTenths: Int32Array.from(given.targets, ([, low]) => low),
        stepMinutes: step,
        placement: { kind: given.kind, minute: given.minute },
        noLightBeforeMinute: given.inside || given.before === given.after ? null : given.before,
        noLightAfterMinute: given.inside || given.after === 0 ? null : given.after,
        changeOnWeekdays: given.weekdays,
        settingsAtMost: given.atMost,
        toleranceTenths: given.tolerance,
        atLeastBetweenDays: given.gap,
        jumpAtMostMinutes: given.jump,
        earlier: past ? null : given.earlier,
        insideByDay: given.inside
          ? given.targets.map((_, day) => [dayAround(given.inside?.[day] ?? [0, 0], given, step)])
          : null,
        past: past
          ? { settings: [{ fromDayIndex: 0, window: given.pastWindow }], untilDayIndex: given.pastDays }
          : null,
      };
    });
});

test('on small dials all six levels, the trade-off and the limits come out as by trying every plan', () => {
  const seen = new Map<string, number>();
  const count = (what: string, is: boolean) => seen.set(what, (seen.get(what) ?? 0) + (is ? 1 : 0));
  fc.assert(
    fc.property(problemOf, (problem) => {
      const solution = solveDial(problem);
      const tried = everyPlan(problem, problem.days);
      const today = problem.past?.untilDayIndex ?? 0;
      expect(solution.settings.map((s) => ({ from: s.fromDayIndex, ...s.window }))).toEqual(tried.best.plan);
      expect(solution.toleranceReached).toBe(tried.toleranceReached);
      expect(solution.jumpCost).toEqual(tried.jumpCost);
      expect(solution.jumpKept).toBe(tried.jumpKept);
      expect(solution.pinsMoved).toBe(tried.best.worth[3]);
      expect(solution.largestJumpMinutes).toBe(tried.best.largestJump);
      expect(leastErrors(problem)).toEqual({
        worstErrorTenths: tried.best.worth[0],
        sumErrorTenths: tried.best.worth[1],
      });
      if (today === 0) {
        const rows = [...tried.byAtMost].map(([settings, plan]) => ({
          settings,
          worstErrorTenths: plan.worth[0],
          sumErrorTenths: plan.worth[1],
          largestJumpMinutes: plan.largestJump,
        }));
        const least = rows.at(-1)?.worstErrorTenths;
        const until = rows.findIndex((row) => row.worstErrorTenths === least);
        expect(solution.tradeoff).toEqual(rows.slice(0, until + 1));
      }
      count('inset', problem.insideByDay !== null);
      count('re-plan', today > 0);
      count('jump not kept', !solution.jumpKept);
      count('tolerance missed', !solution.toleranceReached);
      count('held', solution.heldForSpacing);
      count('jump costs', solution.jumpCost !== null);
      count('jump cannot be undone', solution.jumpCost?.settingsToUndo === null);
      count('two settings or more', solution.settings.length > 1);
    }),
    { seed: Number(process.env.DEWDIAL_DIAL_SEED ?? 20_270_101), numRuns: RUNS },
  );
  console.info([...seen].map(([what, times]) => `${what}: ${times}`).join(', '));
  for (const [what, times] of seen) expect(times, what).toBeGreaterThan(0);
});

test('a largest jump that makes the worst error larger names the fewest settings that undo it', () => {
  let undone = 0;
  const ramp = fc.record({
    tenths: fc.array(
      fc.integer({ min: 0, max: 12 }).map((steps) => steps * 1200),
      { minLength: 5, maxLength: 6 },
    ),
    jump: fc.constantFrom(480, 500),
    settingsAtMost: fc.integer({ min: 1, max: 3 }),
  });
  fc.assert(
    fc.property(ramp, ({ tenths, jump, settingsAtMost }) => {
      const targets = Int32Array.from(tenths.toSorted((one, other) => one - other));
      const problem = plainProblem(targets, { firstWeekday: 0, stepMinutes: 480, settingsAtMost });
      const solution = solveDial({ ...problem, jumpAtMostMinutes: jump });
      expect(solution.jumpCost).toEqual(everyPlan({ ...problem, jumpAtMostMinutes: jump }, tenths.length).jumpCost);
      if (solution.jumpCost?.settingsToUndo) undone++;
    }),
    { seed: 1, numRuns: 150 },
  );
  expect(undone).toBeGreaterThan(0);
});
