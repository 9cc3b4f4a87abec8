/**
 * Shelves beyond what can be written out one by one, against HiGHS: its optimum lies between our bound and our arrangement, and meets the
 * arrangement where that is said to be the best. With one setting in the plan the program is whole; computed here, no outside source.
 */
import { describe, expect, it } from 'vitest';
import { Log } from '../../../src/diagnostics/log.ts';
import { solveLighting } from '../../../src/solve/lighting.ts';
import { alikeShelf, boundOfShelf, type ShelfSize } from '../../generated/alike-shelf.ts';
import { leastWorstOfShelf, leastWorstOverWeeks } from './shelf-program.ts';

const SECONDS = 20;
const SIZES: readonly (Pick<ShelfSize, 'enclosures' | 'dials' | 'kinds' | 'outlets'> & { readonly seed: number })[] = [
  { seed: 1, enclosures: 8, dials: 3, kinds: 8, outlets: 3 },
  { seed: 2, enclosures: 14, dials: 4, kinds: 9, outlets: 4 },
  { seed: 3, enclosures: 16, dials: 5, kinds: 16, outlets: 4 },
  { seed: 4, enclosures: 30, dials: 6, kinds: 10, outlets: 6 },
  { seed: 5, enclosures: 60, dials: 10, kinds: 60, outlets: 7 },
];

describe('many lamps on auto', () => {
  it.each(SIZES)('$enclosures lamps on $dials dials are no further from the best than is said', ({ seed, ...size }) => {
    const care = alikeShelf(seed, { ...size, settingsAtMost: 1, swingMinutes: [0, 40], basks: false });
    const { auto, dayTargets, lighting } = solveLighting(care, null, care.plan.from, new Log());
    const targets = care.enclosures.map(({ id }) => [...(dayTargets.get(id) ?? [])]);
    const optimum = leastWorstOfShelf({ targets, dials: size.dials, outlets: size.outlets, stepMinutes: 15 }, SECONDS);
    const ours = Math.round(10 * Math.max(...lighting.map(({ worstErrorMinutes }) => worstErrorMinutes)));
    const bound = boundOfShelf(care, dayTargets).leastWorst();
    const [places] = auto;
    console.info(
      `${size.enclosures} lamps on ${size.dials} dials: bound ${bound}, HiGHS ${optimum.worst}, ours ${ours} tenths of a minute${places?.isProven ? ', the best' : ''}`,
    );
    expect(optimum.isProven).toBe(true);
    expect(places?.levels[0]?.value).toBe(ours / 10);
    expect(bound).toBeLessThanOrEqual(optimum.worst ?? -1);
    expect(optimum.worst).toBeLessThanOrEqual(ours);
    const atLeast = Math.round(10 * (places?.levels[0]?.atLeast ?? Number.NaN));
    expect(atLeast).toBe(places?.isProven ? ours : bound);
    if (atLeast === ours) expect(optimum.worst).toBe(ours);
  });

  it('of several settings are where HiGHS would have them, pins changed on Saturdays', () => {
    const size = { enclosures: 5, dials: 2, kinds: 5, outlets: 3, settingsAtMost: 2 };
    const year = alikeShelf(6, { ...size, swingMinutes: [60, 200], basks: false });
    const care = { ...year, plan: { ...year.plan, days: 44, changeOn: ['sat'] as const } };
    const { auto, dayTargets } = solveLighting(care, null, care.plan.from, new Log());
    const targets = care.enclosures.map(({ id }) => [...(dayTargets.get(id) ?? [])]);
    const weeksFrom = [0, 1, 8, 15, 22, 29, 36, 43];
    const shelf = {
      targets,
      dials: 2,
      outlets: 3,
      stepMinutes: 15,
      weeksFrom,
      settingsAtMost: 2,
      atLeastBetweenDays: 14,
    };
    const { best, atLeast } = leastWorstOverWeeks(shelf, SECONDS);
    console.info(`5 lamps on 2 dials, 2 settings: HiGHS ${best}, none under ${atLeast}`);
    expect(Math.round(best ?? -1) - Math.ceil(atLeast - 0.5)).toBeLessThanOrEqual(0);
    expect(auto).toMatchObject([{ isProven: true, levels: [{ value: Math.round(best ?? -1) / 10 }, {}] }]);
  });
});
