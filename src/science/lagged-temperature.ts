/** How the air of an enclosure follows its lamps over the day. */
import type { AirDay } from './enclosure-day.ts';

const MINUTES = 1440;

/** Fills 1441 temperatures, one at each whole minute: the forcing followed by a first-order lag, around the periodic day. */
export function laggedTemperatures(into: Float64Array, steps: AirDay['temperatureSteps'], lagMinutes: number): void {
  const forcing = new Float64Array(MINUTES);
  const ordered = [...steps].sort((a, b) => a.fromMinute - b.fromMinute);
  let celsius = ordered[ordered.length - 1]?.celsius ?? 0;
  let next = 0;
  for (let minute = 0; minute < MINUTES; minute++) {
    for (let step = ordered[next]; step && step.fromMinute <= minute; step = ordered[++next]) celsius = step.celsius;
    forcing[minute] = celsius;
  }
  const keeps = lagMinutes > 0 ? Math.exp(-1 / lagMinutes) : 0;
  let value = 0;
  for (const force of forcing) value = force + (value - force) * keeps;
  value /= 1 - keeps ** MINUTES;
  for (let minute = 0; minute <= MINUTES; minute++) {
    into[minute] = value;
    const force = forcing[minute % MINUTES] ?? 0;
    value = force + (value - force) * keeps;
  }
}
