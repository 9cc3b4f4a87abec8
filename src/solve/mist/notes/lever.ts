/** A lever, and the trouble that it is to end: what is changed about enclosure, room or devices so that mists meet the targets. */
import type { Run } from '../../../science/enclosure-day.ts';
import type { ExceededLimit, TargetMiss } from '../day/day-problem.ts';

/** Sets may fall behind conditions solved alone by so much; what is less is told, not warned of. */
export const NEAR = 0.05;

export type LeverKind =
  | 'cover'
  | 'open'
  | 'nozzle'
  | 'timer'
  | 'entries'
  | 'tank'
  | 'tray'
  | 'damp-floor'
  | 'dry-floor'
  | 'wetter-room'
  | 'drier-room'
  | 'shield';

/** A lever with which all targets are met under the days it was tried on. */
export interface Lever {
  readonly kind: LeverKind;
  /** Bare-mesh share, humidity of the room, nozzles, lines, grams of tank or tray a day: what the lever is set to. */
  readonly value: number;
  /** Tank water of a day with it. */
  readonly waterG: number;
  readonly entries: readonly Run[];
  /** What has to be done besides. */
  readonly besides: 'shield' | 'dry-floor' | null;
}

/** In which way the air misses its targets. */
export interface Trouble {
  readonly tooDry: boolean;
  readonly tooHumid: boolean;
  readonly peaks: boolean;
  readonly exceeded: readonly ExceededLimit[];
}

/** Returns what the misses of a day say together. */
export function troubleOf(
  misses: readonly (TargetMiss & { readonly isHigh: boolean })[],
  exceeded: readonly ExceededLimit[],
): Trouble {
  const isPeak = ({ target }: TargetMiss) => target === 'peaks_per_day';
  return {
    tooDry: misses.some((miss) => !isPeak(miss) && !miss.isHigh),
    tooHumid: misses.some((miss) => !isPeak(miss) && miss.isHigh),
    peaks: misses.some(isPeak),
    exceeded,
  };
}
