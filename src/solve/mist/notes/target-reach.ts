/** Which humidity targets an enclosure cannot reach in its room whatever is misted, and with which covering or opening it could. */
import { CLOSED_CHANGES_PER_HOUR, openShareOfAirChanges } from '../../../science/enclosure-defaults.ts';
import {
  airChangesToHoldDry,
  airChangesToReach,
  type HumidityReach,
  humidityReach,
} from '../../../science/humidity-reach.ts';
import { saturationDensityGPerM3 } from '../../../science/moist-air.ts';
import type { MistCase, TargetName } from '../day/day-problem.ts';

/** A target that no mists can meet. */
export interface OutOfReach {
  readonly target: TargetName | 'peak';
  /** The edge that is out of reach, and where the air settles instead. */
  readonly edge: number;
  readonly settles: number;
  /** The most (too dry) or the least (too humid) air changes an hour that would do; null: none. */
  readonly airChangesPerHour: number | null;
  /** The bare-mesh share for that by the defaults' own form, 0 to 1; null: none. */
  readonly openShare: number | null;
  readonly remedy: 'cover' | 'open' | 'room';
}

export interface CaseReach {
  readonly day: HumidityReach;
  readonly night: HumidityReach;
  readonly outOfReach: readonly OutOfReach[];
}

type Edge = 'too dry' | 'too humid' | 'floor';

/** Returns where the air of a case settles by day and by night, and the targets outside; temperatures are those that the air ends at. */
export function reachOfCase(one: MistCase, dayC: number, nightC: number): CaseReach {
  const { body, spray, air, targets } = one;
  const wets = spray.landsShare > 0;
  const fog = spray.airborneShare * spray.flowGPerHour;
  const [daySaturation, nightSaturation] = [saturationDensityGPerM3(dayC), saturationDensityGPerM3(nightC)];
  const day = humidityReach(body, air.roomVapourGPerM3, daySaturation, wets, fog);
  const night = humidityReach(body, air.roomVapourGPerM3, nightSaturation, wets, fog);
  const both = { wet: Math.max(day.wet, night.wet), dry: Math.min(day.dry, night.dry) };
  const wetterSaturation = night.wet > day.wet ? nightSaturation : daySaturation;
  const drierSaturation = night.dry < day.dry ? nightSaturation : daySaturation;
  const found: OutOfReach[] = [];
  const judge = (
    target: OutOfReach['target'],
    edge: number | undefined,
    kind: Edge,
    reach: HumidityReach,
    rho: number,
  ) => {
    if (edge === undefined) return;
    const miss = missed(one, target, edge, kind, reach, rho);
    if (miss) found.push(miss);
  };
  judge('day', targets.day?.[0], 'too dry', day, daySaturation);
  judge('day', targets.day?.[1], 'too humid', day, daySaturation);
  judge('night', targets.night?.[0], 'too dry', night, nightSaturation);
  judge('night', targets.night?.[1], 'too humid', night, nightSaturation);
  judge('mean', targets.mean?.[0], 'too dry', both, wetterSaturation);
  judge('mean', targets.mean?.[1], 'too humid', both, drierSaturation);
  judge('peak', targets.peak?.[0], 'too dry', both, wetterSaturation);
  judge('ceiling', targets.ceiling ?? undefined, 'too humid', both, drierSaturation);
  if (one.dryOut) judge('floor', targets.floor ?? undefined, 'floor', dryHours(one, day, night), drierSaturation);
  return { day, night, outOfReach: found };
}

/** A floor has to hold without film in the hours that are to dry out. */
function dryHours(one: MistCase, day: HumidityReach, night: HumidityReach): HumidityReach {
  if (one.dryOut?.when === 'dark') return night;
  if (one.dryOut?.when === 'lit') return day;
  return { wet: Math.max(day.wet, night.wet), dry: Math.max(day.dry, night.dry) };
}

function missed(
  one: MistCase,
  target: OutOfReach['target'],
  edge: number,
  kind: Edge,
  reach: HumidityReach,
  saturation: number,
): OutOfReach | null {
  const { body, air } = one;
  if (kind === 'too humid') {
    if (reach.dry <= edge) return null;
    const least = airChangesToHoldDry(body, air.roomVapourGPerM3, saturation, edge);
    const helps = Number.isFinite(least) && least > body.airChangesPerHour;
    return { target, edge, settles: reach.dry, ...covering(helps ? least : null, 'open') };
  }
  const settles = kind === 'floor' ? reach.dry : reach.wet;
  if (settles >= edge) return null;
  const most =
    kind === 'floor'
      ? airChangesToHoldDry(body, air.roomVapourGPerM3, saturation, edge)
      : airChangesToReach(body, air.roomVapourGPerM3, saturation, edge);
  return { target, edge, settles, ...covering(most > 0 ? most : null, 'cover') };
}

/** Returns the covering of so many air changes, or the room as the only lever where no mesh has them. */
function covering(
  airChangesPerHour: number | null,
  remedy: 'cover' | 'open',
): Pick<OutOfReach, 'airChangesPerHour' | 'openShare' | 'remedy'> {
  if (airChangesPerHour === null) return { airChangesPerHour, openShare: null, remedy: 'room' };
  const openShare = openShareOfAirChanges(airChangesPerHour);
  const possible = remedy === 'open' ? openShare <= 1 : airChangesPerHour >= CLOSED_CHANGES_PER_HOUR;
  if (!possible) return { airChangesPerHour, openShare: null, remedy: 'room' };
  return { airChangesPerHour, openShare: Math.min(1, openShare), remedy };
}
