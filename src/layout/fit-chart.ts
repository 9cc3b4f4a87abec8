/** Readings of a gauge against the air model: the whole log above, its last two days below. */
import type { Words } from '../plan/words/words.ts';
import { type Frame, frameShapes, lineSteps, type Point, type Tick, xMm, yMm } from './chart-frame.ts';
import type { Drawing, Shape } from './shapes.ts';

/** Humidity as a fraction; minutes from the log's first midnight. */
export interface FitPicture {
  readonly name: string;
  readonly readings: readonly Point[];
  readonly fitted: readonly Point[];
  readonly estimated: readonly Point[];
  /** Starts of mists. */
  readonly mists: readonly number[];
  readonly lit: readonly (readonly [number, number])[];
  /** A label for each midnight, the first at minute 0. */
  readonly dates: readonly string[];
  readonly words: FitPictureWords;
}

type FitPictureWords = Words['fit']['picture'];

const WIDTH_MM = 180;
const HEIGHT_MM = 150;
const DAY = 1440;
const LEFT_MM = 14;
const WHOLE = { top: 16, height: 48 };
const LAST = { top: 78, height: 48 };
const FITTED = { widthMm: 0.4, shade: 'ink' } as const;
const ESTIMATED = { widthMm: 0.3, shade: 'mid', dashMm: [1.6, 1] } as const;
/** More dots than this only blacken the paper. */
const MOST_DOTS = 1500;
const MOST_LABELS = 12;

/** Returns the picture; points in the order of time. */
export function fitChart(picture: FitPicture): Drawing {
  const { words, name, readings } = picture;
  const end = Math.max(DAY, readings.at(-1)?.x ?? DAY);
  const start = Math.max(0, 60 * Math.floor(Math.min(readings[0]?.x ?? 0, end - DAY) / 60));
  const [low, high] = bounds(picture);
  const frame = (place: { top: number; height: number }, xFrom: number, xTo: number): Frame => ({
    left: LEFT_MM,
    width: WIDTH_MM - LEFT_MM - 6,
    ...place,
    xFrom,
    xTo,
    yFrom: low,
    yTo: high,
  });
  const lastFrom = Math.max(start, end - 2 * DAY);
  return {
    widthMm: WIDTH_MM,
    heightMm: HEIGHT_MM,
    title: words.title(name),
    description: words.description(name, readings.length),
    shapes: [
      text(4, 7, words.title(name), 12, 'bold', 'title'),
      ...panel(picture, frame(WHOLE, start, end), dayTicks(picture.dates, start, end)),
      text(LEFT_MM, LAST.top - 3, words.lastDays, 9, 'bold', 'label'),
      ...panel(picture, frame(LAST, lastFrom, end), hourTicks(picture.dates, lastFrom, end)),
      ...legend(words),
    ],
  };
}

function bounds({ readings, fitted }: FitPicture): readonly [number, number] {
  const values = [...readings, ...fitted].map(({ y }) => y);
  const least = values.reduce((a, b) => Math.min(a, b), 1);
  const most = values.reduce((a, b) => Math.max(a, b), 0);
  const low = Math.max(0, Math.floor(10 * least) / 10);
  return [low, Math.max(low + 0.2, Math.min(1, Math.ceil(10 * most) / 10))];
}

function panel(picture: FitPicture, frame: Frame, xTicks: readonly Tick[]): readonly Shape[] {
  const { xFrom, xTo } = frame;
  const within = (points: readonly Point[]) => points.filter(({ x }) => x >= xFrom && x <= xTo);
  const dots = thinned(within(picture.readings));
  return [
    ...picture.lit.flatMap(([on, off]): Shape[] => {
      const [from, to] = [Math.max(on, xFrom), Math.min(off, xTo)];
      if (to <= from) return [];
      const y = frame.top - 1.6;
      return [
        {
          kind: 'rect',
          x: xMm(frame, from),
          y,
          width: xMm(frame, to) - xMm(frame, from),
          height: 1.2,
          fill: { shade: 'light' },
        },
      ];
    }),
    ...frameShapes(frame, xTicks, percentTicks(frame), 'at'),
    ...picture.mists.flatMap((at): Shape[] => {
      if (at < xFrom || at > xTo) return [];
      const [x, bottom] = [xMm(frame, at), frame.top + frame.height];
      return [{ kind: 'line', x1: x, y1: bottom, x2: x, y2: bottom - 3, stroke: { widthMm: 0.35, shade: 'ink' } }];
    }),
    ...dots.map(({ x, y }): Shape => {
      return {
        kind: 'circle',
        x: xMm(frame, x),
        y: yMm(frame, clamped(frame, y)),
        radius: 0.32,
        fill: { shade: 'mid' },
      };
    }),
    { kind: 'path', steps: lineSteps(frame, clampedAll(frame, within(picture.estimated))), stroke: ESTIMATED },
    { kind: 'path', steps: lineSteps(frame, clampedAll(frame, within(picture.fitted))), stroke: FITTED },
  ];
}

