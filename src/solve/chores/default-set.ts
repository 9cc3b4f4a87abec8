/**
 * The chores that every household has unless its file switches them off by id: how often, how long, and who says so.
 * `opened`: the source was read; `practice`: common practice, no source; `ours`: chosen for this tool. Minutes are ours throughout.
 */
import type { Rhythm, WhenAway } from './job.ts';

export interface DefaultChore {
  readonly rhythm: Rhythm;
  readonly minutes: number;
  readonly whenAway: WhenAway;
  /** A citation, `practice` or `ours`. */
  readonly source: string;
  readonly read: 'opened' | 'memory' | 'practice' | 'ours';
  readonly note?: string;
}

const daily: Rhythm = { kind: 'days', every: 1 };
const weekly: Rhythm = { kind: 'days', every: 7 };
const monthly: Rhythm = { kind: 'months', every: 1 };

const SALT_TEST =
  'Wexler A, Hasegawa S (1954) J Res NBS 53(1); Wexler A, Constant humidity solutions, CRC Handbook of Chemistry and Physics';

export const DEFAULT_CHORES = {
  temperatures: {
    rhythm: daily,
    minutes: 1,
    whenAway: 'sitter',
    source: 'RSPCA, Bearded dragon advice page: temperatures at both ends recorded daily',
    read: 'opened',
  },
  'spot-clean': {
    rhythm: daily,
    minutes: 2,
    whenAway: 'sitter',
    source: 'Angel Ridge Vet, Reptiles',
    read: 'opened',
  },
  'drip-bowl-disinfect': { rhythm: weekly, minutes: 5, whenAway: 'sitter', source: 'practice', read: 'practice' },
  'deep-clean': {
    rhythm: monthly,
    minutes: 30,
    whenAway: 'after',
    source: 'Angel Ridge Vet, Reptiles',
    read: 'opened',
    note: 'every 2 weeks there, about monthly elsewhere; not for planted enclosures',
  },
  'salt-test': {
    rhythm: { kind: 'months', every: 3 },
    minutes: 10,
    whenAway: 'after',
    source: SALT_TEST,
    read: 'opened',
    note: 'every 3 to 6 months and with a new battery; the interval is common practice',
  },
  thermometer: {
    rhythm: { kind: 'months', every: 6 },
    minutes: 10,
    whenAway: 'after',
    source: 'practice',
    read: 'practice',
  },
  'uv-index': {
    rhythm: monthly,
    minutes: 5,
    whenAway: 'skip',
    source: 'practice',
    read: 'memory',
    note: 'replace the lamp when the value has dropped to some 70 % of the first',
  },
  gauge: { rhythm: monthly, minutes: 5, whenAway: 'after', source: 'practice', read: 'practice' },
  mould: {
    rhythm: { kind: 'days', every: 14 },
    minutes: 3,
    whenAway: 'after',
    source: 'practice',
    read: 'practice',
    note: 'now and then in practice; the interval is ours',
  },
  plants: {
    rhythm: weekly,
    minutes: 3,
    whenAway: 'sitter',
    source: 'practice',
    read: 'practice',
    note: 'once in a while in practice; the interval is ours',
  },
  weigh: {
    rhythm: monthly,
    minutes: 5,
    whenAway: 'after',
    source: 'Stanhope, Leopard gecko care sheet',
    read: 'opened',
    note: 'regularly there; monthly for adults, weekly for young ones and in rest is common practice',
  },
  'vet-check': {
    rhythm: { kind: 'months', every: 12 },
    minutes: 5,
    whenAway: 'after',
    source: 'Caring Animal Hospital, Ball pythons handout: an exam every 6 to 12 months, a faecal test yearly',
    read: 'opened',
  },
  'scrub-tank': {
    rhythm: weekly,
    minutes: 10,
    whenAway: 'after',
    source: 'practice',
    read: 'practice',
    note: 'water does not stand longer than a week',
  },
  nozzles: { rhythm: monthly, minutes: 15, whenAway: 'after', source: 'practice', read: 'practice' },
  filter: { rhythm: monthly, minutes: 5, whenAway: 'after', source: 'practice', read: 'practice' },
  'nozzle-flow': { rhythm: monthly, minutes: 5, whenAway: 'after', source: 'ours', read: 'ours' },
  'feeder-upkeep': {
    rhythm: { kind: 'days', every: 2 },
    minutes: 3,
    whenAway: 'sitter',
    source: 'practice',
    read: 'practice',
    note: 'kept fed and hydrated in practice; the interval is ours',
  },
  timers: { rhythm: weekly, minutes: 2, whenAway: 'sitter', source: 'practice', read: 'practice' },
  'residual-current': { rhythm: monthly, minutes: 2, whenAway: 'after', source: 'practice', read: 'practice' },
} as const satisfies Readonly<Record<string, DefaultChore>>;

export type DefaultId = keyof typeof DEFAULT_CHORES;

/** Chores that follow from what the household has; they are switched off by the same ids. */
export const DERIVED_IDS = [
  'dish',
  'drip-bowl',
  'empty-tray',
  'moist-hide',
  'soak',
  'remove-food',
  'probe',
  'replace-lamp',
  'discard-powder',
  'culture',
  'refill',
  're-pin',
  'turn-dial',
  'mist-entries',
  'mist-by-hand',
  'drink-by-hand',
  'change-sheet',
  'note-health',
  'shed-check',
  'laying-place',
  'leaving',
] as const;

/** Months that an opened powder is good for where the file does not say: common practice, no source; the label wins. */
export const POWDER_MONTHS = 6;
/** Months after which a UV lamp is replaced where the file does not say and nobody measures: common practice, no source; some say 6. */
export const UV_LAMP_MONTHS = 12;
/** Days between checks of a laying place; ours. */
export const LAYING_CHECK_DAYS = 2;
/** Water does not stand longer than this; section 5 of the computation. */
export const STANDING_WATER_DAYS = 7;
/** Days of probe checks after a lamp or season change; section 0 of the computation. */
export const PROBE_DAYS = 7;
