/** What there is to say where a household and its profiles are put together: targets at odds, stages, rest, powders, nozzles. */
import { wording } from '../diagnostic.ts';
import { stateWords } from './amounts.ts';

const orNothing = (nearest: string | null, otherwise: string) =>
  nearest ? `write ${nearest}, if that is meant` : otherwise;

export const resolving = {
  'profile-unknown': wording<{ species: string; nearest: string | null; known: string; isPath: boolean }>(
    'cannot be read',
    'error',
    ({ species, isPath }) =>
      isPath ? `there is no profile file ${species} beside the household file` : `there is no profile ${species}`,
    ({ nearest, known, isPath }) =>
      isPath
        ? 'write the path from the folder of the household file'
        : orNothing(nearest, `write one of ${known}, or the path of a profile of your own`),
  ),
  'photoperiod-missing': wording<{ enclosure: string; species: string }>(
    'cannot be done',
    'error',
    ({ enclosure, species }) => `neither ${species} nor the targets of ${enclosure} say how long its day is`,
    () => 'write photoperiod with hours, with longest and shortest, with latitude, or with twelve months',
  ),
  'stage-unknown': wording<{ stage: string; species: string; nearest: string | null; known: string }>(
    'cannot be read',
    'error',
    ({ stage, species }) => `${species} has no stage ${stage}`,
    ({ nearest, known }) =>
      orNothing(
        nearest,
        known === '' ? 'the profile names no stages; add them under targets' : `write one of ${known}`,
      ),
  ),
  'stages-begin-late': wording<{ enclosure: string; from: string; planFrom: string; stage: string }>(
    'note',
    'warning',
    ({ enclosure, from, planFrom, stage }) =>
      `the first stage of ${enclosure} begins on ${from}, the plan on ${planFrom}; ${stage} is taken from the start`,
    () => 'give the first stage a date on or before the first day of the plan',
  ),
  'range-unknown': wording<{ enclosure: string }>(
    'cannot be done',
    'error',
    ({ enclosure }) => `${enclosure} asks for the season of its home, and nobody says where that is`,
    () => 'write range: { latitude: … } under its targets, or season: site',
  ),
  'inset-leaves-nothing': wording<{ enclosure: string; use: string; edges: string; longest: string }>(
    'cannot be done',
    'error',
    ({ enclosure, use, edges, longest }) =>
      `${use} of ${enclosure} leaves out ${edges} of a day that is never longer than ${longest}: nothing is left`,
    () => 'shorten the edges, or lengthen the day',
  ),
  'inset-outlasts-day': wording<{ enclosure: string; use: string; hours: string; longest: string }>(
    'cannot be done',
    'error',
    ({ enclosure, use, hours, longest }) =>
      `${use} of ${enclosure} lasts ${hours}, and its day is never longer than ${longest}`,
    () => 'shorten it, or lengthen the day',
  ),
  'no-light-hours-crossed': wording<{ enclosure: string; before: string; after: string }>(
    'cannot be done',
    'error',
    ({ enclosure, before, after }) =>
      `${enclosure} may have no light before ${before} and none after ${after}: no hour is left`,
    () => 'no_light_before is the morning limit and no_light_after the evening limit',
  ),
  'humidity-limits-crossed': wording<{
    enclosure: string;
    limit: string;
    limitValue: string;
    other: string;
    otherValue: string;
    is: 'above' | 'below';
  }>(
    'cannot be done',
    'error',
    ({ enclosure, limit, limitValue, other, otherValue, is }) =>
      `${limit} of ${enclosure} is ${limitValue}, ${is} all of ${other}, which is ${otherValue}: both cannot hold`,
    ({ is }) => (is === 'above' ? 'lower the one or raise the other' : 'raise the one or lower the other'),
  ),
  'peak-below-day': wording<{ enclosure: string; peak: string; other: string; band: string }>(
    'cannot be done',
    'error',
    ({ enclosure, peak, other, band }) =>
      `the peaks of ${enclosure} begin at ${peak}, below humidity.${other} with ${band}: every mist would be one`,
    () => 'let the peak band begin at the lower edge of the other band or above',
  ),
  'temperature-limits-crossed': wording<{
    enclosure: string;
    limit: string;
    limitC: number;
    other: string;
    otherValue: string;
  }>(
    'cannot be done',
    'error',
    ({ enclosure, limit, limitC, other, otherValue }) =>
      `${limit} of ${enclosure} is ${limitC} °C, and ${other} is ${otherValue}: both cannot hold`,
    () => 'correct the limit or the band',
  ),
  'drink-without-misting': wording<{ enclosure: string; mists: number }>(
    'cannot be done',
    'error',
    ({ enclosure, mists }) =>
      `${enclosure} is to drink from ${mists} mist${mists === 1 ? '' : 's'} a day and says misting: none`,
    () => 'write drink: none with a dish or a dripper, or leave the misting in',
  ),
  'cadence-too-dense': wording<{ enclosure: string; mists: number; gap: string }>(
    'cannot be done',
    'error',
    ({ enclosure, mists, gap }) => `${mists} mists a day ${gap} apart take more than the 24 h of a day in ${enclosure}`,
    ({ mists }) => `ask for a gap of ${Math.floor(1440 / mists)} min at most, or for fewer mists`,
  ),
  'dry-out-outlasts-hours': wording<{ enclosure: string; asked: string; hours: string; longest: string }>(
    'cannot be done',
    'error',
    ({ enclosure, asked, hours, longest }) =>
      `${enclosure} is to stay dry for ${asked} inside its ${hours} hours, which are never longer than ${longest}`,
    () => 'ask for less, or write when: any',
  ),
  'hot-lamp-and-spray': wording<{ enclosure: string; lamps: string }>(
    'not safe',
    'error',
    ({ enclosure, lamps }) =>
      `${enclosure} is misted beside ${lamps}, which run${lamps.includes(', ') ? '' : 's'} hot and can shatter when sprayed; the file does not say whether spray reaches`,
    () => 'look, then write nozzles: { hits_lamp: yes } or { hits_lamp: no }',
  ),
  'nozzles-too-many': wording<{ pump: string; has: number; asked: number; shares: string; enclosures: number }>(
    'cannot be done',
    'error',
    ({ pump, has, asked, shares }) =>
      `${pump} has ${has} nozzle${has === 1 ? '' : 's'}, and its enclosures count ${asked} (${shares})`,
    ({ pump, has, asked, enclosures }) => {
      const fewer = enclosures - has === 1 ? 'one enclosure' : `${enclosures - has} enclosures`;
      const otherwise =
        enclosures <= has ? `count ${has} in all under nozzles of its enclosures` : `let it mist ${fewer} fewer`;
      return `write nozzles: ${asked} on ${pump} if it has them, else ${otherwise}`;
    },
  ),
  'mist-taken': wording<{ enclosure: string; how: string }>(
    'note',
    'note',
    ({ enclosure, how }) => `the file does not say how ${enclosure} is misted, and its animal needs it; taken: ${how}`,
    () => 'write mist: with the id of a pump, by-hand or none',
  ),
  'pump-figures-taken': wording<{ pump: string; figures: string }>(
    'note',
    'note',
    ({ pump, figures }) => `the file does not say all of ${pump}; taken: ${figures}`,
    () => 'write longest_run and rest from its label',
  ),
  'rest-without-vet': wording<{ enclosure: string; kind: string }>(
    'not safe',
    'error',
    ({ enclosure, kind }) =>
      `${enclosure} is to go into ${kind}, and the file names no day on which a veterinarian checked the animal`,
    () => 'have it examined and weighed first, then write checked_by_vet with the date; or leave the rest out',
  ),
  'rest-checked-too-late': wording<{ enclosure: string; checked: string; from: string }>(
    'not safe',
    'error',
    ({ enclosure, checked, from }) =>
      `the check of ${enclosure} on ${checked} does not lie before its rest, from ${from}`,
    () => 'have it examined before the rest begins',
  ),
  'rest-of-hatchling': wording<{ enclosure: string; kind: string; stage: string }>(
    'not safe',
    'error',
    ({ enclosure, kind, stage }) =>
      `${enclosure} holds a ${stage} in the weeks of its ${kind}; the youngest must not rest`,
    () => 'leave the rest out this year',
  ),
  'rest-in-state': wording<{ enclosure: string; kind: string; state: string; from: string; to: string }>(
    'not safe',
    'error',
    ({ enclosure, kind, state, from, to }) =>
      `the ${kind} of ${enclosure} falls into the days in which it is ${stateWords(state)}, ${from} to ${to}`,
    () => 'leave the rest out, or ask the veterinarian for another time',
  ),
  'visit-outside-absence': wording<{ date: string; from: string; to: string }>(
    'note',
    'warning',
    ({ date, from, to }) => `the visit on ${date} lies outside the absence, ${from} to ${to}, and is left out`,
    () => 'correct the date of the visit or of the absence',
  ),
  'powder-contents-taken': wording<{ enclosure: string; taken: string }>(
    'note',
    'warning',
    ({ enclosure, taken }) => `the file does not say what the powders of ${enclosure} hold; taken: ${taken}`,
    () => 'write each under supplements with contains: [d3, vitamin-a], as its label says; [] for neither',
  ),
};
