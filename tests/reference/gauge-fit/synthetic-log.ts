/** Gauge logs made by the second integrator: enclosures of known air, days that differ, and a gauge that errs. */
import type { History } from '../../../src/science/air-history.ts';
import type { AirDay, Run, Spray, WetEnclosure } from '../../../src/science/enclosure-day.ts';
import { type EnclosureShape, wetEnclosureOf } from '../../../src/science/enclosure-defaults.ts';
import { saturationDensityGPerM3 } from '../../../src/science/moist-air.ts';
import type { Choices } from '../../generated/random.ts';
import { STEP_SECONDS, secondDays } from '../wet-enclosure/second-integrator.ts';

const DAY = 1440;
const PER_MINUTE = 60 / STEP_SECONDS;
/** Days before the first reading: the history and the integrator begin alike, two days earlier. */
export const LEAD_DAYS = 2;

export interface Gauge {
  /** Standard deviation of a reading, as a fraction of saturation. */
  readonly noise: number;
  /** At most so many minutes ahead or behind, the same through a log. */
  readonly clockMinutes: number;
  readonly lostShare: number;
  readonly everyMinutes: number;
  /** How much of an error the next reading keeps; absent: none. */
  readonly chain?: number;
}

export const ORDINARY: Gauge = { noise: 0.03, clockMinutes: 1, lostShare: 0.1, everyMinutes: 10 };

export interface SyntheticLog {
  readonly truth: WetEnclosure;
  /** What the file alone would say: our estimates. */
  readonly estimate: WetEnclosure;
  readonly spray: Spray;
  /** Begins LEAD_DAYS before the first reading. */
  readonly history: History;
  readonly days: readonly { readonly air: AirDay; readonly runs: readonly Run[] }[];
  /** Since the history's first instant, by the gauge's clock. */
  readonly readings: readonly { readonly minute: number; readonly humidity: number }[];
}

/** Draws an enclosure, its true air within a factor of about two of our estimates, and a gauge's log of so many days. */
export function syntheticLog(choices: Choices, dayCount: number, gauge: Gauge): SyntheticLog {
  const shape: EnclosureShape = {
    widthM: 0.3 + 0.6 * choices.share(),
    depthM: 0.3 + 0.4 * choices.share(),
    heightM: 0.4 + 0.8 * choices.share(),
    openShare: 0.05 + 0.45 * choices.share(),
    planting: choices.oneOf(['light', 'medium', 'dense']),
    floor: 'dry',
  };
  const estimate = wetEnclosureOf(shape).enclosure;
  const within = () => Math.exp(Math.log(2) * (2 * choices.share() - 1));
  const truth: WetEnclosure = {
    ...estimate,
    airChangesPerHour: estimate.airChangesPerHour * within(),
    baseEvaporationGPerHour: estimate.baseEvaporationGPerHour * within(),
    transferMPerHour: estimate.transferMPerHour * within(),
  };
  const spray: Spray = {
    flowGPerHour: 2000 + 5000 * choices.share(),
    landsShare: 0.6,
    airborneShare: 0,
    lagSeconds: choices.chance(0.5) ? 3 : 0,
    afterDripG: 0,
  };
  const room = 19 + 4 * choices.share();
  const dry = 0.3 + 0.2 * choices.share();
  const lit = { onMinute: 7 * 60 + 15 * choices.between(0, 8), minutes: 15 * choices.between(42, 52) };
  const [warmC, coolC] = [room + 2 + 4 * choices.share(), room - 2 * choices.share()];
  const air: AirDay = {
    roomVapourGPerM3: dry * saturationDensityGPerM3(room),
    temperatureSteps: [
      { fromMinute: lit.onMinute, celsius: warmC },
      { fromMinute: (lit.onMinute + lit.minutes) % DAY, celsius: coolC },
    ],
    lit,
  };
  const days = Array.from({ length: dayCount }, () => ({ air, runs: runsOfDay(choices) }));
  const humidity = secondDays(truth, spray, days);
  return {
    truth,
    estimate,
    spray,
    days,
    history: historyOf(days, truth.warmUpMinutes),
    readings: readingsOf(choices, humidity, gauge),
  };
}

function runsOfDay(choices: Choices): readonly Run[] {
  const starts = new Set(Array.from({ length: choices.between(3, 6) }, () => 30 * choices.between(14, 42)));
  return [...starts]
    .sort((a, b) => a - b)
    .map((startMinute) => ({ startMinute, seconds: choices.oneOf([30, 60, 90, 120, 180]) }));
}

/** The same days as a history, the first of them twice before; the lag of the air's warmth written out anew. */
export function historyOf(days: SyntheticLog['days'], warmUpMinutes: number): History {
  const [first] = days;
  const whole = first ? [first, first, ...days] : [];
  const steps = whole.flatMap(({ air }, day) =>
    [...air.temperatureSteps]
      .sort((a, b) => a.fromMinute - b.fromMinute)
      .map(({ fromMinute, celsius }) => ({ fromMinute: day * DAY + fromMinute, celsius })),
  );
  const before = steps.at(-1)?.celsius ?? 0;
  const values: number[] = [before];
  steps.forEach(({ fromMinute }, index) => {
    const since = fromMinute - (steps[index - 1]?.fromMinute ?? 0);
    const force = index === 0 ? before : (steps[index - 1]?.celsius ?? 0);
    const value = values[index] ?? before;
    values.push(force + (value - force) * Math.exp(-since / warmUpMinutes));
  });
  return {
    minutes: whole.length * DAY,
    roomVapourGPerM3: whole.map(({ air }, day) => ({ fromMinute: day * DAY, value: air.roomVapourGPerM3 })),
    celsiusAt: (minute) => {
      const index = steps.findLastIndex(({ fromMinute }) => fromMinute <= minute);
      const step = steps[index];
      if (!step) return before;
      const value = values[index + 1] ?? before;
      return step.celsius + (value - step.celsius) * Math.exp(-(minute - step.fromMinute) / warmUpMinutes);
    },
    edges: steps.map(({ fromMinute }) => fromMinute),
    runs: whole.flatMap(({ runs }, day) =>
      runs.map(({ startMinute, seconds }) => ({ startMinute: day * DAY + startMinute, seconds })),
    ),
  };
}

function readingsOf(choices: Choices, humidity: readonly Float64Array[], gauge: Gauge): SyntheticLog['readings'] {
  const ahead = gauge.clockMinutes * (2 * choices.share() - 1);
  const readings: { minute: number; humidity: number }[] = [];
  const chain = gauge.chain ?? 0;
  let kept = normal(choices);
  for (let minute = 20; minute < humidity.length * DAY - 20; minute += gauge.everyMinutes) {
    kept = chain * kept + Math.sqrt(1 - chain * chain) * normal(choices);
    const error = gauge.noise * kept;
    if (choices.chance(gauge.lostShare)) continue;
    const step = Math.round((minute - ahead) * PER_MINUTE);
    const day = Math.floor(step / (DAY * PER_MINUTE));
    const read = (humidity[day]?.[step - day * DAY * PER_MINUTE] ?? 0) + error;
    readings.push({
      minute: LEAD_DAYS * DAY + minute,
      humidity: Math.min(1, Math.max(0, Math.round(read * 1000) / 1000)),
    });
  }
  return readings;
}

/** Source: Box GEP, Muller ME (1958), Ann. Math. Statist. 29:610-611. */
export function normal(choices: Choices): number {
  return Math.sqrt(-2 * Math.log(1 - choices.share())) * Math.cos(2 * Math.PI * choices.share());
}
