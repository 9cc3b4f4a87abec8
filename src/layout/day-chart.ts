/** The day of an enclosure's air as the plan forecasts it: humidity in its target bands, mists, lamp, room, and how wet the leaves are. */

import { civilOf, epochDay } from '../basics/calendar-day.ts';
import { DAY_MINUTES, minuteOf } from '../basics/minute-of-day.ts';
import type { MistCondition, MistPlan, MistSet, Plan, Range } from '../plan/plan.ts';
import { runLength } from '../plan/words/run-length.ts';
import { type Words, words } from '../plan/words/words.ts';
import { bandSteps, type Frame, frameShapes, lineSteps, type Point, type Tick, xMm, yMm } from './chart-frame.ts';
import { labelRows } from './label-rows.ts';
import type { Drawing, Fill, Shape, Stroke } from './shapes.ts';

type WaterWords = Words['water'];

const WIDTH_MM = 180;
const HEIGHT_MM = 122;
const LEFT_MM = 18;
const PLOT_WIDTH_MM = WIDTH_MM - LEFT_MM - 6;
const AIR_TOP_MM = 24;
const AIR_HEIGHT_MM = 46;
const LAMP_TOP_MM = AIR_TOP_MM + AIR_HEIGHT_MM + 7;
const LAMP_HEIGHT_MM = 3.5;
const LEAF_TOP_MM = LAMP_TOP_MM + LAMP_HEIGHT_MM + 4;
const LEAF_HEIGHT_MM = 12;
const MIST_PT = 7;

const CURVE: Stroke = { widthMm: 0.7, shade: 'ink' };
const ROOM: Stroke = { widthMm: 0.35, shade: 'ink', dashMm: [2.2, 1.2] };
const LIMIT: Stroke = { widthMm: 0.35, shade: 'ink', dashMm: [0.4, 0.9] };
const PEAK_EDGE: Stroke = { widthMm: 0.3, shade: 'ink', dashMm: [1.6, 0.7, 0.3, 0.7] };
const EDGE: Stroke = { widthMm: 0.15, shade: 'mid' };

/** Returns the drawing of the days in force on a date, or of the plan's first; null where the enclosure has none. */
export function dayChart(plan: Plan, mist: MistPlan, date: string): Drawing | null {
  const set = mist.sets.find(({ from, to }) => from <= date && date <= to) ?? mist.sets[0];
  const condition = set?.conditions.find(({ from, to }) => from <= date && date <= to) ?? set?.conditions[0];
  if (!set || !condition) return null;
  const water = words(plan.language).water;
  const name = plan.enclosures.find(({ id }) => id === mist.enclosure)?.name ?? mist.enclosure;
  const dates = water.chart.dates(dateWords(plan, condition.from), dateWords(plan, condition.to));
  const air = frame(AIR_TOP_MM, AIR_HEIGHT_MM, lowestShown(mist, condition), 1);
  const leaf = frame(LEAF_TOP_MM, LEAF_HEIGHT_MM, 0, 1);
  return {
    widthMm: WIDTH_MM,
    heightMm: HEIGHT_MM,
    title: water.chart.title(name),
    description: describe(name, set, condition, water),
    shapes: [
      text(4, 7, `${water.chart.title(name)}, ${dates}`, 11, 'bold', 'title'),
      text(4, 12, water.chart.clock[mist.clock], 8, 'regular', 'note'),
      ...bandShapes(mist, condition, air),
      ...frameShapes(air, hourTicks(), shareTicks(air), 'at'),
      ...roomShapes(condition, air),
      { kind: 'path', steps: lineSteps(air, curvePoints(condition, condition.curve.humidity)), stroke: CURVE },
      ...mistMarks(set, condition, air),
      ...lampShapes(condition, air, water),
      ...leafShapes(mist, condition, leaf, water),
      ...legend(mist, set, water),
    ],
  };
}

