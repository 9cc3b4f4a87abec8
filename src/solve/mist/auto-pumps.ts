/** Which pump mists an enclosure on `auto`, where there are several: the one with which its air falls short least. */
import { Log } from '../../diagnostics/log.ts';
import type { MistPump } from '../../hardware/devices.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import type { MistUnit } from './mist-unit.ts';
import { isPump, mistUnits, type ShelfPower } from './mist-units.ts';

/** How one pump would do: limits exceeded and shortfall, then water. */
export interface PumpTrial {
  readonly cost: number;
  readonly waterG: number;
}

/**
 * Returns the pump of each enclosure on `auto`, by enclosure id: least shortfall, then least water, then the file's order. A pump with no
 * nozzle left, or one that is refused, is not tried.
 *
 * @param tryUnit how a pump with one enclosure alone does
 */
export function autoPumps(
  care: Care,
  power: ShelfPower,
  tryUnit: (unit: MistUnit) => PumpTrial,
): ReadonlyMap<string, string> {
  const chosen = new Map<string, string>();
  const pumps = care.devices.filter(isPump);
  for (const enclosure of care.enclosures) {
    if (enclosure.mist !== 'auto' || enclosure.targets.misting === 'none') continue;
    let best: { readonly pump: string; readonly trial: PumpTrial } | null = null;
    for (const pump of pumps) {
      const unit = hasNozzle(care, pump, enclosure, chosen) ? unitAlone(care, power, pump, enclosure) : null;
      const trial = unit && tryUnit(unit);
      if (trial && (!best || isBetter(trial, best.trial))) best = { pump: pump.id, trial };
    }
    if (best) chosen.set(enclosure.id, best.pump);
  }
  return chosen;
}

function isBetter(a: PumpTrial, b: PumpTrial): boolean {
  if (Math.abs(a.cost - b.cost) > 1e-6) return a.cost < b.cost;
  return a.waterG < b.waterG - 1e-6;
}

function hasNozzle(care: Care, pump: MistPump, enclosure: CareEnclosure, chosen: ReadonlyMap<string, string>): boolean {
  const others = care.enclosures.filter(({ id, mist }) => (mist === 'auto' ? chosen.get(id) : mist) === pump.id);
  const taken = others.reduce((sum, each) => sum + each.nozzles.count, 0);
  return taken + enclosure.nozzles.count <= pump.nozzles;
}

function unitAlone(care: Care, power: ShelfPower, pump: MistPump, enclosure: CareEnclosure): MistUnit | null {
  const alone = { ...care, enclosures: [{ ...enclosure, mist: pump.id }] };
  const unit = mistUnits(alone, power, new Map(), new Log())[0];
  return unit?.pump === pump || unit?.pump?.id === pump.id ? unit : null;
}
