/**
 * The pipeline, top to bottom: read, resolve, solve, revise; `emitAll` draws. Pure: texts in, products and messages out.
 */

import { epochDay } from './basics/calendar-day.ts';
import type { IsoDate } from './basics/civil.ts';
import type { Today } from './basics/today.ts';
import type { Diagnostic } from './diagnostics/diagnostic.ts';
import { Log } from './diagnostics/log.ts';
import type { Language, Plan } from './plan/plan.ts';
import { type ReadFitted, readFitted } from './read/fitted.ts';
import { type ReadHousehold, readHousehold } from './read/household.ts';
import { type ReadProfile, readProfile } from './read/profile.ts';
import { planningDay } from './replan/planning-day.ts';
import { revise } from './replan/revise.ts';
import type { Care } from './resolve/care.ts';
import { profilesNeeded, reportProfileUnknown, resolve } from './resolve/resolve.ts';
import { calendarEvents } from './solve/calendar/events.ts';
import { solve } from './solve/solve.ts';

export interface CompileInput {
  /** Name of the household file in messages and in the plan, for instance `home.yaml`. */
  readonly file: string;
  readonly text: string;
  /** Returns a profile's text by its id or relative path, with its name in messages; null where there is none. */
  readonly profile: (idOrPath: string) => { readonly file: string; readonly text: string } | null;
  /** Ids of the profiles that exist, for spelling. */
  readonly profileIds: readonly string[];
  /** Values fitted to gauge logs, as they stand beside the household file. */
  readonly fitted?: { readonly file: string; readonly text: string } | null;
  /** The plan that stands already. */
  readonly earlier: Plan | null;
  readonly today: Today;
  readonly version: string;
  /** Language of everything that is written, instead of the household's. */
  readonly language?: Language;
  /** An absence besides those of the household, in which a sitter comes every day. */
  readonly absence?: { readonly from: IsoDate; readonly to: IsoDate };
}

export interface Compiled {
  readonly household: ReadHousehold | null;
  readonly care: Care | null;
  /** null where the household cannot be used. */
  readonly plan: Plan | null;
  /** Everything there is to say, by place. */
  readonly diagnostics: readonly Diagnostic[];
}

/** Compiles one household; never throws for what the keeper wrote. */
export function compile(input: CompileInput): Compiled {
  const log = new Log();
  const household = inLanguage(readHousehold(input.file, input.text, log), input.language);
  const profiles = household && readProfiles(household, input, log);
  const fitted = fittedValues(input.fitted ?? null, log);
  const care = withAbsence(household && profiles && resolve(household, profiles, log, fitted), input.absence);
  const day = care && planningDay(care.site.timezone, input.today, input.earlier, log);
  const solved = care && day !== null && !log.has('error') ? solve(care, input.earlier, day, input.version, log) : null;
  const plan = care && solved && revised(solved, care, input.earlier, log);
  return { household, care, plan, diagnostics: log.sorted() };
}

/** A plan that stands is left as it is; what there is to say of its calendar is said again. */
function revised(solved: Plan, care: Care, earlier: Plan | null, log: Log): Plan {
  const drafts = calendarEvents(solved, care.people.find(({ shops }) => shops)?.id ?? null, log);
  return solved === earlier ? solved : revise(solved, drafts, earlier, log.sorted());
}

/** A file of fitted values that cannot be read is an error: a plan must not quietly go back to estimates. */
function fittedValues(source: { readonly file: string; readonly text: string } | null, log: Log): ReadFitted | null {
  return source && readFitted(source.file, source.text, log);
}

function inLanguage(household: ReadHousehold | null, language: Language | undefined): ReadHousehold | null {
  return household && language ? { ...household, tree: { ...household.tree, language } } : household;
}

function withAbsence(care: Care | null, absence: CompileInput['absence']): Care | null {
  if (!care || !absence) return care;
  const [from, to] = [epochDay(absence.from), epochDay(absence.to)];
  const visits = Array.from({ length: to - from + 1 }, (_, index) => from + index);
  const sitter = care.people[1]?.id ?? 'sitter';
  return { ...care, away: [...care.away, { from, to, sitter, visits, path: ['away'] }] };
}

/** Returns the profiles that the household names, or null where one is missing or cannot be used. */
function readProfiles(
  household: ReadHousehold,
  input: CompileInput,
  log: Log,
): ReadonlyMap<string, ReadProfile> | null {
  const profiles = new Map<string, ReadProfile>();
  let isWhole = true;
  for (const need of profilesNeeded(household)) {
    const source = input.profile(need.idOrPath);
    if (!source) reportProfileUnknown(need, input.profileIds, log);
    const profile = source && readProfile(source.file, source.text, log);
    if (profile) profiles.set(need.idOrPath, profile);
    else isWhole = false;
  }
  return isWhole ? profiles : null;
}
