/** What can be wrong with the text of a household file or a profile, entry by entry. */
import { wording } from '../diagnostic.ts';
import { among, meant, type Nearest, quoted } from './nearest.ts';

export const reading = {
  'file-too-large': wording<{ kib: number; mostKib: number }>(
    'cannot be read',
    'error',
    ({ kib, mostKib }) => `the file has ${kib} KiB; at most ${mostKib} KiB are read`,
    () => 'split it into several households',
  ),
  'file-empty': wording<Record<string, never>>(
    'cannot be read',
    'error',
    () => 'the file holds nothing',
    () => 'let "dewdial new FILE" write a starter file',
  ),
  'yaml-form': wording<{ what: string; fix: string }>(
    'cannot be read',
    'error',
    ({ what }) => what,
    ({ fix }) => fix,
  ),
  'duplicate-key': wording<{ key: string; line: number }>(
    'cannot be read',
    'error',
    ({ key, line }) => `${key} stands here a second time; the first is on line ${line}`,
    () => 'keep one of them',
  ),
  'key-alone': wording<{ text: string }>(
    'cannot be read',
    'error',
    ({ text }) => `${text} stands alone between braces, without a colon; a comma ends the text before it`,
    () => 'put text that holds a comma in quotes',
  ),
  'alias-used': wording<{ most: number }>(
    'cannot be read',
    'error',
    () => 'references to other places of the file (*name) are not followed',
    () => 'write the value itself; put text that begins with * in quotes',
  ),
  'too-deep': wording<{ most: number }>(
    'cannot be read',
    'error',
    ({ most }) => `entries stand more than ${most} levels deep`,
    () => 'nothing that is read here lies so deep; take levels out',
  ),
  'unknown-key': wording<{ key: string; of: string; known: readonly string[] } & Nearest>(
    'cannot be read',
    'error',
    ({ key, of }) => `${of} has no ${key}`,
    ({ nearest, known }) =>
      nearest === null && known.length === 0
        ? 'take it out'
        : meant(nearest, nearest === null ? `what may be added: ${among(known)}` : ''),
  ),
  'key-missing': wording<{ key: string; of: string; example: string | null }>(
    'cannot be read',
    'error',
    ({ key, of }) => `${of} needs ${key}`,
    ({ key, example }) => (example === null ? `add ${key}:` : `add ${key}, for instance ${key}: ${example}`),
  ),
  'value-missing': wording<{ key: string; example: string | null }>(
    'cannot be read',
    'error',
    ({ key }) => `nothing stands behind ${key}`,
    ({ example }) => `${example === null ? 'write a value' : `write for instance ${example}`}, or take the line out`,
  ),
  'wrong-shape': wording<{ wanted: string; found: string; example: string | null }>(
    'cannot be read',
    'error',
    ({ wanted, found }) => `${wanted} belongs here; ${found} stands here`,
    ({ example, wanted }) => (example === null ? `write ${wanted}` : `write for instance ${example}`),
  ),
  'needs-unit': wording<{ number: string; units: readonly string[] }>(
    'cannot be read',
    'error',
    ({ number }) => `${number} has no unit`,
    ({ number, units }) => `write ${number} ${units[0] ?? ''}; units that fit: ${quoted(units)}`,
  ),
  'wrong-unit': wording<{ unit: string; measures: string | null; wanted: string; units: readonly string[] }>(
    'cannot be read',
    'error',
    ({ unit, measures, wanted }) =>
      measures === null ? `${unit} is no unit known here` : `${unit} measures ${measures}; ${wanted} belongs here`,
    ({ units }) => `units that fit: ${quoted(units)}`,
  ),
  'not-a-quantity': wording<{ found: string; wanted: string; example: string; units: readonly string[] }>(
    'cannot be read',
    'error',
    ({ found, wanted }) => `${wanted} belongs here, a number and a unit; ${found} is none`,
    ({ example, units }) => `write for instance ${example}; units that fit: ${quoted(units)}`,
  ),
  'decimal-comma': wording<{ found: string; fixed: string }>(
    'cannot be read',
    'error',
    ({ found }) => `${found} has a comma in the number`,
    ({ fixed }) => `write a point: ${fixed}`,
  ),
  'out-of-bounds': wording<{ found: string; bounds: string }>(
    'cannot be read',
    'error',
    ({ found }) => `${found} is more or less than can stand here`,
    ({ bounds }) => `what fits: ${bounds}`,
  ),
  'not-a-number': wording<{ found: string; example: string; meant: number | null }>(
    'cannot be read',
    'error',
    ({ found }) => `a bare number belongs here; ${found} is none`,
    ({ example, meant }) => (meant === null ? `write for instance ${example}` : `write ${meant}`),
  ),
  'not-a-choice': wording<{ found: string; choices: readonly string[] } & Nearest>(
    'cannot be read',
    'error',
    ({ found }) => `${found} is not one of the words that fit`,
    ({ nearest, choices }) => meant(nearest, `the words are ${among(choices)}`),
  ),
  'not-a-time': wording<{ found: string; meant: string | null }>(
    'cannot be read',
    'error',
    ({ found }) => `${found} is no time of day`,
    ({ meant }) =>
      meant === null
        ? 'write hours and minutes on the 24 h clock, in quotes, for instance "07:30" or "19:30"'
        : `write "${meant}", hours and minutes on the 24 h clock`,
  ),
  'time-as-number': wording<{ found: number; time: string | null }>(
    'cannot be read',
    'error',
    ({ found, time }) =>
      found <= 24
        ? `${found} is a number; a time of day has hours and minutes`
        : `${found} is a number; some programs turn ${time ?? 'a time'} into one where it has no quotes`,
    ({ time }) => `write times in quotes: "${time ?? '07:30'}"`,
  ),
  'not-a-date': wording<{ found: string; meant: string | null }>(
    'cannot be read',
    'error',
    ({ found }) => `${found} is no date`,
    ({ meant }) =>
      meant === null ? 'write year-month-day, for instance 2027-01-31' : `write ${meant}, year-month-day`,
  ),
  'no-such-date': wording<{ found: string; monthDays: number | null; month: string }>(
    'cannot be read',
    'error',
    ({ found, monthDays, month }) =>
      monthDays === null
        ? `${found} does not exist; months go from 01 to 12`
        : `${found} does not exist; ${month} has ${monthDays} days`,
    ({ monthDays, month }) => (monthDays === null ? 'write another month' : `write a day up to ${month}-${monthDays}`),
  ),
  'not-yes-or-no': wording<{ found: string }>(
    'cannot be read',
    'error',
    ({ found }) => `${found} is neither yes nor no`,
    () => 'write yes or no',
  ),
  'not-text': wording<{ found: string }>(
    'cannot be read',
    'error',
    ({ found }) => `text belongs here; ${found} stands here`,
    ({ found }) => (/^[\w.+-]+$/u.test(found) ? `put it in quotes: "${found}"` : 'write text, in quotes if in doubt'),
  ),
  'text-too-long': wording<{ characters: number; most: number }>(
    'cannot be read',
    'error',
    ({ characters, most }) => `the text has ${characters} characters; ${most} fit`,
    () => 'write it shorter',
  ),
  'id-form': wording<{ found: string; proposal: string | null }>(
    'cannot be read',
    'error',
    ({ found }) => `${found} is no id; an id has lower-case letters, digits and hyphens, and begins with a letter`,
    ({ proposal }) => (proposal === null ? 'write for instance wall-dial' : `write ${proposal}`),
  ),
  'id-reserved': wording<{ id: string }>(
    'cannot be read',
    'error',
    ({ id }) => `${id} has a meaning of its own and cannot be an id`,
    ({ id }) => `write for instance ${id}-1`,
  ),
  'band-form': wording<{ found: string; example: string }>(
    'cannot be read',
    'error',
    ({ found }) => `a band of two values belongs here, low and high; ${found} stands here`,
    ({ example }) => `write for instance ${example}`,
  ),
  'band-order': wording<{ low: string; high: string }>(
    'cannot be read',
    'error',
    ({ low, high }) => `the band begins at ${low} and ends at ${high}, below its beginning`,
    ({ low, high }) => `write [${high}, ${low}], if that is meant`,
  ),
  'not-twelve': wording<{ found: number }>(
    'cannot be read',
    'error',
    ({ found }) => `a value for each month is twelve values; ${found} stand here`,
    () => 'write twelve, January first, or one for the whole year',
  ),
  'edge-form': wording<{ found: string }>(
    'cannot be read',
    'error',
    ({ found }) => `a time that moves with the lights is one edge with a span; ${found} stands here`,
    () =>
      'write one of before_lights_on, after_lights_on, before_lights_off, after_lights_off, for instance { after_lights_on: 30 min }',
  ),
  'one-of': wording<{ of: string; found: readonly string[]; forms: readonly string[] }>(
    'cannot be read',
    'error',
    ({ of, found }) =>
      found.length === 0
        ? `${of} is said in no form; one is needed`
        : `${of} is said in a form that does not hold together: ${found.join(' and ')}`,
    ({ forms }) => `write exactly one of: ${forms.join('; ')}`,
  ),
  'mean-beside-halves': wording<{ beside: string }>(
    'cannot be read',
    'error',
    ({ beside }) => `mean is the whole 24 h and cannot stand beside ${beside}`,
    () => 'keep mean alone, or day and night',
  ),
  'format-unknown': wording<{ found: string }>(
    'cannot be read',
    'error',
    ({ found }) => `the file says format ${found}; this program reads format 1`,
    () => 'write format: 1, or use a newer version of the program',
  ),
  'zone-unknown': wording<{ found: string } & Nearest>(
    'cannot be read',
    'error',
    ({ found }) => `${found} is no time zone of the IANA table`,
    ({ nearest }) => meant(nearest, nearest === null ? 'write region and city, for instance Europe/Madrid' : ''),
  ),
  'every-form': wording<{ found: string; example: string }>(
    'cannot be read',
    'error',
    ({ found }) => `how often is a count and a word; ${found} is none`,
    ({ example }) => `write for instance ${example}`,
  ),
};
