/** What there is to say about zones and clocks. */
import { wording } from '../diagnostic.ts';

export const clocks = {
  'stale-zone-table': wording<{
    zone: string;
    from: string;
    to: string;
    ours: string;
    second: string;
    spans: number;
  }>(
    'note',
    'warning',
    ({ zone, from, to, ours, second, spans }) =>
      `two tables of time zones part over ${zone}: from ${from} to ${to} the one used here says ${ours}, a second one ${second}${spans > 1 ? `, and so ${spans} times in the plan` : ''}`,
    () =>
      'compare with a clock that sets itself on that date; where the second table is right, run a newer Node, and set wall-time timers by the clock on the wall',
  ),
  'clocks-change-at-midnight': wording<{ timer: string; zone: string; date: string; from: string; to: string }>(
    'falls short',
    'warning',
    ({ timer, zone, date, from, to }) =>
      `${timer} shows wall time, and in ${zone} the clocks go from ${from} to ${to} on ${date}, when nobody stands at the shelf`,
    () => 'turn it in the evening before, or set clock: standard and leave it alone all year',
  ),
  'longitude-off-zone': wording<{ zone: string; longitude: number; hours: number }>(
    'note',
    'warning',
    ({ zone, longitude, hours }) => `at longitude ${longitude} the sun is ${hours} h from the clocks of ${zone}`,
    ({ longitude }) =>
      `correct the one that is wrong; longitudes are positive to the east: ${-longitude}, if that is meant`,
  ),
  'latitude-off-zone': wording<{ zone: string; latitude: number; summer: 'January' | 'July' }>(
    'note',
    'warning',
    ({ zone, latitude, summer }) =>
      `${zone} has its summer time in ${summer}, which is winter at latitude ${latitude}: the year of light would be the wrong way round`,
    ({ latitude }) =>
      `correct the one that is wrong; latitudes are positive to the north: ${-latitude}, if that is meant`,
  ),
  'clock-set-back': wording<{ today: string; made: string; taken: string }>(
    'note',
    'warning',
    ({ today, made, taken }) =>
      taken === made
        ? `the clock says ${today}, and the plan that stands was made on ${made}; ${made} is taken as today`
        : `today is given as ${today}, and the plan that stands was made on ${made}; from ${today} on it is planned anew`,
    ({ today, made, taken }) =>
      taken === made
        ? `set the clock, or say --today ${today} where it is right`
        : `leave out --today, or name a day from ${made} on`,
  ),
};
