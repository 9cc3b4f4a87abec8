/** One gauge log against one enclosure of a plan: checks, the fit, and everything there is to say about it. */
import { isoDateOf } from '../basics/calendar-day.ts';
import { DAY_MINUTES } from '../basics/minute-of-day.ts';
import { type UtcMinute, type UtcOffsets, utcMinuteOfDateStart, wallTimeAt } from '../basics/utc-offsets.ts';
import type { Log } from '../diagnostics/log.ts';
import type { AirModel, Plan } from '../plan/plan.ts';
import type { Care, CareEnclosure } from '../resolve/care.ts';
import { AirHistory, type FreeAir } from '../science/air-history.ts';
import type { Spray, WetEnclosure } from '../science/enclosure-day.ts';
import { clockOff } from './clock-check.ts';
import { AIR_KEYS, type AirFit, type AirKey, fitAir, gaugeNoise, type Reading, Sampler } from './fit-air.ts';
import { corrected, type GaugeCorrection, stuckGauge } from './gauge.ts';
import { type PastDays, pastDays } from './past-days.ts';
import type { GaugeReading, Readings } from './readings.ts';

export interface FitInput {
  readonly care: Care;
  /** Made without fitted values. */
  readonly plan: Plan;
  readonly enclosure: CareEnclosure;
  readonly offsets: UtcOffsets;
  readonly gauge: GaugeCorrection;
}

export interface EnclosureFit {
  readonly enclosure: CareEnclosure;
  readonly fit: AirFit;
  /** What our estimates or the file say. */
  readonly estimate: FreeAir;
  /** Values that the file says itself. */
  readonly heldByFile: readonly AirKey[];
  readonly readings: readonly Reading[];
  readonly history: AirHistory;
  readonly past: PastDays;
  readonly firstUtcMinute: UtcMinute;
  readonly lastUtcMinute: UtcMinute;
  /** Readings that were used, before any were joined. */
  readonly count: number;
  readonly lost: number;
  /** Times of more than two hours without a reading, h. */
  readonly gapHours: readonly number[];
}

const FEWEST_READINGS = 100;
const SHORTEST_HOURS = 48;
const LONGEST_DAYS = 60;
/** More readings than this are joined, neighbours in time, into means. */
const MOST_READINGS = 6000;
const GAP_MINUTES = 120;
/** A model that misses by more than this, as a fraction of saturation, does not describe the enclosure. */
const POOR_RESIDUAL = 0.07;
/** Chained errors as strong as this are a wave that the model does not know. */
const POOR_CHAIN = 12;

/** Returns the fit, or null where the readings say nothing that may be used; the log says why. */
export function fitEnclosure(input: FitInput, log: Readings, messages: Log): EnclosureFit | null {
  const used = usable(input, log, messages);
  if (!used) return null;
  const { enclosure, care, plan } = input;
  const model = plan.misting.find((each) => each.enclosure === enclosure.id)?.model;
  if (!model) return null;
  const heldByFile = AIR_KEYS.filter((key) => enclosure.air[key] !== undefined);
  sayHeld(input, heldByFile, messages);
  const past = pastDays({ ...input, readings: used, mists: log.mists, warmUpMinutes: model.warmUpMinutes });
  const free = freeKeys(heldByFile, model, past);
  if (free.length === 0) {
    messages.report('fit-nothing-free', { enclosure: enclosure.id }, care.placeOf([...enclosure.path, 'air']));
    return null;
  }
  const readings = joined(used, past.startUtcMinute, input.gauge);
  const history = new AirHistory(bodyOf(model), sprayOf(input, model), past.history);
  const estimate = estimateOf(model);
  const sampler = new Sampler(history, readings, gaugeNoise(Float64Array.from(readings, ({ humidity }) => humidity)));
  const ahead = clockOff(sampler, readings, estimate, past.mistCount);
  if (ahead !== null) {
    messages.report('gauge-clock-off', { minutes: ahead }, null);
    return null;
  }
  const fit = fitAir(history, readings, estimate, free);
  sayMisses(fit, messages);
  if (!isTold(input, fit, free, past, messages)) return null;
  sayUntold(fit, messages);
  return {
    enclosure,
    fit,
    estimate,
    heldByFile,
    readings,
    history,
    past,
    firstUtcMinute: used[0]?.utcMinute ?? 0,
    lastUtcMinute: used.at(-1)?.utcMinute ?? 0,
    count: used.length,
    lost: log.lost,
    gapHours: gapsOf(used),
  };
}

