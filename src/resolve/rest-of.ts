/** The rest that a keeper asks for, and the rules that stand against it. */
import { type EpochDay, isoDateOf } from '../basics/calendar-day.ts';
import type { Place } from '../diagnostics/diagnostic.ts';
import type { Log } from '../diagnostics/log.ts';
import type { ReadRest } from '../read/household-tree.ts';
import type { FilePath } from '../read/placed-file.ts';
import type { AnimalState, Rest } from './care.ts';
import { photoperiodOf } from './photoperiod.ts';
import { humidityOf, temperatureOf } from './targets-of.ts';

/** Days without feed before a rest where the file does not say: the longer end of what a veterinary sheet asks before hibernation (2 to 4 weeks). */
const LAST_FEED_DAYS = 28;
/** Weeks of a ramp where the file does not say; ours. */
const RAMP_WEEKS = 4;

/** Returns a rest with its ramps and its last feed, by our defaults where the file does not say. */
export function restOf(said: ReadRest, path: FilePath): Rest {
  const { photoperiod, temperature, humidity } = said.targets ?? {};
  return {
    kind: said.kind,
    path,
    from: said.from,
    weeks: said.weeks,
    rampWeeks: said.ramp === undefined ? Math.min(RAMP_WEEKS, Math.floor(said.weeks / 2)) : said.ramp / 7,
    lastFeedDays: said.last_feed ?? (said.kind === 'fast' ? 0 : LAST_FEED_DAYS),
    checkedByVet: said.checked_by_vet ?? null,
    photoperiod: photoperiod ? photoperiodOf(photoperiod) : null,
    temperature: temperature ? restTemperature(temperatureOf(temperature)) : null,
    humidity: humidity ? givenOnly(humidityOf(humidity)) : null,
  };
}

function restTemperature({ dayC, nightC }: ReturnType<typeof temperatureOf>): Rest['temperature'] {
  return { dayC, nightC };
}

function givenOnly(humidity: ReturnType<typeof humidityOf>): Rest['humidity'] {
  return Object.fromEntries(Object.entries(humidity).filter(([, value]) => value !== null));
}

export interface RestContext {
  readonly enclosure: string;
  readonly stages: readonly { readonly from: EpochDay; readonly stage: string }[];
  readonly states: readonly AnimalState[];
  /** Whether a stage, or one that it is like, is the youngest. */
  readonly isHatchling: (stage: string) => boolean;
  readonly placeOf: (path: FilePath) => Place;
  readonly log: Log;
}

/** Returns the day after the last of a rest. */
export function restEnd(rest: Rest): EpochDay {
  return rest.from + rest.weeks * 7;
}

/** Reports what forbids a rest: no check, a late one, the youngest stage, a state, ramps that do not fit. */
export function reportRest(rest: Rest, context: RestContext): void {
  const { enclosure, log, placeOf } = context;
  const { kind } = rest;
  const place = placeOf(rest.path);
  if (rest.checkedByVet === null) log.report('rest-without-vet', { enclosure, kind }, place);
  else if (rest.checkedByVet >= rest.from)
    log.report(
      'rest-checked-too-late',
      { enclosure, checked: isoDateOf(rest.checkedByVet), from: isoDateOf(rest.from) },
      placeOf([...rest.path, 'checked_by_vet']),
    );
  for (const stage of stagesWithin(rest, context.stages)) {
    if (context.isHatchling(stage)) log.report('rest-of-hatchling', { enclosure, kind, stage }, place);
  }
  for (const state of context.states) {
    if (state.from < restEnd(rest) && state.to >= rest.from)
      log.report(
        'rest-in-state',
        { enclosure, kind, state: state.is, from: isoDateOf(state.from), to: isoDateOf(state.to) },
        place,
      );
  }
}

function stagesWithin(rest: Rest, stages: RestContext['stages']): readonly string[] {
  return stages
    .filter(
      ({ from }, index) => from < restEnd(rest) && (stages[index + 1]?.from ?? Number.POSITIVE_INFINITY) > rest.from,
    )
    .map(({ stage }) => stage);
}
