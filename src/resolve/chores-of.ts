/** The chores that a household and a species name themselves; what every household has besides is not here. */
import type { CalendarSpan } from '../basics/units-of-measure.ts';
import type { Language } from '../plan/plan.ts';
import type { ReadChore } from '../read/household-tree.ts';
import type { FilePath } from '../read/placed-file.ts';
import type { ReadProfileChore } from '../read/targets.ts';
import type { CareChore } from './care.ts';
import { inLanguage } from './in-language.ts';
import type { Speaker } from './merge-targets.ts';

/** Minutes of a chore where nobody says; ours. */
const CHORE_MINUTES = 5;

export interface ChoreContext {
  readonly path: FilePath;
  /** Who does what nobody is named for. */
  readonly who: string;
  readonly language: Language;
}

/** Returns the file's chores, then those of `targets` and of the profile whose id the file does not use; `who` does what nobody is named for. */
export function choresOf(
  said: readonly ReadChore[],
  fromTargets: readonly { readonly chores: readonly ReadProfileChore[]; readonly speaker: Speaker }[],
  context: ChoreContext,
): readonly CareChore[] {
  const chores: CareChore[] = said.map((chore, index) =>
    ownChore(chore, [...context.path, 'chores', index], context.who),
  );
  for (const { chores: others, speaker } of fromTargets) {
    for (const [index, chore] of others.entries()) {
      if (chores.some(({ id }) => id === chore.id)) continue;
      chores.push(speciesChore(chore, index, speaker, context));
    }
  }
  return chores;
}

function ownChore(said: ReadChore, path: FilePath, who: string): CareChore {
  return {
    id: said.id,
    path,
    title: said.title,
    rhythm: rhythmOf(said),
    minutes: said.minutes ?? CHORE_MINUTES,
    leewayDays: said.leeway ?? null,
    who: said.who ?? who,
    whenAway: said.when_away ?? 'sitter',
    origin: { kind: 'file', source: 'household' },
  };
}

function rhythmOf(said: ReadChore): CareChore['rhythm'] {
  if (said.on) return { kind: 'dates', dates: [...said.on].sort((a, b) => a - b) };
  if (said.lamp_hours !== undefined) return { kind: 'lamp-hours', hours: said.lamp_hours };
  return rhythmEvery(said.every ?? { unit: 'week', count: 1 });
}

function rhythmEvery({ unit, count }: CalendarSpan): CareChore['rhythm'] {
  return { kind: `${unit}s`, every: count };
}

function speciesChore(said: ReadProfileChore, index: number, speaker: Speaker, context: ChoreContext): CareChore {
  return {
    id: said.id,
    path: speaker.kind === 'file' ? [...speaker.root, 'chores', index] : context.path,
    title: inLanguage(said.title, context.language),
    rhythm: rhythmEvery(said.every),
    minutes: said.minutes ?? CHORE_MINUTES,
    leewayDays: said.leeway ?? null,
    who: context.who,
    whenAway: said.when_away ?? 'sitter',
    origin: { kind: speaker.kind, source: speaker.saidAt([...speaker.root, 'chores', index]).source ?? 'ours' },
  };
}
