/** The picture of a fit: readings, the fitted model and the estimated one on one time line. */
import { civilOf } from '../basics/calendar-day.ts';
import { type UtcOffsets, utcMinuteOfDateStart, wallTimeAt } from '../basics/utc-offsets.ts';
import type { Point } from '../layout/chart-frame.ts';
import { fitChart } from '../layout/fit-chart.ts';
import type { Drawing } from '../layout/shapes.ts';
import type { Language } from '../plan/plan.ts';
import { words } from '../plan/words/words.ts';
import type { EnclosureFit } from './fit-enclosure.ts';

/** Points a day of a line; a mist's rise takes minutes. */
const EVERY_MINUTES = 3;

/** Returns the picture; it simulates the history twice. */
export function fitPicture(fitted: EnclosureFit, offsets: UtcOffsets, language: Language): Drawing {
  const { history, past, fit, estimate, enclosure, readings } = fitted;
  const said = words(language);
  const firstDay = wallTimeAt(offsets, fitted.firstUtcMinute).day;
  const lastDay = wallTimeAt(offsets, fitted.lastUtcMinute).day;
  const midnight = utcMinuteOfDateStart(offsets, firstDay) - past.startUtcMinute;
  const from = fitted.firstUtcMinute - past.startUtcMinute;
  const line = (): readonly Point[] => curve(history.minutes, history.humidity, from, midnight);
  history.simulate(estimate);
  const estimated = line();
  history.simulate(fit.air);
  return fitChart({
    name: enclosure.name,
    readings: readings.map(({ minute, humidity }) => ({ x: minute - fit.clockAheadMinutes - midnight, y: humidity })),
    fitted: line(),
    estimated,
    mists: past.history.runs.map(({ startMinute }) => startMinute - midnight).filter((at) => at >= from - midnight),
    lit: past.lit.map(([on, off]) => [on - midnight, off - midnight] as const),
    dates: Array.from({ length: lastDay - firstDay + 2 }, (_, index) => {
      const { month, dayOfMonth } = civilOf(firstDay + index);
      return said.pictures.shortDate(month, dayOfMonth);
    }),
    words: said.fit.picture,
  });
}

function curve(minutes: Float64Array, humidity: Float64Array, from: number, midnight: number): readonly Point[] {
  const points: Point[] = [];
  let last = Number.NEGATIVE_INFINITY;
  minutes.forEach((minute, node) => {
    if (minute < from || minute - last < EVERY_MINUTES) return;
    last = minute;
    points.push({ x: minute - midnight, y: humidity[node] ?? 0 });
  });
  return points;
}
