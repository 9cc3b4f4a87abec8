/** What a starter file has to hold for a species, read from its profile. */
import type { ReadProfile } from '../read/profile.ts';
import type { FoodWord, ReadTargets } from '../read/targets.ts';
import type { Stage } from '../resolve/care.ts';
import { profileSpeaker } from '../resolve/merge-targets.ts';
import { resolveStage, stageNames } from '../resolve/stages.ts';
import { contentsTaken } from '../resolve/supplements-of.ts';

export interface StarterNeeds {
  readonly stage: string;
  readonly isMisted: boolean;
  /** Uses of lamps beside the daylight. */
  readonly insets: readonly ('basking' | 'uvb')[];
  readonly foods: readonly FoodWord[];
  /** Whether its insects may be no longer than a fruit fly. */
  readonly eatsFlies: boolean;
  /** The powders of the stage's dustings, with what each usually holds. */
  readonly powders: readonly { readonly id: string; readonly contains: readonly string[] }[];
  /** Whether the feeding hours lie about lights-off. */
  readonly isFedAtDusk: boolean;
  /** Lower edge of the night band, °C; null where the profile gives none. */
  readonly nightLowC: number | null;
}

/** Returns the needs of the adult stage, or of the profile's first one where it has no adults. */
export function starterNeeds(profile: ReadProfile): StarterNeeds {
  const { tree } = profile;
  const book = { tables: [{ tree, speaker: profileSpeaker(profile) }] };
  const stage = stageNames(book).includes('adult') ? 'adult' : (stageNames(book)[0] ?? 'adult');
  const { feeds, dusting } = resolveStage(book, stage, 'en').stage;
  return {
    stage,
    isMisted: tree.misting !== undefined && tree.misting !== 'none',
    insets: insetsOf(tree),
    foods: [...new Set(feeds.map(({ food }) => food))],
    eatsFlies: feeds.some(({ food, portion }) => food === 'insects' && portion.includes('fruit fly')),
    powders: powdersOf(dusting),
    isFedAtDusk: isAboutLightsOff(tree),
    nightLowC: tree.temperature?.night?.[0] ?? null,
  };
}

function insetsOf({ basking, uvb }: ReadTargets): StarterNeeds['insets'] {
  const isWanted = (inset: unknown): boolean => inset !== undefined && inset !== 'none';
  return [...(isWanted(basking) ? ['basking' as const] : []), ...(isWanted(uvb) ? ['uvb' as const] : [])];
}

function powdersOf(dusting: Stage['dusting']): StarterNeeds['powders'] {
  return [...new Set(dusting.map(({ id }) => id))].map((id) => ({ id, contains: contentsTaken(id) }));
}

function isAboutLightsOff({ feeding }: ReadTargets): boolean {
  return feeding !== undefined && 'of' in feeding.from && feeding.from.of.endsWith('lights_off');
}
