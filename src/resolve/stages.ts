/** The stages of life that an enclosure goes through: `like` followed, feeds and dustings in the units that feeding works in. */

import type { Language } from '../plan/plan.ts';
import type { ReadDustingRule, ReadFeedRule, ReadPortion, ReadStage, ReadTargets } from '../read/targets.ts';
import type { DustingRule, FeedRule, Stage } from './care.ts';
import { inLanguage, PORTION_WORDS } from './in-language.ts';
import { collectLeaves, type Leaf, type Speaker } from './merge-targets.ts';

type Part = 'feeds' | 'dusting' | 'apart';
const PARTS: readonly Part[] = ['feeds', 'dusting', 'apart'];

/** The stage tables of a profile and of the household file over it; the first that says something is heard. */
export interface StageBook {
  readonly tables: readonly { readonly tree: ReadTargets; readonly speaker: Speaker }[];
}

export interface ResolvedStage {
  readonly stage: Stage;
  readonly leaves: readonly Leaf[];
}

/** Returns every stage name that is known, the household's first. */
export function stageNames(book: StageBook): readonly string[] {
  return [...new Set(book.tables.flatMap(({ tree }) => Object.keys(tree.stages ?? {})))];
}

/** Returns the stage itself and those it is `like`, nearest first; empty where it is unknown. */
export function stageLineage(book: StageBook, name: string): readonly string[] {
  const lineage: string[] = [];
  let next: string | undefined = name;
  while (next !== undefined && !lineage.includes(next) && stageNames(book).includes(next)) {
    lineage.push(next);
    next = firstSaid(book, next, 'like')?.value;
  }
  return lineage;
}

/** Stages past the youngest, also where a profile lets them take its values. */
const GROWN = ['juvenile', 'subadult', 'adult', 'senior'];

/** Returns whether a stage is the youngest: `hatchling`, or like it under a name that is no older stage's. */
export function isYoungest(book: StageBook, name: string): boolean {
  const lineage = stageLineage(book, name);
  const at = lineage.indexOf('hatchling');
  return at >= 0 && !lineage.slice(0, at).some((stage) => GROWN.includes(stage));
}

/** Returns a stage with its parts, its portions in words of the language, each from the nearest stage of its lineage that says it; parts nobody says are empty. */
export function resolveStage(book: StageBook, name: string, language: Language): ResolvedStage {
  const leaves: Leaf[] = [];
  const lineage = stageLineage(book, name);
  const found = Object.fromEntries(PARTS.map((part) => [part, partOf(book, lineage, name, part, leaves)])) as Pick<
    ReadStage,
    Part
  >;
  return {
    stage: {
      feeds: (found.feeds ?? []).map((rule) => feedRule(rule, language)),
      dusting: (found.dusting ?? []).map(dustingRule),
      apart: (found.apart ?? []).map(({ between, days }, index) => ({
        between,
        days,
        path: `stages.${name}.apart.${index}`,
      })),
    },
    leaves,
  };
}

function partOf(book: StageBook, lineage: readonly string[], name: string, part: Part, leaves: Leaf[]): unknown {
  for (const ancestor of lineage) {
    const said = firstSaid(book, ancestor, part);
    if (!said) continue;
    collectLeaves(
      said.value,
      ['stages', name, part],
      said.speaker,
      [...said.speaker.root, 'stages', ancestor, part],
      leaves,
    );
    return said.value;
  }
  return undefined;
}

function firstSaid<K extends keyof ReadStage>(book: StageBook, stage: string, key: K) {
  for (const { tree, speaker } of book.tables) {
    const value = tree.stages?.[stage]?.[key];
    if (value !== undefined) return { value, speaker };
  }
  return null;
}

function feedRule(rule: ReadFeedRule, language: Language): FeedRule {
  const asEaten = typeof rule.portion === 'object' && 'as_eaten' in rule.portion ? rule.portion.as_eaten : null;
  return {
    food: rule.food,
    rhythm: feedRhythm(rule),
    timesADay: rule.times_a_day ?? 1,
    pieces: piecesOf(rule),
    portion: portionWords(rule.portion, language),
    asEatenMinutes: asEaten,
    removeAfterHours: rule.remove_after ?? null,
  };
}

function feedRhythm(rule: ReadFeedRule): FeedRule['rhythm'] {
  if (rule.days) return { kind: 'days', days: rule.days };
  if (rule.every !== undefined) return { kind: 'every', days: rule.every };
  return { kind: 'per-week', times: rule.per_week ?? 7 };
}

/** A rodent meal in words is one animal, or as many as the words begin with. */
function piecesOf({ portion, food }: ReadFeedRule): number | null {
  if (typeof portion === 'string') return food === 'rodents' ? Number(/^\d+/.exec(portion)?.[0] ?? 1) : null;
  return 'pieces' in portion ? portion.pieces : (portion.at_most ?? null);
}

/** Returns the portion as it is printed, for instance `5, no longer than the head is wide`. */
function portionWords(portion: ReadPortion, language: Language): string {
  const words = PORTION_WORDS[language];
  if (typeof portion === 'string') return inLanguage(portion, language);
  if ('as_eaten' in portion) return words.asEaten(portion.as_eaten, portion.at_most ?? null);
  const { pieces, no_longer_than: size } = portion;
  return size === undefined ? `${pieces}` : words.noLongerThan(pieces, inLanguage(size, language));
}

function dustingRule(rule: ReadDustingRule): DustingRule {
  if (rule.at) return { id: rule.id, rate: { kind: 'the-rest' } };
  if (rule.every !== undefined) return { id: rule.id, rate: { kind: 'every-feeds', feeds: rule.every } };
  return { id: rule.id, rate: { kind: 'times', times: rule.times ?? 1, weeks: rule.weeks ?? 1 } };
}
