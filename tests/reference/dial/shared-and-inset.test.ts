/**
 * Shared dials and insets against an independent formulation: the shelf as a mixed-integer program over dates × windows, solved by HiGHS.
 * A window a day is chosen, a change of window costs one of the settings allowed, an inset must lie inside the day that was set, and the
 * least worst error, then the least sum under it, must equal what the plan has. Computed; no published source.
 */
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import { minuteOf } from '../../../src/basics/minute-of-day.ts';
import { Log } from '../../../src/diagnostics/log.ts';
import type { DialPlan } from '../../../src/plan/plan.ts';
import { solveLighting } from '../../../src/solve/lighting.ts';
import { Choices } from '../../generated/random.ts';
import { edges, enclosure, lamp, pinDial, seasonal, shelfCare } from '../../generated/shelf-care.ts';

const DAYS = 20;
const SHELVES = 4;
const STEP = 30;
const from = epochDay('2027-02-20');

interface Candidate {
  readonly on: number;
  readonly off: number;
}

/** A program of one dial: errors in tenths by day and candidate; null where the candidate may not stand. */
interface Program {
  readonly candidates: readonly Candidate[];
  readonly error: (day: number, candidate: Candidate) => number | null;
  readonly settingsAtMost: number;
}

/** The package's function under its CommonJS type. */
const highs = await (loadHighs as unknown as typeof loadHighs.default)();

function solved(text: string): number {
  const solution = highs.solve(text, { mip_rel_gap: 0, mip_abs_gap: 0 });
  if (solution.Status !== 'Optimal') throw new Error(solution.Status);
  return Math.round(solution.ObjectiveValue);
}

/** Writes the program in the LP format; `worst`: null minimises the worst error, else the sum with no error above it. */
function lpText({ candidates, error, settingsAtMost }: Program, worst: number | null): string {
  const rows: string[] = [];
  const binaries: string[] = [];
  const sum: string[] = [];
  for (let day = 0; day < DAYS; day++) {
    const here = candidates.map((candidate, index) => ({ name: `y${day}_${index}`, error: error(day, candidate) }));
    const open = here.filter((each) => each.error !== null && (worst === null || each.error <= worst));
    rows.push(`${open.map(({ name }) => name).join(' + ')} = 1`);
    for (const each of here.filter((one) => !open.includes(one))) rows.push(`${each.name} = 0`);
    if (worst === null) rows.push(`W - ${open.map((each) => `${each.error} ${each.name}`).join(' - ')} >= 0`);
    else sum.push(...open.map((each) => `${each.error} ${each.name}`));
    binaries.push(...here.map(({ name }) => name));
    if (day > 0) rows.push(...here.map(({ name }, index) => `z${day} - ${name} + y${day - 1}_${index} >= 0`));
  }
  const changes = Array.from({ length: DAYS - 1 }, (_, index) => `z${index + 1}`);
  rows.push(`${changes.join(' + ')} <= ${settingsAtMost - 1}`);
  const aim = worst === null ? 'W' : sum.join(' + ');
  return `Minimize\n obj: ${aim}\nSubject To\n${rows.map((row, index) => ` c${index}: ${row}`).join('\n')}\nBinary\n ${[...binaries, ...changes].join('\n ')}\nEnd\n`;
}

function litTenths({ on, off }: Candidate): number {
  return (off - on) * 10;
}

function windowOn(dial: DialPlan, day: number): Candidate {
  const setting = dial.settings.find(
    ({ from: start, to }) => epochDay(start) <= from + day && from + day <= epochDay(to),
  );
  const [window] = setting?.windows ?? [];
  return { on: minuteOf(window?.on ?? '12:00'), off: minuteOf(window?.off ?? '12:00') };
}

function worstAndSum(dial: DialPlan, error: Program['error']) {
  const errors = Array.from({ length: DAYS }, (_, day) => error(day, windowOn(dial, day)) ?? Number.NaN);
  return { worst: Math.max(...errors), sum: errors.reduce((total, each) => total + each, 0) };
}

function shelfOf(seed: number) {
  const choices = new Choices(seed * 31 + 5);
  const basking = edges(choices.between(0, 70), choices.between(0, 70));
  const enclosures = ['fern', 'moss'].map((id) =>
    enclosure(
      id,
      seasonal(choices.between(420, 560), choices.between(860, 1000)),
      [
        lamp('day', { outlet: 'dial' }),
        lamp('bask', { uses: ['basking'], kind: 'halogen', thermostat: 'dimming', outlet: 'bask-dial' }),
      ],
      { basking },
    ),
  );
  return shelfCare({
    plan: { from, days: DAYS, settingsAtMost: choices.between(1, 4) },
    devices: [pinDial('dial', { stepMinutes: STEP }), pinDial('bask-dial', { stepMinutes: STEP })],
    enclosures,
  });
}

/** Windows of every length within 60 min of the targets, at the starts named. */
function candidatesAround(
  targets: readonly number[],
  starts: (length: number) => readonly number[],
): readonly Candidate[] {
  const [least, most] = [Math.min(...targets) - 60, Math.max(...targets) + 60];
  const lengths = Array.from({ length: 96 }, (_, index) => (index + 1) * STEP).filter(
    (length) => length >= least && length <= most,
  );
  return lengths.flatMap((length) => starts(length).map((on) => ({ on, off: on + length })));
}

function nearestStart(middle: number, length: number): number {
  return Math.floor((middle - length / 2) / STEP + 0.5) * STEP;
}

function errorTo(targets: readonly (readonly number[])[]): Program['error'] {
  return (day, window) =>
    Math.max(...targets.map((target) => Math.abs(litTenths(window) - Math.round((target[day] ?? Number.NaN) * 10))));
}

describe('a shelf of a shared day and a shared inset', () => {
  it('has the least worst error and the least sum that the program finds', () => {
    for (let seed = 1; seed <= SHELVES; seed++) {
      const care = shelfOf(seed);
      const { lighting } = solveLighting(care, null, from, new Log());
      const [day, inset] = lighting;
      if (!day || !inset) throw new Error('two dials');
      const settingsAtMost = care.plan.settingsAtMost ?? 8;

      const dayTargets = day.lamps.map(({ targetMinutes }) => targetMinutes);
      const dayProgram: Program = {
        candidates: candidatesAround(dayTargets.flat(), (length) => [nearestStart(780, length)]),
        error: errorTo(dayTargets),
        settingsAtMost,
      };
      const dayWorst = solved(lpText(dayProgram, null));
      expect({ seed, ...worstAndSum(day, dayProgram.error) }).toEqual({
        seed,
        worst: dayWorst,
        sum: solved(lpText(dayProgram, dayWorst)),
      });

      const insetTargets = inset.lamps.map(({ targetMinutes }) => targetMinutes);
      const starts = (length: number) => [-1, 0, 1].map((steps) => nearestStart(780, length) + steps * STEP);
      const missed = errorTo(insetTargets);
      const insetProgram: Program = {
        candidates: candidatesAround(insetTargets.flat(), starts),
        error: (date, window) => {
          const outer = windowOn(day, date);
          return outer.on <= window.on && window.off <= outer.off ? missed(date, window) : null;
        },
        settingsAtMost,
      };
      const insetWorst = solved(lpText(insetProgram, null));
      expect({ seed, ...worstAndSum(inset, insetProgram.error) }).toEqual({
        seed,
        worst: insetWorst,
        sum: solved(lpText(insetProgram, insetWorst)),
      });
    }
    console.info(`shared dials and insets: ${SHELVES} shelves of ${DAYS} days equal HiGHS on worst error and sum`);
  });
});
