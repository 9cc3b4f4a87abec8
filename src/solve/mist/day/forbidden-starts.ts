/** When no mist may run in an enclosure: the animal's hours, the people's, dusted feeds, hot lamps, cold air. On the mist timer's clock. */
import { DAY_MINUTES, wrapMinute } from '../../../basics/minute-of-day.ts';
import type { MinuteWindow } from '../../../plan/dial-day.ts';
import type { LampKind, MinuteSpan, TimeOrEdge } from '../../../resolve/care.ts';

/** Lamps whose glass shatters when water meets it. */
const HOT_KINDS: readonly LampKind[] = ['halogen', 'mercury', 'metal-halide', 'ceramic'];
const HOT_AFTER_MINUTES = 5;
const COOL_AFTER_MINUTES = 15;
const BEFORE_DUSTED_MINUTES = 10;
/** No mist in the dark below it, unless the animal's own night begins lower. */
const COLD_C = 18;

/** Tells whether a lamp of the kind is hot enough to crack under spray. */
export function isHotLamp(kind: LampKind): boolean {
  return HOT_KINDS.includes(kind);
}

/** Returns the span [from, to) folded into one day. */
function folded(fromMinute: number, toMinute: number): MinuteSpan {
  if (toMinute - fromMinute >= DAY_MINUTES) return { fromMinute: 0, toMinute: DAY_MINUTES };
  return { fromMinute: wrapMinute(fromMinute), toMinute: wrapMinute(toMinute) };
}

/** Returns the spans in which water must not run because a hot lamp is on or still hot; `windows` of one lamp. */
export function hotSpans(windows: readonly MinuteWindow[]): readonly MinuteSpan[] {
  return windows
    .filter(({ onMinute, offMinute }) => offMinute - onMinute > HOT_AFTER_MINUTES)
    .map(({ onMinute, offMinute }) =>
      offMinute - onMinute >= DAY_MINUTES
        ? folded(0, DAY_MINUTES)
        : folded(onMinute + HOT_AFTER_MINUTES, offMinute + COOL_AFTER_MINUTES),
    );
}

/** Returns the spans about the hours of dusted feeds: from 10 min before until the dust may be washed off. */
export function dustedSpans(minutes: readonly number[], dryBeforeMistMinutes: number): readonly MinuteSpan[] {
  return minutes.map((minute) =>
    folded(minute - BEFORE_DUSTED_MINUTES, minute + Math.max(1, Math.ceil(dryBeforeMistMinutes))),
  );
}

/** Returns the animal's own hours without mist; edges need a lit part of the day and are left out where there is none. */
export function noMistSpans(
  spans: readonly { readonly from: TimeOrEdge; readonly to: TimeOrEdge }[],
  lit: { readonly onMinute: number; readonly minutes: number },
  animalToMistMinutes: number,
): readonly MinuteSpan[] {
  const at = (time: TimeOrEdge): number | null => {
    if ('minute' in time) return time.minute + animalToMistMinutes;
    if (lit.minutes <= 0 || lit.minutes >= DAY_MINUTES) return null;
    const edge = time.of.endsWith('lights_on') ? lit.onMinute : lit.onMinute + lit.minutes;
    return time.of.startsWith('before') ? edge - time.minutes : edge + time.minutes;
  };
  return spans.flatMap(({ from, to }) => {
    const [begin, end] = [at(from), at(to)];
    if (begin === null || end === null || wrapMinute(begin) === wrapMinute(end)) return [];
    return [folded(wrapMinute(begin), wrapMinute(end))];
  });
}

/** Returns the dark spans in which the air is colder than mists allow; `temperatureC` at each whole minute. */
export function coldSpans(
  temperatureC: Float64Array,
  lit: { readonly onMinute: number; readonly minutes: number },
  nightLowC: number | null,
): readonly MinuteSpan[] {
  const least = Math.min(COLD_C, nightLowC ?? COLD_C);
  const dark = DAY_MINUTES - lit.minutes;
  const off = lit.onMinute + lit.minutes;
  const spans: MinuteSpan[] = [];
  let from = -1;
  for (let minute = 0; minute <= dark; minute++) {
    const isCold = minute < dark && (temperatureC[wrapMinute(off + minute)] ?? least) < least - 1e-6;
    if (isCold && from < 0) from = minute;
    if (!isCold && from >= 0) {
      spans.push(folded(off + from, off + minute));
      from = -1;
    }
  }
  return spans;
}

/** Returns the spans in which water in hose and nozzle freezes; `temperatureC` at each whole minute. */
export function frozenSpans(temperatureC: Float64Array): readonly MinuteSpan[] {
  const isFrozen = (minute: number) => (temperatureC[minute] ?? 1) <= 0;
  const spans: MinuteSpan[] = [];
  let from = -1;
  for (let minute = 0; minute <= DAY_MINUTES; minute++) {
    const frozen = minute < DAY_MINUTES && isFrozen(minute);
    if (frozen && from < 0) from = minute;
    if (!frozen && from >= 0) {
      spans.push(folded(from, minute));
      from = -1;
    }
  }
  return spans;
}

/** Returns the rest of the day outside windows that do not overlap. */
export function outsideSpans(windows: readonly MinuteWindow[]): readonly MinuteSpan[] {
  const ordered = [...windows].sort((a, b) => a.onMinute - b.onMinute);
  const [first] = ordered;
  if (!first) return [{ fromMinute: 0, toMinute: DAY_MINUTES }];
  return ordered.flatMap(({ offMinute }, index) => {
    const next = ordered[index + 1]?.onMinute ?? first.onMinute + DAY_MINUTES;
    return next > offMinute ? [folded(offMinute, next)] : [];
  });
}
