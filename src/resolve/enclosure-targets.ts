/** The targets of one enclosure: profile and file merged, checked against themselves, each with its origin and place. */
import { type EpochDay, isoDateOf } from '../basics/calendar-day.ts';
import { nearestSpelling } from '../basics/nearest-spelling.ts';
import type { Place } from '../diagnostics/diagnostic.ts';
import type { Log } from '../diagnostics/log.ts';
import type { TargetRecord } from '../plan/plan.ts';
import type { ReadHousehold } from '../read/household.ts';
import type { ReadEnclosure } from '../read/household-tree.ts';
import type { FilePath } from '../read/placed-file.ts';
import type { ReadProfile } from '../read/profile.ts';
import type { CareEnclosure, Stage, Targets } from './care.ts';
import { householdSpeaker, type Leaf, mergeTargets, profileSpeaker, type Speaker } from './merge-targets.ts';
import { resolveStage, type StageBook, stageLineage, stageNames } from './stages.ts';
import { reportContradictions } from './target-contradictions.ts';
import { byPath, recordOf, recordOfDefault, type SourceBook } from './target-records.ts';
import { type Activity, defaultTargets, targetsOf } from './targets-of.ts';

export interface EnclosureTargets {
  readonly activity: Activity;
  readonly targets: Targets;
  readonly records: readonly TargetRecord[];
  readonly stages: CareEnclosure['stages'];
  readonly stageBook: StageBook;
  readonly placeOfTarget: (path: string) => Place | null;
}

export interface EnclosureInput {
  readonly said: ReadEnclosure;
  readonly path: FilePath;
  readonly household: ReadHousehold;
  readonly profile: ReadProfile;
  readonly book: SourceBook;
  readonly log: Log;
}

/** Returns the targets; null where no day length is known, which is reported. */
export function enclosureTargets(input: EnclosureInput): EnclosureTargets | null {
  const { said, path, household, profile, book, log } = input;
  const base = { tree: profile.tree, speaker: profileSpeaker(profile) };
  const over = said.targets ? { tree: said.targets, speaker: householdSpeaker(household, [...path, 'targets']) } : null;
  const merged = mergeTargets(base, over);
  const stageBook: StageBook = { tables: over ? [over, base] : [base] };
  const stages = stageSpans(input, stageBook);
  const resolved = new Map(
    stageNames(stageBook).map((name) => [name, resolveStage(stageBook, name, household.tree.language ?? 'en')]),
  );
  const activity = merged.tree.activity ?? profile.tree.activity;
  const targets = targetsOf(merged.tree, {
    activity,
    limitsWaivedBecause: over ? waiver(household, over.speaker) : null,
    mayGoWithoutDays: mayGoWithout(merged.tree.may_go_without ?? {}, stageBook),
    stages: Object.fromEntries([...resolved].map(([name, { stage }]): [string, Stage] => [name, stage])),
  });
  if (!targets) {
    log.report(
      'photoperiod-missing',
      { enclosure: said.id, species: profile.tree.species },
      household.placeOf([...path, 'species']),
    );
    return null;
  }
  const used = [...new Set(stages.map(({ stage }) => stage))];
  const leaves = [...merged.leaves.filter(isTarget), ...used.flatMap((name) => resolved.get(name)?.leaves ?? [])];
  const placeOfTarget = placesOf(leaves);
  reportContradictions(targets, { enclosure: said.id, log, placeOf: placeOfTarget });
  const defaults = defaultTargets(merged.tree, activity).map(recordOfDefault);
  return {
    activity,
    targets,
    records: byPath([...leaves.map((leaf) => recordOf(leaf, book)), ...defaults]),
    stages,
    stageBook,
    placeOfTarget,
  };
}

/** The activity is a fact of the species, no target. */
function isTarget({ path }: Leaf): boolean {
  return path[0] !== 'activity';
}

/** Returns why the file accepts temperatures beyond the limits: the reason of the first temperature that it gives itself. */
function waiver(household: ReadHousehold, speaker: Speaker): string | null {
  for (const key of ['never_below', 'never_above', 'day', 'night']) {
    const path = [...speaker.root, 'temperature', key];
    const why = household.stands(path) ? household.saidAt(path).why : null;
    if (why !== null) return why;
  }
  return null;
}

function mayGoWithout(said: Readonly<Record<string, number>>, book: StageBook): Readonly<Record<string, number>> {
  const days: Record<string, number> = { ...said };
  for (const name of stageNames(book)) {
    const nearest = stageLineage(book, name).find((ancestor) => said[ancestor] !== undefined);
    const found = nearest === undefined ? undefined : said[nearest];
    if (found !== undefined) days[name] = found;
  }
  return days;
}

/** Returns the stages that an enclosure passes through; reports names that neither file knows, and a first one that begins late. */
function stageSpans(
  { said, path, household, profile, log }: EnclosureInput,
  book: StageBook,
): readonly { readonly from: EpochDay; readonly stage: string }[] {
  const planFrom = household.tree.plan.from;
  const spans = typeof said.stage === 'string' ? [{ from: planFrom, stage: said.stage }] : said.stage;
  const known = stageNames(book);
  for (const [index, { stage }] of spans.entries()) {
    if (known.includes(stage)) continue;
    const place = household.placeOf(
      typeof said.stage === 'string' ? [...path, 'stage'] : [...path, 'stage', index, 'stage'],
    );
    log.report(
      'stage-unknown',
      { stage, species: profile.tree.species, nearest: nearestSpelling(stage, known), known: known.join(', ') },
      place,
    );
  }
  const first = spans[0];
  if (first && first.from > planFrom)
    log.report(
      'stages-begin-late',
      { enclosure: said.id, from: isoDateOf(first.from), planFrom: isoDateOf(planFrom), stage: first.stage },
      household.placeOf([...path, 'stage', 0]),
    );
  return spans;
}

function placesOf(leaves: readonly Leaf[]): (path: string) => Place | null {
  const spoken = new Map(leaves.map((leaf) => [leaf.path.join('.'), leaf]));
  const paths = [...spoken.keys()];
  return (path) => {
    for (let at = path; at !== ''; at = at.includes('.') ? at.slice(0, at.lastIndexOf('.')) : '') {
      const leaf = spoken.get(at) ?? spoken.get(paths.find((known) => known.startsWith(`${at}.`)) ?? '');
      if (leaf) return leaf.speaker.placeOf(leaf.spokenAt);
    }
    return null;
  };
}
