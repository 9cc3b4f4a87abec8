/** The frame that every chart shares: axes with ticks, and the way from values to millimetres. */
import type { PathStep, Shape } from './shapes.ts';

/** Where a chart stands on the page, in mm, y downwards, and which values its axes run between. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly xFrom: number;
  readonly xTo: number;
  readonly yFrom: number;
  readonly yTo: number;
}

export interface Tick {
  readonly at: number;
  readonly label: string;
}

const AXIS = { widthMm: 0.25, shade: 'ink' } as const;
const GRID = { widthMm: 0.1, shade: 'mid', dashMm: [0.3, 1.2] } as const;

/** Returns where a value of the horizontal axis stands on the page. */
export function xMm(frame: Frame, x: number): number {
  return frame.left + ((x - frame.xFrom) / (frame.xTo - frame.xFrom)) * frame.width;
}

/** Returns where a value of the vertical axis stands on the page, which counts downwards. */
export function yMm(frame: Frame, y: number): number {
  return frame.top + frame.height - ((y - frame.yFrom) / (frame.yTo - frame.yFrom)) * frame.height;
}

/** Returns axes, grid lines and tick labels; an x label stands at its tick, or between it and the next. */
export function frameShapes(
  frame: Frame,
  xTicks: readonly Tick[],
  yTicks: readonly Tick[],
  xLabels: 'at' | 'between',
): readonly Shape[] {
  const bottom = frame.top + frame.height;
  const right = frame.left + frame.width;
  const nextOf = (i: number): number => xTicks[i + 1]?.at ?? frame.xTo;
  return [
    ...yTicks.flatMap(({ at, label }): Shape[] => {
      const y = yMm(frame, at);
      return [
        { kind: 'line', x1: frame.left, y1: y, x2: right, y2: y, stroke: GRID },
        {
          kind: 'text',
          x: frame.left - 1.2,
          y: y + 1,
          text: label,
          sizePt: 8,
          weight: 'regular',
          anchor: 'end',
          role: 'tick',
        },
      ];
    }),
    ...xTicks.flatMap(({ at, label }, i): Shape[] => {
      const x = xMm(frame, at);
      const labelX = xLabels === 'at' ? x : (x + xMm(frame, nextOf(i))) / 2;
      return [
        { kind: 'line', x1: x, y1: frame.top, x2: x, y2: bottom + 1, stroke: GRID },
        {
          kind: 'text',
          x: labelX,
          y: bottom + 4,
          text: label,
          sizePt: 8,
          weight: 'regular',
          anchor: 'middle',
          role: 'tick',
        },
      ];
    }),
    { kind: 'line', x1: frame.left, y1: bottom, x2: right, y2: bottom, stroke: AXIS },
    { kind: 'line', x1: frame.left, y1: frame.top, x2: frame.left, y2: bottom, stroke: AXIS },
  ];
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Returns the steps of a line through points given in values. */
export function lineSteps(frame: Frame, points: readonly Point[]): readonly PathStep[] {
  return points.map(({ x, y }, i) => ({ to: i === 0 ? 'move' : 'line', x: xMm(frame, x), y: yMm(frame, y) }));
}

/** Returns the steps around the area between two lines over the same x. */
export function bandSteps(frame: Frame, upper: readonly Point[], lower: readonly Point[]): readonly PathStep[] {
  return [...lineSteps(frame, [...upper, ...[...lower].reverse()]), { to: 'close' }];
}
