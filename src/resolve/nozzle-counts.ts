/** How an enclosure is misted and through how many nozzles, from what the file says and what one pump can mean. */
import type { Log } from '../diagnostics/log.ts';
import type { Device, MistPump } from '../hardware/devices.ts';
import type { ReadHousehold } from '../read/household.ts';
import type { ReadEnclosure } from '../read/household-tree.ts';
import type { CareEnclosure, Targets } from './care.ts';

type Mist = CareEnclosure['mist'];

function sprayers(devices: readonly Device[]): readonly MistPump[] {
  return devices.filter((device): device is MistPump => device.kind === 'mist-pump' || device.kind === 'fogger');
}

/** Returns how an enclosure is misted; `auto` with a single pump is that pump. Notes what was taken. */
export function mistOf(
  said: ReadEnclosure,
  index: number,
  targets: Targets,
  household: ReadHousehold,
  devices: readonly Device[],
  log: Log,
): Mist {
  const pumps = sprayers(devices);
  const meant: Mist = pumps.length === 1 ? (pumps[0]?.id ?? 'auto') : 'auto';
  if (said.mist === 'auto' && pumps.length > 0) return meant;
  if (said.mist !== undefined && said.mist !== 'auto') return said.mist;
  if (said.mist === undefined && !wantsMist(targets)) return 'none';
  const taken: Mist = pumps.length > 0 ? meant : 'by-hand';
  const how = taken === 'auto' ? 'the better of the pumps' : taken === 'by-hand' ? 'by-hand' : taken;
  log.report('mist-taken', { enclosure: said.id, how }, household.placeOf(['enclosures', index, 'mist']));
  return taken;
}

function wantsMist({ misting, water, humidity }: Targets): boolean {
  if (misting === 'none') return false;
  return misting !== null || water.drink !== null || humidity.peak !== null;
}

/** Returns the nozzles of each enclosure on a pump, by enclosure id; those that say no count share what is left evenly, at least one each. */
export function nozzleCounts(
  household: ReadHousehold,
  mists: readonly Mist[],
  devices: readonly Device[],
  log: Log,
): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const pump of sprayers(devices)) {
    const sharers = household.tree.enclosures.filter((_, index) => mists[index] === pump.id);
    const given = sharers.reduce((sum, { nozzles }) => sum + (nozzles?.count ?? 0), 0);
    const open = sharers.filter(({ nozzles }) => nozzles?.count === undefined).length;
    const each = Math.max(1, Math.floor((pump.nozzles - given) / Math.max(1, open)));
    for (const { id, nozzles } of sharers) counts.set(id, nozzles?.count ?? each);
    const asked = given + open * each;
    if (asked > pump.nozzles) {
      const shares = sharers.map(({ id }) => `${id} ${counts.get(id) ?? 0}`).join(', ');
      log.report(
        'nozzles-too-many',
        { pump: pump.id, has: pump.nozzles, asked, shares, enclosures: sharers.length },
        household.placeOf([...pump.path, 'nozzles']),
      );
    }
  }
  return counts;
}
