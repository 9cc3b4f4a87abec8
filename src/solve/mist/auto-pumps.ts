/**
 * Which pump mists an enclosure on `auto`: the sharing with the least worst shortfall, then the least of all added up. A pump serves its
 * enclosures with one set of mists, so who shares it counts; exact where few sharings are left, else the best found, with a bound.
 */
import { Log } from '../../diagnostics/log.ts';
import type { MistPump } from '../../hardware/devices.ts';
import type { AutoLevel, AutoPlaces } from '../../plan/plan.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import type { MistUnit } from './mist-unit.ts';
import { isPump, mistUnits, type ShelfPower } from './mist-units.ts';
import { type PumpOption, type PumpShare, PumpSharing } from './pump-sharing.ts';

/** How a pump with its enclosures would do: limits exceeded, the worst shortfall, water a day. */
export interface PumpTrial {
  readonly exceeded: number;
  readonly shortfall: number;
  readonly waterG: number;
}

export interface PlacedPumps {
  /** By enclosure id; none for an enclosure that no pump takes. */
  readonly pumpOf: ReadonlyMap<string, string>;
  /** null where nothing is on `auto`. */
  readonly auto: AutoPlaces | null;
}

/** One limit exceeded outweighs any shortfall. */
const LIMIT_COST = 1000;
/** Shortfalls are weighed in these steps. */
const STEP = 0.05;

/**
 * Returns the pump of each enclosure on `auto`. A pump with no nozzle left, or one that is refused, takes none; an animal in quarantine or
 * ill shares none.
 *
 * @param tryUnit how a pump with its enclosures does under all their days at once; null where it cannot run
 */
export function autoPumps(care: Care, power: ShelfPower, tryUnit: (unit: MistUnit) => PumpTrial | null): PlacedPumps {
  const open = care.enclosures.filter(({ mist, targets }) => mist === 'auto' && targets.misting !== 'none');
  if (open.length === 0) return { pumpOf: new Map(), auto: null };
  const pumps = care.devices.filter(isPump);
  const trial = trialOnce(care, power, tryUnit);
  const sharing = new PumpSharing(
    open.map((enclosure) => optionsOf(care, pumps, enclosure, trial)),
    {
      fits: (pump, members) =>
        fits(
          care,
          pumps[pump],
          members.map((member) => open[member]),
        ),
      costOf: (pump, members) => {
        const found = trial(pumps[pump], [...namedOn(care, pumps[pump]), ...members.flatMap((at) => open[at] ?? [])]);
        return found ? costOf(found) : Number.POSITIVE_INFINITY;
      },
      isAlike: (one, other) => likeness(open[one]) === likeness(open[other]),
    },
  );
  const { pumpOf, value, atLeast, isProven } = sharing.best();
  const placed = open.flatMap(({ id }, index) => {
    const pump = pumps[pumpOf[index] ?? -1];
    return pump ? [[id, pump.id] as const] : [];
  });
  return {
    pumpOf: new Map(placed),
    auto: { kind: 'pumps', placed: placed.map(([id]) => id), isProven, levels: levelsOf(value, atLeast) },
  };
}

function costOf({ exceeded, shortfall }: PumpTrial): number {
  return exceeded * LIMIT_COST + Math.ceil(shortfall / STEP - 1e-6) * STEP;
}

/** What is under a bound only as long as what is weighed before it meets its own is left out. */
function levelsOf(value: PumpShare, atLeast: PumpShare): readonly AutoLevel[] {
  const [exceeded, exceededAtLeast] = [limitsOf(value), limitsOf(atLeast)];
  const level = (name: AutoLevel['name'], of: (share: PumpShare) => number): AutoLevel => ({
    name,
    value: of(value),
    atLeast: of(atLeast),
  });
  if (exceeded > exceededAtLeast) return [level('limits-exceeded', limitsOf)];
  const worst = level('worst-shortfall', ({ worst: cost }) => shortfallIn(cost));
  return exceeded > 0
    ? [level('limits-exceeded', limitsOf), worst]
    : [worst, level('shortfalls', ({ sum }) => shortfallIn(sum))];
}

function limitsOf({ worst }: PumpShare): number {
  return Math.floor(worst / LIMIT_COST);
}

function shortfallIn(cost: number): number {
  return Math.round((cost % LIMIT_COST) * 100) / 100;
}

type TryShared = (pump: MistPump | undefined, members: readonly CareEnclosure[]) => PumpTrial | null;

/** Pumps that differ in nothing but their names are tried once. */
function trialOnce(care: Care, power: ShelfPower, tryUnit: (unit: MistUnit) => PumpTrial | null): TryShared {
  const known = new Map<string, PumpTrial | null>();
  return (pump, members) => {
    if (!pump) return null;
    const ids = new Set(members.map(({ id }) => id));
    const key = `${kindOf(care, pump)} ${[...ids].sort().join(' ')}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const shared = care.enclosures.filter(({ id }) => ids.has(id)).map((each) => ({ ...each, mist: pump.id }));
    const unit = mistUnits({ ...care, enclosures: shared }, power, new Map(), new Log())[0];
    const found = unit?.pump?.id === pump.id ? tryUnit(unit) : null;
    known.set(key, found);
    return found;
  };
}

/** A pump with the timers that it hangs on, their names left out; one whose timer drives more is like no other. */
function kindOf(care: Care, pump: MistPump): string {
  const timer = care.devices.find(({ id }) => id === pump.outlet);
  const isLive = timer && 'outlet' in timer && timer.outlet === 'always';
  const isAlone = care.devices.filter((device) => 'outlet' in device && device.outlet === pump.outlet).length === 1;
  if (!timer || !isLive || !isAlone) return pump.id;
  const plain = (device: object) => ({ ...device, id: null, path: null, where: null, outlet: null });
  return JSON.stringify([plain(pump), plain(timer)]);
}

function optionsOf(
  care: Care,
  pumps: readonly MistPump[],
  enclosure: CareEnclosure,
  trial: TryShared,
): readonly PumpOption[] {
  return pumps.flatMap((pump, index) => {
    const found = fits(care, pump, [enclosure]) ? trial(pump, [enclosure]) : null;
    return found ? [{ pump: index, cost: costOf(found), waterG: found.waterG }] : [];
  });
}

function namedOn(care: Care, pump: MistPump | undefined): readonly CareEnclosure[] {
  return care.enclosures.filter(({ mist }) => mist === pump?.id);
}

function fits(care: Care, pump: MistPump | undefined, members: readonly (CareEnclosure | undefined)[]): boolean {
  const all = [...namedOn(care, pump), ...members.flatMap((each) => each ?? [])];
  const nozzles = all.reduce((sum, each) => sum + each.nozzles.count, 0);
  return (
    pump !== undefined && nozzles <= pump.nozzles && (all.length === 1 || !all.some((each) => isApart(care, each)))
  );
}

function isApart({ plan }: Care, { states }: CareEnclosure): boolean {
  return states.some(
    ({ is, from, to }) => (is === 'quarantine' || is === 'ill') && to >= plan.from && from < plan.from + plan.days,
  );
}

/** What an enclosure asks of its mists. */
function likeness(enclosure: CareEnclosure | undefined): string {
  const { humidity, water, misting } = enclosure?.targets ?? { humidity: null, water: null, misting: null };
  return JSON.stringify([enclosure?.activity, enclosure?.sizeM, enclosure?.openShare, humidity, water, misting]);
}
