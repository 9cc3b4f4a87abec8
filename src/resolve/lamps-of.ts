/** The lamps of an enclosure with everything said, and the question that spray beside a hot lamp asks. */

import type { Place } from '../diagnostics/diagnostic.ts';
import type { Log } from '../diagnostics/log.ts';
import type { ReadEnclosure, ReadLamp } from '../read/household-tree.ts';
import type { FilePath } from '../read/placed-file.ts';
import { approximateDays } from './calendar-span.ts';
import type { CareEnclosure, Lamp } from './care.ts';
import { HOT_LAMPS } from './cautions-of.ts';

/** Returns the lamps in the file's order. */
export function lampsOf(said: ReadEnclosure, path: FilePath): readonly Lamp[] {
  return (said.lamps ?? []).map((lamp, index) => lampOf(lamp, [...path, 'lamps', index]));
}

function lampOf(said: ReadLamp, path: FilePath): Lamp {
  const life = said.replace_after;
  return {
    id: said.id,
    path,
    kind: said.kind,
    uses: said.for,
    powerW: said.power,
    outlet: said.outlet,
    thermostat: said.thermostat ?? 'none',
    fitted: said.fitted ?? null,
    replaceAfter:
      life === undefined || life.unit === 'hour'
        ? null
        : life.unit === 'month'
          ? { months: life.count }
          : { days: approximateDays({ unit: life.unit, count: life.count }) },
    replaceAfterHours: life?.unit === 'hour' ? life.count : null,
    guard: said.guard ?? null,
    warmsC: said.warms ?? null,
  };
}

/** Asks whether spray reaches a hot lamp where a pump or fogger shares the enclosure with one and the file does not say. */
export function askAboutSpray(
  enclosure: Pick<CareEnclosure, 'id' | 'lamps' | 'mist' | 'nozzles'>,
  placeOf: (path: FilePath) => Place,
  log: Log,
): void {
  if (enclosure.mist === 'none' || enclosure.mist === 'by-hand' || enclosure.nozzles.hitsLamp !== null) return;
  const hot = enclosure.lamps.filter(({ kind }) => HOT_LAMPS.includes(kind));
  const first = hot[0];
  const names = hot.map(({ id, kind }) => `${id} (${kind})`).join(', ');
  if (first) log.report('hot-lamp-and-spray', { enclosure: enclosure.id, lamps: names }, placeOf(first.path));
}
