/** Enclosures, pumps, rooms and mists drawn at random, wide enough to hold every kind of household. */

import type { AirDay, Run, Spray, WetEnclosure } from '../../../src/science/enclosure-day.ts';
import { saturationDensityGPerM3 } from '../../../src/science/moist-air.ts';

export interface RandomEnclosure {
  readonly body: WetEnclosure;
  readonly spray: Spray;
  readonly air: AirDay;
  readonly runs: readonly Run[];
}

export function randomEnclosure(random: () => number): RandomEnclosure {
  const between = (low: number, high: number) => low + (high - low) * random();
  const [width, depth, height] = [between(0.3, 1.4), between(0.3, 0.9), between(0.3, 1.6)];
  const planting = [0.3, 0.6, 1, 1.6][Math.floor(4 * random())] ?? 1;
  const area = (4 / 3) * (width + depth) * height * planting;
  const fog = random() < 0.15;
  const onMinute = Math.floor(between(0, 1440));
  const minutes = Math.floor(between(240, 1200));
  const room = between(15, 25);
  return {
    body: {
      volumeM3: width * depth * height,
      airChangesPerHour: 0.3 + 26 * random() ** 1.5,
      wettableAreaM2: area,
      filmCapacityG: area * between(60, 180),
      transferMPerHour: between(3, 8),
      baseEvaporationGPerHour: 25 * width * depth * planting * (random() < 0.2 ? 4 : 1),
      warmUpMinutes: between(5, 45),
    },
    spray: {
      flowGPerHour: between(1000, 9000),
      landsShare: fog ? 0 : between(0.4, 0.8),
      airborneShare: fog ? 1 : random() < 0.5 ? 0 : 0.1,
      lagSeconds: random() < 0.5 ? 0 : 3,
      afterDripG: random() < 0.5 ? 0 : 10,
    },
    air: {
      roomVapourGPerM3: between(0.15, 0.85) * saturationDensityGPerM3(room),
      temperatureSteps: [
        { fromMinute: onMinute, celsius: room + between(1, 9) },
        { fromMinute: (onMinute + minutes) % 1440, celsius: room + between(-3, 1) },
      ],
      lit: { onMinute, minutes },
    },
    runs: randomRuns(random, Math.floor(between(0, 8))),
  };
}

function randomRuns(random: () => number, count: number): readonly Run[] {
  const starts = new Set(Array.from({ length: count }, () => 15 * Math.floor(96 * random())));
  const lengths = [15, 30, 60, 90, 120, 180, 300];
  return [...starts]
    .sort((a, b) => a - b)
    .map((startMinute) => ({ startMinute, seconds: lengths[Math.floor(lengths.length * random())] ?? 60 }));
}
