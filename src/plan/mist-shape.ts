/** The mists of a plan.json. */

import { clockKind, past } from './dial-shape.ts';
import type {
  AirModel,
  MistAdvice,
  MistCondition,
  MistEntry,
  MistLimits,
  MistPlan,
  MistPrediction,
  MistSet,
  MistTargets,
} from './plan.ts';
import { clock, date, either, list, mapOf, maybe, number, orNull, pair, record, text, word } from './shape.ts';

const lightHours = word('lit', 'dark', 'any');
const range = pair(number);

const entry = record<MistEntry>({ at: clock, seconds: number });
const prediction = record<MistPrediction>({
  dayHumidity: orNull(number),
  nightHumidity: orNull(number),
  meanHumidity: number,
  lowHumidity: number,
  highHumidity: number,
  wetLimit: number,
  dryLimit: number,
  peaks: number,
  hoursSoaked: number,
  dryOutHours: number,
  waterMlPerDay: number,
  runoffMlPerDay: number,
  tankDays: orNull(number),
});
const condition = record<MistCondition>({
  from: date,
  to: date,
  dayOn: clock,
  dayOff: clock,
  roomTemperatureC: number,
  roomHumidity: number,
  dayTemperatureC: number,
  nightTemperatureC: number,
  predicted: prediction,
  curve: record<MistCondition['curve']>({
    everyMinutes: number,
    humidity: list(number),
    leafWetness: list(number),
    temperatureC: list(number),
  }),
  shortfall: number,
});
const mistSet = record<MistSet>({
  from: date,
  to: date,
  entries: list(entry),
  wall: list(record<MistSet['wall'][number]>({ from: date, to: date, entries: list(entry) })),
  interval: maybe(
    record<NonNullable<MistSet['interval']>>({
      onSeconds: number,
      offSeconds: number,
      poweredBy: orNull(text),
      plugInAt: maybe(clock),
    }),
  ),
  allowed: list(pair(clock)),
  conditions: list(condition),
  shortfall: number,
  shortfalls: list(record<MistSet['shortfalls'][number]>({ target: text, by: number, unit: text, remedy: text })),
  past,
});
const mistTargets = record<MistTargets>({
  dayHumidity: orNull(range),
  nightHumidity: orNull(range),
  meanHumidity: orNull(range),
  peakHumidity: orNull(range),
  peaksPerDay: orNull(range),
  floorHumidity: orNull(number),
  ceilingHumidity: orNull(number),
  soakedAtMostHours: orNull(number),
  dryOut: orNull(record<NonNullable<MistTargets['dryOut']>>({ hours: number, when: lightHours, below: number })),
  drink: orNull(record<NonNullable<MistTargets['drink']>>({ when: lightHours, mists: number, seconds: number })),
  cadence: orNull(
    record<NonNullable<MistTargets['cadence']>>({ perDay: range, seconds: range, gapMinutes: orNull(number) }),
  ),
  favour: word('dawn', 'dusk', 'dawn-and-dusk', 'even'),
});
const limits = record<MistLimits>({
  entries: number,
  startStepMinutes: number,
  lengthStepSeconds: number,
  shortestSeconds: number,
  longestSeconds: number,
  restSeconds: number,
  dutyFactor: orNull(number),
  waterMlPerDay: orNull(number),
  runoffMlPerDay: orNull(number),
});
const model = record<AirModel>({
  volumeM3: number,
  airChangesPerHour: number,
  wettableAreaM2: number,
  filmCapacityG: number,
  airborneShare: number,
  landsShare: number,
  warmUpMinutes: number,
  transferMPerHour: number,
  baselineGPerHour: number,
  flowGPerHour: number,
  lagSeconds: maybe(number),
  afterDripMl: maybe(number),
});
/** The mists of one enclosure in a plan.json. */
export const mist = record<MistPlan>({
  enclosure: text,
  pump: orNull(text),
  device: orNull(text),
  clock: clockKind,
  sets: list(mistSet),
  targets: mistTargets,
  limits: orNull(limits),
  model,
  advice: list(
    record<MistAdvice>({ code: text, message: text, values: maybe(mapOf(either(text, number))), about: maybe(text) }),
  ),
});
