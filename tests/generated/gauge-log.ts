/** A household with one misted enclosure, and logs of a gauge that hangs in it: what the air model says, with noise. */
import { epochDay, isoDateOf } from '../../src/basics/calendar-day.ts';
import { clockTimeOf } from '../../src/basics/minute-of-day.ts';
import { utcMinuteOfDateStart, wallTimeAt } from '../../src/basics/utc-offsets.ts';
import { zoneOffsets } from '../../src/basics/zone.ts';
import type { Compiled } from '../../src/compile.ts';
import { pastDays } from '../../src/fit/past-days.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { AirHistory, type FreeAir } from '../../src/science/air-history.ts';
import { type Asked, compiledHousehold } from '../compiled-household.ts';
import { Choices } from './random.ts';

/** Two mists a day by a cadence of its own; `more` stands in the enclosure. */
export function fernHousehold(more = '', mist = 'pump'): string {
  return `format: 1
name: One shelf
contacts: { keeper: "+34 600 000 000", vet: "Exotics clinic, +34 976 000 000" }
site: { timezone: Europe/Madrid, latitude: 41.65, longitude: -0.89, room: { day: 22 °C, night: 19 °C, humidity: 38 % } }
plan: { from: 2027-01-01, days: 365 }
people: [{ id: keeper, feeds_at: "12:30", shops: true }]
hardware:
  - { id: dial, kind: pin-dial, step: 15 min, rating: 1800 W }
  - { id: mist-timer, kind: programmable-timer, entries: 12, resolution: 1 s, shortest: 5 s, clock: standard, rating: 1000 W }
  - { id: pump, kind: mist-pump, outlet: mist-timer, power: 30 W, flow: 90 mL/min, nozzles: 1, lag: 3 s, longest_run: 5 min, rest: 10 min, tank: { holds: 15 L, reserve: 2 L } }
enclosures:
  - id: fern
    name: Fern
    species: panther-chameleon
    stage: adult
    size: { width: 50 cm, depth: 50 cm, height: 90 cm }
    open: 33 %
    planting: medium
    lamps: [{ id: day, kind: led, for: [daylight], power: 20 W, warms: 3 °C, outlet: dial }]
    mist: ${mist}
    nozzles: { count: 1, hits_lamp: false }
${more}`;
}

/** Compiles it as `home.yaml`. */
export function compiledFern(
  text: string,
  fitted: Asked['fitted'] = null,
  earlier: Plan | null = null,
  today = '2027-01-01',
): Compiled {
  return compiledHousehold(text, { fitted, earlier, today });
}

export interface LogWish {
  readonly from: string;
  readonly days: number;
  readonly everyMinutes: number;
  /** The true air over our estimates. */
  readonly factors: FreeAir;
  /** Standard deviation, as a fraction of saturation. */
  readonly noise: number;
  /** By how much the gauge's clock runs ahead. */
  readonly aheadMinutes: number;
  readonly seed: number;
}

export const WEEK: LogWish = {
  from: '2027-01-05',
  days: 7,
  everyMinutes: 10,
  factors: { airChangesPerHour: 1.5, baseEvaporationGPerHour: 1.2, transferMPerHour: 0.8 },
  noise: 0.02,
  aheadMinutes: 0,
  seed: 1,
};

export interface LoggedLine {
  /** Wall time by the gauge. */
  readonly date: string;
  readonly time: string;
  /** In %, to one decimal. */
  readonly humidity: number;
  readonly celsius: number;
}

/** Returns what the gauge logs, in the order of time; and the true air. */
export function gaugeLog(
  { plan, care }: Compiled,
  wish: LogWish = WEEK,
): { readonly lines: readonly LoggedLine[]; readonly truth: FreeAir } {
  const enclosure = care?.enclosures[0];
  const model = plan?.misting[0]?.model;
  if (!plan || !care || !enclosure || !model) throw new Error('the household of the log does not compile');
  const offsets = zoneOffsets(care.site.timezone, care.plan.from, care.plan.days);
  const start = utcMinuteOfDateStart(offsets, epochDay(wish.from));
  const count = Math.floor((wish.days * 1440) / wish.everyMinutes);
  const readings = Array.from({ length: count }, (_, row) => ({
    utcMinute: start + row * wish.everyMinutes,
    humidity: 0.5,
    celsius: null,
    row,
  }));
  const past = pastDays({ care, plan, enclosure, offsets, readings, mists: null, warmUpMinutes: model.warmUpMinutes });
  const body = { ...model, baseEvaporationGPerHour: model.baselineGPerHour };
  const history = new AirHistory(body, { ...model, lagSeconds: 3, afterDripG: 0 }, past.history);
  const truth: FreeAir = {
    airChangesPerHour: model.airChangesPerHour * wish.factors.airChangesPerHour,
    baseEvaporationGPerHour: model.baselineGPerHour * wish.factors.baseEvaporationGPerHour,
    transferMPerHour: model.transferMPerHour * wish.factors.transferMPerHour,
  };
  history.simulate(truth);
  const choices = new Choices(wish.seed);
  const lines = readings.map(({ utcMinute }): LoggedLine => {
    const minute = utcMinute - past.startUtcMinute;
    const { day, minute: wall } = wallTimeAt(offsets, utcMinute + wish.aheadMinutes);
    const humidity = humidityAt(history, minute) + wish.noise * roughlyNormal(choices);
    return {
      date: isoDateOf(day),
      time: clockTimeOf(wall),
      humidity: Math.round(1000 * Math.min(1, Math.max(0, humidity))) / 10,
      celsius: Math.round(10 * past.history.celsiusAt(minute)) / 10,
    };
  });
  return { lines, truth };
}

function humidityAt({ minutes, humidity }: AirHistory, minute: number): number {
  const after = minutes.findIndex((each) => each > minute);
  const [from = 0, to = 1] = [minutes[after - 1], minutes[after]];
  const [low = 0, high = 0] = [humidity[after - 1], humidity[after]];
  return low + ((high - low) * (minute - from)) / (to - from);
}

/** The sum of twelve uniform numbers less six. */
function roughlyNormal(choices: Choices): number {
  return Array.from({ length: 12 }, () => choices.share()).reduce((sum, each) => sum + each, -6);
}

/** Returns a log as comma-separated text with English headings. */
export function csvOf(lines: readonly LoggedLine[]): string {
  return `time,humidity (%),temperature (°C)\n${lines.map(({ date, time, humidity, celsius }) => `${date} ${time},${humidity},${celsius}\n`).join('')}`;
}
