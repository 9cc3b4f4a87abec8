/** Where entries of a household file or a profile, each right by itself, do not agree: ids, outlets, orders, sums, steps. */
import { wording } from '../diagnostic.ts';
import { among, meant, type Nearest, quoted } from './nearest.ts';

export const agreement = {
  'duplicate-id': wording<{ id: string; of: string; line: number }>(
    'cannot be read',
    'error',
    ({ id, of, line }) => `two of the ${of} are called ${id}; the first is on line ${line}`,
    () => 'give each an id of its own',
  ),
  'unknown-id': wording<{ id: string; wanted: string; known: readonly string[]; words: readonly string[] } & Nearest>(
    'cannot be read',
    'error',
    ({ id, wanted }) => `the file has no ${wanted} called ${id}`,
    ({ nearest, known, words, wanted }) => {
      const fitting = [...known, ...words];
      return meant(nearest, fitting.length === 0 ? `add the ${wanted} first` : `what fits: ${among(fitting)}`);
    },
  ),
  'wrong-device': wording<{ id: string; kind: string; line: number; wanted: string; known: readonly string[] }>(
    'cannot be read',
    'error',
    ({ id, kind, line, wanted }) => `${id} is a ${kind} (line ${line}); a ${wanted} belongs here`,
    ({ known, wanted }) => (known.length === 0 ? `add a ${wanted} first` : `what fits: ${among(known)}`),
  ),
  'outlet-circle': wording<{ chain: readonly string[] }>(
    'cannot be done',
    'error',
    ({ chain }) => `the outlets run in a circle and never reach the wall: ${chain.join(', behind ')}`,
    ({ chain }) => `give ${chain[0] ?? 'one of them'} outlet: always, or another timer's id`,
  ),
  'pump-always-on': wording<{ id: string; kind: string }>(
    'cannot be done',
    'error',
    ({ id, kind }) => `${id} is a ${kind} on a live outlet and would never stop`,
    () => "name a timer's id as its outlet",
  ),
  'span-order': wording<{ from: string; to: string }>(
    'cannot be read',
    'error',
    ({ from, to }) => `it ends on ${to}, before it begins on ${from}`,
    () => 'write the earlier date as from',
  ),
  'dates-out-of-order': wording<{ date: string; before: string }>(
    'cannot be read',
    'error',
    ({ date, before }) => `${date} stands behind ${before}, which is not earlier`,
    () => 'write each date once, the earliest first',
  ),
  'lengths-out-of-order': wording<{ low: string; high: string; lowKey: string; highKey: string }>(
    'cannot be read',
    'error',
    ({ low, high, lowKey, highKey }) => `${lowKey} is ${low}, more than ${highKey} with ${high}`,
    ({ lowKey, highKey }) => `let ${lowKey} be at most ${highKey}`,
  ),
  'shares-sum': wording<{
    food: string;
    percent: string;
    feeders: readonly string[];
    open: boolean;
    /** The nearest whole percents, for instance `cricket 68 %`. */
    corrected: readonly string[];
  }>(
    'cannot be read',
    'error',
    ({ food, percent, feeders }) => `the shares of ${quoted(feeders)} (${food}) come to ${percent} %`,
    ({ open, corrected }) => {
      if (open) return 'let them come to less than 100 %; feeders without a share get the rest';
      return `let them come to 100 %${corrected.length === 0 ? '' : `, for instance ${corrected.join(', ')}`}`;
    },
  ),
  'water-shares': wording<{ percent: string }>(
    'cannot be read',
    'error',
    ({ percent }) => `lands and airborne come to ${percent} %`,
    () => 'let them come to at most 100 %; the rest runs off',
  ),
  'reserve-above-tank': wording<{ reserve: string; holds: string }>(
    'cannot be read',
    'error',
    ({ reserve, holds }) => `a tank of ${holds} cannot keep a reserve of ${reserve}`,
    () => 'let reserve be less than holds',
  ),
  'step-form': wording<{ step: string; turn: string }>(
    'cannot be read',
    'error',
    ({ step, turn }) => `pins of ${step} do not divide the ${turn} of one turn into whole minutes`,
    () => 'write the time from one pin to the next, for instance 15 min or 30 min',
  ),
  'not-on-a-pin': wording<{ time: string; step: string; nearest: string }>(
    'cannot be read',
    'error',
    ({ time, step }) => `${time} is no edge of a pin of ${step}`,
    ({ nearest }) => `write what the dial shows, for instance "${nearest}"`,
  ),
  'rest-too-short': wording<{ weeks: number; rampWeeks: string }>(
    'cannot be read',
    'error',
    ({ weeks, rampWeeks }) => `a rest of ${weeks} weeks has no room for two ramps of ${rampWeeks} weeks`,
    () => 'let ramp be at most half of weeks',
  ),
  'source-unknown': wording<{ source: string; known: readonly string[] } & Nearest>(
    'cannot be read',
    'error',
    ({ source }) => `${source} is not in the sources of this profile`,
    ({ nearest, known }) => meant(nearest, `what fits: ${among(known)}, or add it to sources with cite and read`),
  ),
  'like-circle': wording<{ chain: readonly string[] }>(
    'cannot be read',
    'error',
    ({ chain }) => `the stages take each other's values in a circle: ${chain.join(', like ')}`,
    () => 'let one of them say its own values',
  ),
};