function frame(top: number, height: number, yFrom: number, yTo: number): Frame {
  return { left: LEFT_MM, top, width: PLOT_WIDTH_MM, height, xFrom: 0, xTo: DAY_MINUTES, yFrom, yTo };
}

/** Down to the lowest of curve, bands and room, on a tenth. */
function lowestShown({ targets }: MistPlan, { predicted, roomHumidity }: MistCondition): number {
  const bands = [targets.dayHumidity, targets.nightHumidity, targets.meanHumidity].flatMap((band) => band?.[0] ?? []);
  const least = Math.min(predicted.lowHumidity, roomHumidity, targets.floorHumidity ?? 1, ...bands);
  return Math.max(0, Math.floor((least - 0.05) * 10) / 10);
}

function dateWords(plan: Plan, date: string): string {
  const { year, month, dayOfMonth } = civilOf(epochDay(date));
  return words(plan.language).pictures.longDate(year, month, dayOfMonth);
}

function describe(name: string, set: MistSet, condition: MistCondition, water: WaterWords): string {
  const { predicted } = condition;
  return water.chart.description(
    name,
    set.entries.length,
    percent(predicted.lowHumidity),
    percent(predicted.highHumidity),
    percent(condition.roomHumidity),
  );
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

function text(
  x: number,
  y: number,
  words: string,
  sizePt: number,
  weight: 'regular' | 'bold',
  role: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
): Shape {
  return { kind: 'text', x, y, text: words, sizePt, weight, anchor, role };
}

function hourTicks(): readonly Tick[] {
  return Array.from({ length: 9 }, (_, i) => ({
    at: i * 180,
    label: `${String(i * 3).padStart(2, '0')}:00`,
  }));
}

function shareTicks(air: Frame): readonly Tick[] {
  const count = Math.round((air.yTo - air.yFrom) / 0.1) + 1;
  const every = count > 7 ? 2 : 1;
  return Array.from({ length: count }, (_, i) => air.yTo - i * 0.1)
    .filter((_, i) => i % every === 0)
    .map((at) => ({ at, label: percent(at) }));
}

/** The curve goes on past midnight to where the day begins. */
function curvePoints({ curve }: MistCondition, values: readonly number[]): readonly Point[] {
  const points = values.map((y, i) => ({ x: i * curve.everyMinutes, y }));
  const [first] = points;
  return first ? [...points, { x: DAY_MINUTES, y: first.y }] : [];
}

/** Half-open parts of the day, split at midnight. */
interface Part {
  readonly from: number;
  readonly to: number;
}

function litParts({ dayOn, dayOff }: MistCondition): readonly Part[] {
  const [on, off] = [minuteOf(dayOn), minuteOf(dayOff)];
  if (on === off) return [];
  if (on < off) return [{ from: on, to: off }];
  return [
    { from: 0, to: off },
    { from: on, to: DAY_MINUTES },
  ].filter(({ from, to }) => to > from);
}

function darkParts(lit: readonly Part[]): readonly Part[] {
  const parts: Part[] = [];
  let from = 0;
  for (const part of lit) {
    if (part.from > from) parts.push({ from, to: part.from });
    from = part.to;
  }
  if (from < DAY_MINUTES) parts.push({ from, to: DAY_MINUTES });
  return parts;
}

const DAY_FILL: Fill = { shade: 'none', hatch: 'rising' };
const NIGHT_FILL: Fill = { shade: 'none', hatch: 'falling' };
const PEAK_FILL: Fill = { shade: 'none', hatch: 'dots' };

function bandShapes({ targets }: MistPlan, condition: MistCondition, air: Frame): readonly Shape[] {
  const lit = litParts(condition);
  const whole = [{ from: 0, to: DAY_MINUTES }];
  return [
    ...band(targets.peakHumidity, targets.nightHumidity ? lit : whole, air, PEAK_FILL),
    ...band(targets.dayHumidity, lit, air, DAY_FILL),
    ...band(targets.nightHumidity, darkParts(lit), air, NIGHT_FILL),
    ...band(targets.meanHumidity, whole, air, DAY_FILL),
    ...(targets.peakHumidity ? [across(air, targets.peakHumidity[0], PEAK_EDGE)] : []),
    ...limitLine(targets.floorHumidity, air),
    ...limitLine((targets.ceilingHumidity ?? 1) < 1 ? targets.ceilingHumidity : null, air),
  ];
}

function band(range: Range | null, parts: readonly Part[], air: Frame, fill: Fill): readonly Shape[] {
  if (!range) return [];
  const [low, high] = [Math.max(range[0], air.yFrom), Math.min(range[1], air.yTo)];
  if (high <= low) return [];
  return parts.map(({ from, to }) => ({
    kind: 'rect',
    x: xMm(air, from),
    y: yMm(air, high),
    width: xMm(air, to) - xMm(air, from),
    height: yMm(air, low) - yMm(air, high),
    fill,
    stroke: EDGE,
  }));
}

function limitLine(at: number | null, air: Frame): readonly Shape[] {
  return at === null ? [] : [across(air, at, LIMIT)];
}

function across(plot: Frame, at: number, stroke: Stroke): Shape {
  return { kind: 'line', x1: plot.left, y1: yMm(plot, at), x2: plot.left + plot.width, y2: yMm(plot, at), stroke };
}

function roomShapes({ roomHumidity }: MistCondition, air: Frame): readonly Shape[] {
  return [across(air, roomHumidity, ROOM)];
}

/** A solid drop above the frame at each mist, its length beside it; neighbours stand on two lines. */
function mistMarks(set: MistSet, { from }: MistCondition, air: Frame): readonly Shape[] {
  const entries =
    (set.interval && set.wall.find((span) => span.from <= from && from <= span.to)?.entries) || set.entries;
  const rows = labelRows(
    entries.map((entry) => ({ xMm: xMm(air, minuteOf(entry.at)), text: `${entry.at}, ${runLength(entry.seconds)}` })),
    MIST_PT,
    2,
  );
  return entries.flatMap(({ at, seconds }, i): Shape[] => {
    const x = xMm(air, minuteOf(at));
    const label = runLength(seconds);
    return [
      {
        kind: 'group',
        label: `${at} ${label}`,
        mark: { at, seconds },
        shapes: [
          {
            kind: 'path',
            steps: [
              { to: 'move', x: x - 1.3, y: air.top - 3.2 },
              { to: 'line', x: x + 1.3, y: air.top - 3.2 },
              { to: 'line', x, y: air.top - 0.2 },
              { to: 'close' },
            ],
            fill: { shade: 'ink' },
          },
          { kind: 'line', x1: x, y1: air.top, x2: x, y2: air.top + air.height, stroke: { widthMm: 0.2, shade: 'ink' } },
          text(x, air.top - 4 - 3.2 * (rows[i] ?? 0), `${at}, ${label}`, MIST_PT, 'regular', 'mist', 'middle'),
        ],
      },
    ];
  });
}

/** White where the lamp is on, solid where it is off. */
function lampShapes(condition: MistCondition, air: Frame, water: WaterWords): readonly Shape[] {
  const lit = litParts(condition);
  const bar = (parts: readonly Part[], fill: Fill): readonly Shape[] =>
    parts.map(({ from, to }) => ({
      kind: 'rect',
      x: xMm(air, from),
      y: LAMP_TOP_MM,
      width: xMm(air, to) - xMm(air, from),
      height: LAMP_HEIGHT_MM,
      fill,
      stroke: { widthMm: 0.2, shade: 'ink' },
    }));
  return [
    ...bar(darkParts(lit), { shade: 'mid' }),
    ...bar(lit, { shade: 'none' }),
    ...lit.map(({ from, to }) =>
      text(
        xMm(air, (from + to) / 2),
        LAMP_TOP_MM + 2.7,
        water.chart.lampOn(condition.dayOn, condition.dayOff),
        7.5,
        'regular',
        'lamp',
        'middle',
      ),
    ),
    text(LEFT_MM - 1.2, LAMP_TOP_MM + 2.7, water.chart.lamp, 7.5, 'regular', 'label', 'end'),
  ];
}

function leafShapes({ targets }: MistPlan, condition: MistCondition, leaf: Frame, water: WaterWords): readonly Shape[] {
  const points = curvePoints(condition, condition.curve.leafWetness);
  const floor = points.map(({ x }) => ({ x, y: 0 }));
  const ticks = [0, 1].map((at) => ({ at, label: percent(at) }));
  return [
    { kind: 'path', steps: bandSteps(leaf, points, floor), fill: { shade: 'light' } },
    ...frameShapes(leaf, [], ticks, 'at'),
    { kind: 'path', steps: lineSteps(leaf, points), stroke: { widthMm: 0.5, shade: 'ink' } },
    ...(targets.dryOut ? [across(leaf, targets.dryOut.below, LIMIT)] : []),
    text(leaf.left + 1, leaf.top + 3, water.chart.leaves, 7.5, 'regular', 'label'),
  ];
}

function legend({ targets }: MistPlan, { entries, interval }: MistSet, water: WaterWords): readonly Shape[] {
  const line = (stroke: Stroke): Shape => ({ kind: 'line', x1: 0, y1: 0, x2: 8, y2: 0, stroke });
  const box = (fill: Fill): Shape => ({ kind: 'rect', x: 0, y: -1.5, width: 8, height: 3, fill, stroke: EDGE });
  const drop: Shape = {
    kind: 'path',
    steps: [
      { to: 'move', x: 2.7, y: -1.6 },
      { to: 'line', x: 5.3, y: -1.6 },
      { to: 'line', x: 4, y: 1.4 },
      { to: 'close' },
    ],
    fill: { shade: 'ink' },
  };
  const has = (value: unknown): boolean => value !== null && value !== undefined;
  const items: readonly (readonly [boolean, Shape, string])[] = [
    [true, line(CURVE), water.chart.humidity],
    [true, line(ROOM), water.chart.room],
    [entries.length > 0 || interval !== undefined, drop, water.chart.mist],
    [has(targets.dayHumidity), box(DAY_FILL), water.chart.dayBand],
    [has(targets.meanHumidity), box(DAY_FILL), water.chart.meanBand],
    [has(targets.nightHumidity), box(NIGHT_FILL), water.chart.nightBand],
    [has(targets.peakHumidity), box(PEAK_FILL), water.chart.peakBand],
    [has(targets.floorHumidity) || has(targets.dryOut), line(LIMIT), water.chart.limit],
    [(targets.ceilingHumidity ?? 1) < 1, line(LIMIT), water.chart.ceiling],
  ];
  const top = LEAF_TOP_MM + LEAF_HEIGHT_MM + 7;
  const column = (WIDTH_MM - LEFT_MM) / 3;
  return items
    .filter(([isShown]) => isShown)
    .flatMap(([, sample, label], i): Shape[] => {
      const [x, y] = [LEFT_MM + (i % 3) * column, top + Math.floor(i / 3) * 5];
      return [moved(sample, x, y), text(x + 10, y + 1, label, 8, 'regular', 'legend')];
    });
}

function moved(shape: Shape, dx: number, dy: number): Shape {
  switch (shape.kind) {
    case 'line':
      return { ...shape, x1: shape.x1 + dx, x2: shape.x2 + dx, y1: shape.y1 + dy, y2: shape.y2 + dy };
    case 'rect':
      return { ...shape, x: shape.x + dx, y: shape.y + dy };
    case 'path':
      return {
        ...shape,
        steps: shape.steps.map((step) => (step.to === 'close' ? step : { ...step, x: step.x + dx, y: step.y + dy })),
      };
    default:
      return shape;
  }
}
