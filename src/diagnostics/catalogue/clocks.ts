/** What there is to say about zones and clocks. */
import { wording } from '../diagnostic.ts';

export const clocks = {
  'stale-zone-table': wording<{
    zone: string;
    from: string;
    to: string;
    ours: string;
    newer: string;
    spans: number;
  }>(
    'note',
    'warning',
    ({ zone, from, to, ours, newer, spans }) =>
      `two tables of time zones part over ${zone}: from ${from} to ${to} the one used here says ${ours}, a newer one ${newer}${spans > 1 ? `, and so ${spans} times in the plan` : ''}`,
    () =>
      'compare with a clock that sets itself on that date; where the newer table is right, run a newer Node, and set wall-time timers by the clock on the wall',
  ),
  'clocks-change-at-midnight': wording<{ timer: string; zone: string; date: string; from: string; to: string }>(
    'falls short',
    'warning',
    ({ timer, zone, date, from, to }) =>
      `${timer} shows wall time, and in ${zone} the clocks go from ${from} to ${to} on ${date}, when nobody stands at the shelf`,
    () => 'turn it in the evening before, or set clock: standard and leave it alone all year',
  ),
};