/** Returns the readings that lie in the plan, the newest of them where there are very many; null where they are too few or the gauge is stuck. */
function usable(
  { care, offsets }: FitInput,
  { readings, placeOfRow }: Readings,
  messages: Log,
): readonly GaugeReading[] | null {
  const { from, days } = care.plan;
  const [begin, end] = [utcMinuteOfDateStart(offsets, from), utcMinuteOfDateStart(offsets, from + days)];
  const inside = readings.filter(({ utcMinute }) => utcMinute >= begin && utcMinute < end);
  const span = (list: readonly GaugeReading[]) => {
    const at = (reading: GaugeReading | undefined) => isoDateOf(wallTimeAt(offsets, reading?.utcMinute ?? 0).day);
    return { first: at(list[0]), last: at(list.at(-1)) };
  };
  const plan = { from: isoDateOf(from), to: isoDateOf(from + days - 1) };
  if (readings.length > 0 && inside.length < readings.length)
    messages.report(
      'readings-outside-plan',
      { outside: readings.length - inside.length, of: readings.length, ...span(readings), ...plan },
      care.placeOf(['plan', 'from']),
      inside.length === 0 ? 'error' : 'note',
    );
  if (inside.length === 0 && readings.length > 0) return null;
  const last = inside.at(-1)?.utcMinute ?? 0;
  const newest = inside.filter(({ utcMinute }) => utcMinute > last - LONGEST_DAYS * DAY_MINUTES);
  if (newest.length < inside.length)
    messages.report('readings-newest', { days: LONGEST_DAYS, left: inside.length - newest.length }, null);
  const hours = newest.length > 0 ? (last - (newest[0]?.utcMinute ?? 0)) / 60 : 0;
  if (newest.length < FEWEST_READINGS || hours < SHORTEST_HOURS) {
    messages.report(
      'readings-too-few',
      { count: newest.length, hours: Math.floor(hours), fewest: FEWEST_READINGS, shortest: SHORTEST_HOURS },
      newest[0] ? placeOfRow(newest[0].row) : null,
    );
    return null;
  }
  const stuck = stuckGauge(newest);
  if (!stuck) return newest;
  messages.report(
    'gauge-stuck',
    { percent: Math.round(1000 * stuck.humidity) / 10, hours: Math.round(stuck.hours) },
    placeOfRow(stuck.row),
  );
  return null;
}

function sayHeld({ enclosure, care }: FitInput, keys: readonly AirKey[], messages: Log): void {
  for (const key of keys) {
    const path = [...enclosure.path, 'air', FILE_KEYS[key]];
    messages.report('fit-held-by-file', { key: FILE_KEYS[key] }, care.placeOf(path));
  }
}

/** Keys of the household file. */
const FILE_KEYS: Readonly<Record<AirKey, string>> = {
  airChangesPerHour: 'changes_per_hour',
  baseEvaporationGPerHour: 'base_evaporation',
  transferMPerHour: 'transfer',
};

/** Without a mist nothing tells how fast leaves dry. */
function freeKeys(held: readonly AirKey[], model: AirModel, past: PastDays): readonly AirKey[] {
  return AIR_KEYS.filter((key) => {
    if (held.includes(key)) return false;
    if (key === 'transferMPerHour') return past.mistCount > 0 && model.landsShare > 0 && model.filmCapacityG > 0;
    return key === 'airChangesPerHour' || model.baselineGPerHour > 0;
  });
}

