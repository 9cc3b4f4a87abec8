/** The fitted air of an enclosure: used where the household file says no value of its own, and only for the enclosure as it was measured. */
import { isoDateOf } from '../basics/calendar-day.ts';
import { digestOf } from '../basics/digest.ts';
import { nearestSpelling } from '../basics/nearest-spelling.ts';
import type { Log } from '../diagnostics/log.ts';
import type { ReadFitted } from '../read/fitted.ts';
import type { ReadFittedAir, ReadInterval } from '../read/fitted-tree.ts';
import type { ReadEnclosure } from '../read/household-tree.ts';
import type { AirOverrides, FittedAir } from './care.ts';

/** Returns what stands for the parts of an enclosure that its air depends on. */
export function shapeDigest({
  size,
  open,
  planting,
  floor,
}: Pick<ReadEnclosure, 'size' | 'open' | 'planting' | 'floor'>): string {
  return digestOf({ size, open, planting: planting ?? 'none', floor: floor ?? 'dry' });
}

/** Returns the fitted values of an enclosure; null where there are none, or where it is no longer the one that was measured. */
export function fittedOf(said: ReadEnclosure, fitted: ReadFitted | null, log: Log): FittedAir | null {
  const air = fitted && Object.hasOwn(fitted.tree.fitted, said.id) ? fitted.tree.fitted[said.id] : undefined;
  if (!fitted || !air) return null;
  if (air.shape !== shapeDigest(said)) {
    log.report('fitted-for-another-shape', { enclosure: said.id }, fitted.placeOfKey(['fitted', said.id]));
    return null;
  }
  const values: Partial<AirOverrides> = {
    ...(air.changes_per_hour ? { airChangesPerHour: air.changes_per_hour.best } : {}),
    ...(air.base_evaporation ? { baseEvaporationGPerHour: air.base_evaporation.best } : {}),
    ...(air.transfer ? { transferMPerHour: air.transfer.best } : {}),
  };
  return {
    values,
    sources: {
      ...(air.changes_per_hour ? { airChangesPerHour: sourceOf(air, air.changes_per_hour) } : {}),
      ...(air.base_evaporation ? { baseEvaporationGPerHour: sourceOf(air, air.base_evaporation) } : {}),
      ...(air.transfer ? { transferMPerHour: sourceOf(air, air.transfer) } : {}),
    },
  };
}

function sourceOf({ readings, from, to }: ReadFittedAir, { low, high }: ReadInterval): string {
  return `fitted from ${readings}, ${isoDateOf(from)} to ${isoDateOf(to)}; 95 % between ${shown(low)} and ${shown(high)}`;
}

const shown = (value: number): number => Number(value.toPrecision(4));

/** Reports fitted values of enclosures that the household does not have. */
export function reportFittedUnknown(ids: readonly string[], fitted: ReadFitted | null, log: Log): void {
  for (const id of Object.keys(fitted?.tree.fitted ?? {})) {
    if (ids.includes(id)) continue;
    const place = fitted?.placeOfKey(['fitted', id]) ?? null;
    log.report('fitted-enclosure-unknown', { id, nearest: nearestSpelling(id, ids) }, place);
  }
}
