import { Log } from '../../src/diagnostics/log.ts';
import { powerTree } from '../../src/hardware/power-tree.ts';
import type { Care } from '../../src/resolve/care.ts';
import { placeAutoLamps } from '../../src/solve/light/auto-lamps.ts';
import { historyOf } from '../../src/solve/light/dial-history.ts';
import { agreeingGroups } from '../../src/solve/light/group-checks.ts';
import { shelfLamps } from '../../src/solve/light/shelf-lamp.ts';
import { solveLighting } from '../../src/solve/lighting.ts';
import { edges, enclosure, lamp, pinDial, seasonal, shelfCare } from '../generated/shelf-care.ts';
import { atMost, median, type Table } from './figures.ts';

const ROUNDS = 9;

/** Six enclosures with a day and a basking lamp each, four dials of two kinds. */
function daysAndBasking(): Care {
  return shelfCare({
    devices: [15, 15, 30, 30].map((stepMinutes, index) => pinDial(`dial-${index}`, { stepMinutes })),
    enclosures: [0, 1, 2, 3, 4, 5].map((index) =>
      enclosure(
        `e${index}`,
        seasonal(600 + 20 * index, 720 + 25 * index),
        [lamp('day'), lamp('bask', { kind: 'halogen', uses: ['basking'], powerW: 50 })],
        { basking: edges(30 + 10 * index, 60) },
      ),
    ),
  });
}

/** Twelve enclosures with a day of their own each, four dials alike. */
function twelveDays(): Care {
  return shelfCare({
    devices: [0, 1, 2, 3].map((index) => pinDial(`dial-${index}`)),
    enclosures: Array.from({ length: 12 }, (_, index) =>
      enclosure(`e${index}`, seasonal(600 + 13 * index, 700 + 17 * ((index * 5) % 12)), [lamp('day')]),
    ),
  });
}

function timed(work: () => void): number {
  work();
  const times = Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return median(times);
}

/** Only the search for outlets, everything it works from being at hand. */
function assignment(care: Care): () => void {
  const { dayTargets, offsets } = solveLighting(care, null, care.plan.from, new Log());
  const lamps = shelfLamps(care, dayTargets);
  const { groups } = agreeingGroups(care, lamps, new Map(), new Log());
  if (powerTree(care.devices, []).timers.length !== 4) throw new Error('four dials');
  return () =>
    placeAutoLamps(
      care,
      lamps,
      groups,
      offsets,
      (timer) => historyOf(timer, null, care.plan, care.plan.from),
      new Log(),
    );
}

export async function run(): Promise<readonly Table[]> {
  const [mixed, alike] = [daysAndBasking(), twelveDays()];
  const [mixedMs, alikeMs] = [timed(assignment(mixed)), timed(assignment(alike))];
  const wholeMs = timed(() => solveLighting(mixed, null, mixed.plan.from, new Log()));
  return [
    {
      name: 'A shelf of 12 lamps on 4 dials, one year',
      rows: [
        ['outlets found exactly, 6 days and 6 basking lamps', mixedMs.toFixed(1), 'ms'],
        ['outlets found exactly, 12 different days', alikeMs.toFixed(1), 'ms'],
        ['the whole of its light, 6 days and 6 basking lamps', wholeMs.toFixed(1), 'ms'],
      ],
      targets: [atMost('12 lamps on 4 dials, outlets found exactly', Math.max(mixedMs, alikeMs), 200, 'ms')],
    },
  ];
}
