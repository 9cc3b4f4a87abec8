/** What there is to say about gauge readings and what is fitted to them. */
import { wording } from '../diagnostic.ts';

export const fitting = {
  'fitted-for-another-shape': wording<{ enclosure: string }>(
    'note',
    'warning',
    ({ enclosure }) =>
      `${enclosure} has another size, mesh, planting or floor than when its air was fitted; the fitted values are left aside`,
    ({ enclosure }) => `log a week as it is now and fit again, or take ${enclosure} out of this file`,
  ),
  'fitted-enclosure-unknown': wording<{ id: string; nearest: string | null }>(
    'note',
    'warning',
    ({ id }) => `no enclosure of the household is called ${id}`,
    ({ id, nearest }) => (nearest === null ? `take ${id} out of this file` : `write ${nearest}, or take it out`),
  ),
  'readings-quote': wording<Record<string, never>>(
    'cannot be read',
    'error',
    () => 'a quote that begins here is never closed',
    () => 'close it, or take the quotes out',
  ),
  'readings-empty': wording<Record<string, never>>(
    'cannot be read',
    'error',
    () => 'there is no reading in this file',
    () => 'give a log with a time and a humidity in each line',
  ),
  'readings-columns': wording<{ missing: 'time' | 'humidity'; among: readonly string[]; isSeveral: boolean }>(
    'cannot be read',
    'error',
    ({ missing, among, isSeveral }) =>
      isSeveral
        ? `more than one heading could be the ${missing}: ${among.join(', ')}`
        : `no heading names the ${missing}; there are ${among.join(', ')}`,
    () => 'say what each column holds, for instance --columns time,humidity,temperature,- (- passes one over)',
  ),
  'readings-without-time': wording<Record<string, never>>(
    'cannot be read',
    'error',
    () => 'neither headings nor dates stand in the first 40 lines',
    () => 'begin each line with a date and time, for instance 2027-01-31 14:05, or name the columns with --columns',
  ),
  'readings-too-many-cells': wording<{ headings: number; cells: number; isComma: boolean }>(
    'cannot be read',
    'error',
    ({ headings, cells, isComma }) =>
      `${cells} values stand under ${headings} headings${isComma ? '; a comma may be meant as a decimal sign' : ''}`,
    ({ isComma }) =>
      isComma ? 'write decimal points, or save the file with ; between the columns' : 'give every column a heading',
  ),
  'readings-time': wording<{ found: string }>(
    'cannot be read',
    'warning',
    ({ found }) => `${quoted(found)} is no date and time; the line is left out`,
    () => 'write it like 2027-01-31 14:05',
  ),
  'readings-time-skipped': wording<{ found: string; zone: string }>(
    'cannot be read',
    'warning',
    ({ found, zone }) =>
      `${quoted(found)} does not exist in ${zone}: the clocks jump over that hour; its lines are left out`,
    () => 'if the gauge never changes its clock, say --clock standard',
  ),
  'readings-value': wording<{ found: string; wanted: string }>(
    'cannot be read',
    'warning',
    ({ found, wanted }) => `${quoted(found)} is not ${wanted}; it is left out`,
    () => '',
  ),
  'readings-out-of-range': wording<{ found: string; range: string }>(
    'cannot be read',
    'warning',
    ({ found, range }) => `${quoted(found)} lies outside of ${range}; it is left out`,
    () => '',
  ),
  'readings-fahrenheit-taken': wording<Record<string, never>>(
    'note',
    'note',
    () => 'the temperatures name no scale and lie above 50; they are taken as °F',
    () => 'write the scale into the heading, for instance temperature (°F)',
  ),
  'readings-mist-state': wording<Record<string, never>>(
    'cannot be read',
    'error',
    () => 'the column of mists holds nothing but 1: it says that it misted, not for how long',
    () => 'write the seconds of each mist, or leave the column out, and the entries of the plan are taken',
  ),
  'readings-unreadable': wording<{ unreadable: number; rows: number }>(
    'cannot be read',
    'error',
    ({ unreadable, rows }) => `${unreadable} of ${rows} lines cannot be read`,
    () => 'name the columns with --columns and the order of dates with --dates',
  ),
  'dates-ambiguous': wording<{ found: string; orders: readonly string[] }>(
    'cannot be read',
    'error',
    ({ found, orders }) =>
      orders.length === 0
        ? `${quoted(found)} and the other dates fit no order of day, month and year`
        : `${quoted(found)} may be read as ${orders.join(' or ')} (d day, m month, y year), and no other line decides it`,
    () => 'say --dates dmy, --dates mdy or --dates ymd',
  ),
  'readings-outside-plan': wording<{
    outside: number;
    of: number;
    first: string;
    last: string;
    from: string;
    to: string;
  }>(
    'falls short',
    'error',
    ({ outside, of, first, last, from, to }) =>
      `${outside} of ${of} readings (${first} to ${last}) lie outside of the plan, ${from} to ${to}, and without a plan nobody knows the lights and the mists`,
    ({ first }) => `let the plan begin on ${first} or before, or give readings from its days`,
  ),
  'readings-newest': wording<{ days: number; left: number }>(
    'note',
    'note',
    ({ days, left }) => `of a long log the newest ${days} days are used; ${left} earlier readings are left aside`,
    () => '',
  ),
  'readings-too-few': wording<{ count: number; hours: number; fewest: number; shortest: number }>(
    'falls short',
    'error',
    ({ count, hours }) => `${count} readings over ${hours} h are too few to fit to; nothing is changed`,
    ({ fewest, shortest }) =>
      `give at least ${fewest} readings over ${shortest} h; a week with one every 10 min is a good log`,
  ),
  'gauge-stuck': wording<{ percent: number; hours: number }>(
    'falls short',
    'error',
    ({ percent, hours }) =>
      `the gauge says ${percent} % for ${hours} h on end from here: it is stuck; nothing is changed`,
    () => 'dry it or change its battery, test it over salt, and log anew; or cut these lines out',
  ),
  'gauge-clock-off': wording<{ minutes: number }>(
    'falls short',
    'error',
    ({ minutes }) =>
      `the humidity rises ${spanOf(minutes)} ${minutes > 0 ? 'after' : 'before'} the mists: the clock of the gauge is off; nothing is changed`,
    ({ minutes }) =>
      `set its clock; to use this log, say --shift=${minutes > 0 ? '-' : ''}${Math.abs(minutes)}${minutes === -60 ? ', or --clock standard where it never changes' : ''}`,
  ),
  'fit-held-by-file': wording<{ key: string }>(
    'note',
    'note',
    ({ key }) => `${key} stands in the file and is taken as it is`,
    () => 'take the line out to have it fitted',
  ),
  'fit-nothing-free': wording<{ enclosure: string }>(
    'cannot be done',
    'error',
    ({ enclosure }) => `every air value of ${enclosure} stands in the file; there is nothing to fit`,
    () => 'take out the lines of air that are to be fitted',
  ),
  'fit-undetermined': wording<{ enclosure: string; mists: number; alike: readonly (readonly string[])[] }>(
    'falls short',
    'error',
    ({ enclosure, mists, alike }) =>
      [
        `these readings do not tell the air changes of ${enclosure} to within a factor of two`,
        ...(mists === 0 ? ['no mist fell while they were logged, and a steady humidity fits many airs'] : []),
        ...alike.map(([a, b]) => `${a} and ${b} cannot be told apart`),
        'nothing is changed',
      ].join('; '),
    ({ mists }) => (mists === 0 ? 'log days with mists, or give the mists in a column' : 'log a longer time'),
  ),
  'fit-cannot-tell': wording<{ value: string; other: string | null; correlation: number | null }>(
    'note',
    'note',
    ({ value, other, correlation }) =>
      other === null
        ? `these readings do not tell the ${value} to within a factor of two; our estimate is kept`
        : `the ${value} cannot be told apart from the ${other} by these readings (correlation ${correlation}); our estimate is kept`,
    () => '',
  ),
  'fit-misses': wording<{ points: number }>(
    'falls short',
    'warning',
    ({ points }) =>
      `the best fit misses the readings by ${points} points of humidity or in long waves: the room or the mists were not as the plan has them`,
    () => 'give the room by month as it was, the mists as a column, or a log of calmer days',
  ),
};

function spanOf(minutes: number): string {
  const size = Math.abs(minutes);
  const [hours, rest] = [Math.floor(size / 60), size % 60];
  return [...(hours > 0 ? [`${hours} h`] : []), ...(rest > 0 ? [`${rest} min`] : [])].join(' ');
}

function quoted(found: string): string {
  return found.length > 40 ? `"${found.slice(0, 40)}…"` : `"${found}"`;
}
