/** A case as it would be with another mesh, substrate or lamp guard, and what shows without a search that no mists would do in it. */
import { airChangesOfOpenShare } from '../../../science/enclosure-defaults.ts';
import { saturationDensityGPerM3 } from '../../../science/moist-air.ts';
import type { MistCase } from '../day/day-problem.ts';
import { caseDay } from '../mist-plan.ts';

/** Returns a case in which mists may run while a hot lamp is on, as with a guard between the two. */
export function shielded(one: MistCase): MistCase {
  return { ...one, forbidden: { ...one.forbidden, runs: [] } };
}

/** Returns a case with bare mesh of `to` instead of `from`, shares of 0 to 1; a measured air exchange is scaled as the estimates are. */
export function withOpenShare(one: MistCase, from: number, to: number): MistCase {
  const factor = airChangesOfOpenShare(to) / airChangesOfOpenShare(from);
  return { ...one, body: { ...one.body, airChangesPerHour: one.body.airChangesPerHour * factor } };
}

/** Returns a case whose substrate gives off so many times the vapour. */
export function withBase(one: MistCase, factor: number): MistCase {
  return { ...one, body: { ...one.body, baseEvaporationGPerHour: one.body.baseEvaporationGPerHour * factor } };
}

/** Returns the relative humidity that fully wet air can come to at the room's own temperatures, roughly: for skipping what is hopeless. */
export function wettest(one: MistCase): number {
  const { volumeM3, airChangesPerHour, transferMPerHour, wettableAreaM2, baseEvaporationGPerHour } = one.body;
  const coldest = Math.min(...one.air.temperatureSteps.map(({ celsius }) => celsius));
  const warmest = Math.max(...one.air.temperatureSteps.map(({ celsius }) => celsius));
  const exchange = airChangesPerHour * volumeM3;
  const film = one.spray.flowGPerHour > 0 ? transferMPerHour * wettableAreaM2 : 0;
  return Math.max(
    ...[coldest, warmest].map((celsius) => {
      const saturation = saturationDensityGPerM3(celsius);
      const supply = exchange * one.air.roomVapourGPerM3 + film * saturation + baseEvaporationGPerHour;
      const fog = one.spray.airborneShare * one.spray.flowGPerHour;
      return (supply + fog) / (exchange * saturation + film * saturation + baseEvaporationGPerHour);
    }),
  );
}

/** Tells whether the air is too humid without a mist: mists only add to it, so that no search is needed. */
export function isTooHumidUnmisted(one: MistCase): boolean {
  const { figures } = caseDay(one, []);
  const { day, night, mean, ceiling } = one.targets;
  return (
    figures.dayHumidity > (day?.[1] ?? 1) ||
    figures.nightHumidity > (night?.[1] ?? 1) ||
    figures.meanHumidity > (mean?.[1] ?? 1) ||
    figures.highHumidity > (ceiling ?? 1)
  );
}
