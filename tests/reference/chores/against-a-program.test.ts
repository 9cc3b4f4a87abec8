/**
 * Gathering against an independent formulation: a mixed-integer program over occurrences × days, solved by HiGHS. Binaries place each
 * occurrence, a binary a day opens it, an occurrence needs a follower within its gap. Computed; no published source.
 */
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { gather } from '../../../src/solve/chores/gather.ts';
import { mayFollow } from '../../../src/solve/chores/place-chain.ts';
import { drawInstance, type Instance } from './chore-instances.ts';

/** The package's function under its CommonJS type. */
const highs = await (loadHighs as unknown as typeof loadHighs.default)();
const OFF = 10_000;

function solved(text: string): number {
  const solution = highs.solve(text, { mip_rel_gap: 0, mip_abs_gap: 0 });
  if (solution.Status !== 'Optimal') throw new Error(solution.Status);
  return Math.round(solution.ObjectiveValue);
}

/** Writes the program in the LP format; `newDays`: null minimises the days that are opened, else the rest with so many. */
function lpText(instance: Instance, newDays: number | null): string {
  const rows: string[] = [];
  const binaries = new Set<string>();
  const aim: string[] = [];
  const opened = new Set<string>();
  for (const [c, chain] of instance.chains.entries())
    for (const [i, movable] of chain.entries()) {
      const name = (day: number, at = i) => `x${c}_${at}_${day}`;
      rows.push(`${movable.days.map((day) => name(day)).join(' + ')} = 1`);
      const next = chain[i + 1];
      for (const day of movable.days) {
        binaries.add(name(day));
        aim.push(`${(instance.isPreferred(day) ? 0 : OFF) + Math.abs(day - movable.due)} ${name(day)}`);
        if (!instance.hasWork(day)) {
          opened.add(`y${day}`);
          rows.push(`${name(day)} - y${day} <= 0`);
        }
        if (!next) continue;
        const onward = next.days.filter((other) => mayFollow(day, next, other)).map((other) => name(other, i + 1));
        rows.push(onward.length > 0 ? `${name(day)} - ${onward.join(' - ')} <= 0` : `${name(day)} = 0`);
      }
    }
  if (newDays !== null && opened.size > 0) rows.push(`${[...opened].join(' + ')} <= ${newDays}`);
  const objective = newDays === null ? [...opened].map((day) => `1 ${day}`) : aim;
  return `Minimize\n obj: ${objective.join(' + ') || '0 x0_0_0'}\nSubject To\n${rows.map((row, at) => ` c${at}: ${row}`).join('\n')}\nBinary\n ${[...binaries, ...opened].join('\n ')}\nEnd\n`;
}

describe('gathering against a program', () => {
  const instances = Array.from({ length: 14 }, (_, index) => drawInstance(77_000 + index, 63, 4)).filter(({ chains }) =>
    chains.every(({ length }) => length > 0),
  );

  it('needs as few further days, and stands as well on them', () => {
    let further = 0;
    for (const instance of instances) {
      const gathered = gather(instance);
      expect(gathered.isProven).toBe(true);
      const fewest = solved(lpText(instance, null));
      expect(gathered.newDays.length).toBe(fewest);
      const cost = gathered.days
        .flatMap((days, c) => days.map((day, i) => ({ day, due: instance.chains[c]?.[i]?.due ?? 0 })))
        .reduce((sum, { day, due }) => sum + (instance.isPreferred(day) ? 0 : OFF) + Math.abs(day - due), 0);
      expect(cost).toBe(solved(lpText(instance, fewest)));
      further += fewest;
    }
    console.info(`gathering: ${instances.length} instances of nine weeks equal HiGHS, ${further} further days in all`);
    expect(further).toBeGreaterThan(50);
  });
});
