import { epochDay } from '../../src/basics/calendar-day.ts';
import { zoneOffsets } from '../../src/basics/zone.ts';
import type { Photoperiod } from '../../src/resolve/care.ts';
import { targetDayLengthTenths } from '../../src/solve/light/target-day-length.ts';
import { wallWindows } from '../../src/solve/light/wall-windows.ts';

interface Table {
  readonly name: string;
  readonly rows: readonly (readonly [string, string, string])[];
}

const FROM = epochDay('2027-01-01');
const SITE = { latitude: 41.65, longitude: -0.89, timezone: 'Europe/Madrid' };
const FORMS: readonly (readonly [string, Photoperiod['form']])[] = [
  ['hours', { kind: 'constant', minutes: 720 }],
  ['longest and shortest', { kind: 'seasonal', longestMinutes: 780, shortestMinutes: 660 }],
  ['months', { kind: 'months', minutes: [600, 630, 690, 720, 750, 780, 780, 750, 720, 690, 630, 600] }],
  ['latitude', { kind: 'latitude', latitude: 15 }],
  ['latitude: site', { kind: 'latitude', latitude: 'site' }],
];

/** The least of many runs, in milliseconds, after a first one. */
function leastMs(work: (round: number) => unknown): string {
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 60; round++) {
    const start = performance.now();
    work(round);
    if (round > 0) least = Math.min(least, performance.now() - start);
  }
  return least.toFixed(3);
}

/** One year of targets by form, and the clocks around it. */
export async function run(): Promise<readonly Table[]> {
  const season = { season: { kind: 'site' }, atLeastMinutes: null, atMostMinutes: null } as const;
  const targets = FORMS.map(([label, form]) => {
    const year = (round: number): unknown =>
      targetDayLengthTenths({ form, ...season }, null, SITE, null, FROM + round, 365);
    return [`a year of ${label}`, leastMs(year), 'ms'] as const;
  });
  const start = performance.now();
  const offsets = zoneOffsets('America/Denver', FROM, 1100);
  const fresh = (performance.now() - start).toFixed(2);
  const windows = [{ on: '07:30', off: '18:45' }];
  const wall = leastMs(() => wallWindows(windows, 'standard', offsets, FROM, FROM + 364));
  return [
    { name: 'Target day length', rows: targets },
    {
      name: 'Clocks',
      rows: [
        ['offsets of a zone over 1100 days, asked for the first time', fresh, 'ms'],
        ['wall windows of a setting held for a year', wall, 'ms'],
      ],
    },
  ];
}