function bodyOf(model: AirModel): WetEnclosure {
  return {
    volumeM3: model.volumeM3,
    airChangesPerHour: model.airChangesPerHour,
    filmCapacityG: model.filmCapacityG,
    wettableAreaM2: model.wettableAreaM2,
    transferMPerHour: model.transferMPerHour,
    baseEvaporationGPerHour: model.baselineGPerHour,
    warmUpMinutes: model.warmUpMinutes,
  };
}

function estimateOf(model: AirModel): FreeAir {
  return {
    airChangesPerHour: model.airChangesPerHour,
    baseEvaporationGPerHour: model.baselineGPerHour,
    transferMPerHour: model.transferMPerHour,
  };
}

function sprayOf({ care, plan, enclosure }: FitInput, model: AirModel): Spray {
  const pumpId = plan.misting.find((each) => each.enclosure === enclosure.id)?.pump;
  const pump = care.devices.find(({ id }) => id === pumpId);
  const lagSeconds = pump && 'lagSeconds' in pump ? pump.lagSeconds : 0;
  const { flowGPerHour, landsShare, airborneShare } = model;
  return { flowGPerHour, landsShare, airborneShare, lagSeconds, afterDripG: 0 };
}

/** Readings on the history's time line, corrected; of very many, means of neighbours. */
function joined(readings: readonly GaugeReading[], start: UtcMinute, gauge: GaugeCorrection): readonly Reading[] {
  const plain = readings.map(({ utcMinute, humidity }) => ({
    minute: utcMinute - start,
    humidity: corrected(humidity, gauge),
  }));
  if (plain.length <= MOST_READINGS) return plain;
  const first = plain[0]?.minute ?? 0;
  const width = Math.max(1, ((plain.at(-1)?.minute ?? 0) - first) / MOST_READINGS);
  const bins = new Map<number, { minute: number; humidity: number; count: number }>();
  for (const { minute, humidity } of plain) {
    const bin = bins.get(Math.floor((minute - first) / width)) ?? { minute: 0, humidity: 0, count: 0 };
    bin.minute += minute;
    bin.humidity += humidity;
    bin.count++;
    bins.set(Math.floor((minute - first) / width), bin);
  }
  return [...bins.values()].map(({ minute, humidity, count }) => ({
    minute: minute / count,
    humidity: humidity / count,
  }));
}

function isTold({ enclosure }: FitInput, fit: AirFit, free: readonly AirKey[], past: PastDays, messages: Log): boolean {
  const needed: AirKey = free.includes('airChangesPerHour') ? 'airChangesPerHour' : (free[0] ?? 'airChangesPerHour');
  if (fit.values.some(({ key }) => key === needed)) return true;
  messages.report(
    'fit-undetermined',
    {
      enclosure: enclosure.id,
      mists: past.mistCount,
      alike: fit.alike.map(({ keys }) => keys.map((key) => WORDS[key])),
    },
    null,
  );
  return false;
}

/** What each value is, in words. */
const WORDS: Readonly<Record<AirKey, string>> = {
  airChangesPerHour: 'air changes',
  baseEvaporationGPerHour: 'evaporation without mist',
  transferMPerHour: 'drying of wet leaves',
};

function sayUntold(fit: AirFit, messages: Log): void {
  for (const key of fit.untold) {
    const pair = fit.alike.find(({ keys }) => keys.includes(key));
    const other = pair?.keys.find((each) => each !== key);
    messages.report(
      'fit-cannot-tell',
      {
        value: WORDS[key],
        other: other === undefined ? null : WORDS[other],
        correlation: pair ? Math.round(1000 * pair.correlation) / 1000 : null,
      },
      null,
    );
  }
}

function sayMisses(fit: AirFit, messages: Log): void {
  if (fit.residual > POOR_RESIDUAL || fit.inflation > POOR_CHAIN)
    messages.report('fit-misses', { points: Math.round(1000 * fit.residual) / 10 }, null);
}

function gapsOf(readings: readonly GaugeReading[]): readonly number[] {
  return readings
    .slice(1)
    .map(({ utcMinute }, index) => utcMinute - (readings[index]?.utcMinute ?? utcMinute))
    .filter((minutes) => minutes > GAP_MINUTES)
    .map((minutes) => minutes / 60);
}