function clamped({ yFrom, yTo }: Frame, y: number): number {
  return Math.min(yTo, Math.max(yFrom, y));
}

function clampedAll(frame: Frame, points: readonly Point[]): readonly Point[] {
  return points.map(({ x, y }) => ({ x, y: clamped(frame, y) }));
}

function thinned(points: readonly Point[]): readonly Point[] {
  const every = Math.ceil(points.length / MOST_DOTS);
  return points.filter((_, index) => index % every === 0);
}

function percentTicks({ yFrom, yTo }: Frame): readonly Tick[] {
  const every = yTo - yFrom > 0.5 ? 0.2 : 0.1;
  const first = Math.ceil(yFrom / every - 1e-9);
  const last = Math.floor(yTo / every + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) => {
    const at = (first + index) * every;
    return { at, label: `${Math.round(100 * at)} %` };
  });
}

function dayTicks(dates: readonly string[], from: number, to: number): readonly Tick[] {
  const inside = dates.flatMap((label, day) =>
    day * DAY >= from && day * DAY <= to ? [{ at: day * DAY, label }] : [],
  );
  const every = Math.ceil(inside.length / MOST_LABELS);
  return inside.map(({ at, label }, index) => ({ at, label: index % every === 0 ? label : '' }));
}

function hourTicks(dates: readonly string[], from: number, to: number): readonly Tick[] {
  const ticks: Tick[] = [];
  for (let at = Math.ceil(from / 360) * 360; at <= to; at += 360) {
    const hour = (at % DAY) / 60;
    ticks.push({ at, label: hour === 0 ? (dates[at / DAY] ?? '') : `${String(hour).padStart(2, '0')}:00` });
  }
  return ticks;
}

function text(x: number, y: number, words: string, sizePt: number, weight: 'regular' | 'bold', role: string): Shape {
  return { kind: 'text', x, y, text: words, sizePt, weight, anchor: 'start', role };
}

function legend(words: FitPictureWords): readonly Shape[] {
  const y = HEIGHT_MM - 11;
  const column = (WIDTH_MM - LEFT_MM - 6) / 3;
  const samples: readonly (readonly [(x: number, y: number) => readonly Shape[], string])[] = [
    [(x, at) => [2, 4, 6].map((dx, index) => dot(x + dx, at + (index - 1) * 0.6)), words.reading],
    [(x, at) => [{ kind: 'line', x1: x, y1: at, x2: x + 8, y2: at, stroke: FITTED }], words.fitted],
    [(x, at) => [{ kind: 'line', x1: x, y1: at, x2: x + 8, y2: at, stroke: ESTIMATED }], words.estimated],
    [
      (x, at) => [
        { kind: 'line', x1: x + 4, y1: at + 1.5, x2: x + 4, y2: at - 1.5, stroke: { widthMm: 0.35, shade: 'ink' } },
      ],
      words.mist,
    ],
    [(x, at) => [{ kind: 'rect', x, y: at - 0.6, width: 8, height: 1.2, fill: { shade: 'light' } }], words.lit],
  ];
  return samples.flatMap(([sample, label], index) => {
    const [x, row] = [LEFT_MM + (index % 3) * column, y + Math.floor(index / 3) * 5];
    return [...sample(x, row), text(x + 10, row + 1, label, 8, 'regular', 'legend')];
  });
}

function dot(x: number, y: number): Shape {
  return { kind: 'circle', x, y, radius: 0.32, fill: { shade: 'mid' } };
}
