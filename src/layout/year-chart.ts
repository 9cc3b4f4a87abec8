import { civilOf, epochDay, epochDayOf } from '../basics/calendar-day.ts';
import type { DialPlan, DialSetting, Plan } from '../plan/plan.ts';
import type { Words } from '../plan/words/words.ts';
import { bandSteps, type Frame, frameShapes, lineSteps, type Point, type Tick, xMm, yMm } from './chart-frame.ts';
import { labelRows } from './label-rows.ts';
import type { Drawing, Shape } from './shapes.ts';

type PictureWords = Words['pictures'];

const WIDTH_MM = 180;
const HEIGHT_MM = 96;

/** Returns the year of a dial: what the lamps are to give, what the pins give day by day, how far they are apart, and the sun at the site behind. */
export function yearChart(plan: Plan, dial: DialPlan, words: PictureWords): Drawing {
  const days = dial.targetMinutes.length;
  const frame = frameOf(plan, dial, days);
  const steps = settingLine(plan, dial);
  const target = dailyLine(dial.targetMinutes);
  return {
    widthMm: WIDTH_MM,
    heightMm: HEIGHT_MM,
    title: words.yearTitle(dial.device),
    description: words.yearDescription(
      dial.device,
      dial.settings.length,
      words.hoursAndMinutes(Math.floor(dial.worstErrorMinutes / 60), Math.round(dial.worstErrorMinutes % 60)),
    ),
    shapes: [
      {
        kind: 'text',
        x: 4,
        y: 7,
        text: words.yearTitle(dial.device),
        sizePt: 12,
        weight: 'bold',
        anchor: 'start',
        role: 'title',
      },
      ...frameShapes(frame, monthTicks(plan, days, words), hourTicks(frame, words), 'between'),
      ...sunShapes(plan, frame, words),
      {
        kind: 'path',
        steps: bandSteps(frame, steps, dailyLine(dial.targetHighMinutes)),
        fill: { shade: 'none', hatch: 'rising' },
      },
      ...(isEnvelope(dial)
        ? [
            {
              kind: 'path',
              steps: bandSteps(frame, dailyLine(dial.targetHighMinutes), dailyLine(dial.targetLowMinutes)),
              fill: { shade: 'light' },
            } as const,
          ]
        : []),
      { kind: 'path', steps: lineSteps(frame, target), stroke: { widthMm: 0.35, shade: 'ink' } },
      { kind: 'path', steps: lineSteps(frame, steps), stroke: { widthMm: 0.9, shade: 'ink' } },
      ...changeMarks(plan, dial, frame, words),
      ...legend(words, isEnvelope(dial)),
    ],
  };
}

function frameOf(plan: Plan, dial: DialPlan, days: number): Frame {
  const lengths = dial.settings.map(lengthOf);
  const values = [...dial.targetHighMinutes, ...dial.targetLowMinutes, ...lengths, ...plan.site.sunMinutes].filter(
    (v) => v > 0 && v < 1440,
  );
  const low = Math.max(0, Math.floor((Math.min(...values, 720) - 20) / 60) * 60);
  const high = Math.min(1440, Math.ceil((Math.max(...values, 720) + 20) / 60) * 60);
  return {
    left: 16,
    top: 16,
    width: WIDTH_MM - 22,
    height: HEIGHT_MM - 38,
    xFrom: 0,
    xTo: days,
    yFrom: low,
    yTo: high,
  };
}

function lengthOf(setting: DialPlan['settings'][number]): number {
  return setting.windows.reduce((sum, { on, off }) => sum + clock(off) - clock(on), 0);
}

function clock(time: string): number {
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
}

function dailyLine(minutes: readonly number[]): readonly Point[] {
  return minutes.map((y, x) => ({ x: x + 0.5, y }));
}

function settingLine(plan: Plan, dial: DialPlan): readonly Point[] {
  const first = epochDay(plan.from);
  return dial.settings.flatMap((setting) => {
    const y = lengthOf(setting);
    return [
      { x: epochDay(setting.from) - first, y },
      { x: epochDay(setting.to) - first + 1, y },
    ];
  });
}

function isEnvelope(dial: DialPlan): boolean {
  return dial.targetHighMinutes.some((high, i) => high !== dial.targetLowMinutes[i]);
}

function monthTicks(plan: Plan, days: number, words: PictureWords): readonly Tick[] {
  const first = epochDay(plan.from);
  const ticks: Tick[] = [];
  const { year, month } = civilOf(first);
  const everyMonths = days > 420 ? 3 : 1;
  for (let m = month - 1; ; m += everyMonths) {
    const at = epochDayOf(year, m + 1, 1) - first;
    if (at >= days) return ticks;
    ticks.push({ at: Math.max(0, at), label: words.month(m % 12) });
  }
}

function hourTicks(frame: Frame, words: PictureWords): readonly Tick[] {
  const every = frame.yTo - frame.yFrom > 600 ? 120 : 60;
  const count = Math.floor((frame.yTo - frame.yFrom) / every) + 1;
  return Array.from({ length: count }, (_, i) => {
    const at = frame.yFrom + i * every;
    return { at, label: words.hours(at / 60) };
  });
}

function sunShapes(plan: Plan, frame: Frame, words: PictureWords): readonly Shape[] {
  const line = dailyLine(plan.site.sunMinutes).map(({ x, y }) => ({
    x,
    y: Math.min(frame.yTo, Math.max(frame.yFrom, y)),
  }));
  if (line.length === 0) return [];
  return [
    {
      kind: 'group',
      label: words.legendSun,
      shapes: [
        { kind: 'path', steps: lineSteps(frame, line), stroke: { widthMm: 0.3, shade: 'mid', dashMm: [0.2, 0.9] } },
      ],
    },
  ];
}

const CHANGE_PT = 7.5;

/** A mark on the axis at each change, its date written above the frame. */
function changeMarks(plan: Plan, dial: DialPlan, frame: Frame, words: PictureWords): readonly Shape[] {
  const first = epochDay(plan.from);
  const changes = dial.settings.slice(1);
  const xOf = ({ from }: DialSetting): number => xMm(frame, epochDay(from) - first);
  const rows = labelRows(
    changes.map((setting) => ({ xMm: xOf(setting), text: shortDate(setting.from, words) })),
    CHANGE_PT,
    3,
  );
  return changes.flatMap((setting, i): Shape[] => {
    const x = xOf(setting);
    const y = yMm(frame, lengthOf(setting));
    return [
      {
        kind: 'line',
        x1: x,
        y1: frame.top,
        x2: x,
        y2: frame.top + frame.height,
        stroke: { widthMm: 0.2, shade: 'ink', dashMm: [1, 1] },
      },
      { kind: 'circle', x, y, radius: 0.8, stroke: { widthMm: 0.3, shade: 'ink' }, fill: { shade: 'ink' } },
      {
        kind: 'text',
        x,
        y: frame.top - 1.2 - 3.2 * (rows[i] ?? 0),
        text: shortDate(setting.from, words),
        sizePt: CHANGE_PT,
        weight: 'bold',
        anchor: 'middle',
        role: 'change-date',
      },
    ];
  });
}

function legend(words: PictureWords, hasEnvelope: boolean): readonly Shape[] {
  const y = HEIGHT_MM - 9;
  const items: readonly { readonly sample: Shape; readonly text: string }[] = [
    {
      sample: { kind: 'line', x1: 0, y1: 0, x2: 8, y2: 0, stroke: { widthMm: 0.9, shade: 'ink' } },
      text: words.legendSetting,
    },
    {
      sample: { kind: 'line', x1: 0, y1: 0, x2: 8, y2: 0, stroke: { widthMm: 0.35, shade: 'ink' } },
      text: words.legendTarget,
    },
    {
      sample: {
        kind: 'rect',
        x: 0,
        y: -1.5,
        width: 8,
        height: 3,
        stroke: { widthMm: 0.1, shade: 'mid' },
        fill: { shade: 'none', hatch: 'rising' },
      },
      text: words.legendError,
    },
    {
      sample: { kind: 'line', x1: 0, y1: 0, x2: 8, y2: 0, stroke: { widthMm: 0.3, shade: 'mid', dashMm: [0.2, 0.9] } },
      text: words.legendSun,
    },
    ...(hasEnvelope
      ? [
          {
            sample: { kind: 'rect', x: 0, y: -1.5, width: 8, height: 3, fill: { shade: 'light' } } as const,
            text: words.legendEnvelope,
          },
        ]
      : []),
  ];
  const column = (WIDTH_MM - 20) / 3;
  return items.flatMap(({ sample, text }, i): Shape[] => {
    const [x, row] = [16 + (i % 3) * column, y + Math.floor(i / 3) * 5];
    return [
      shifted(sample, x, row),
      { kind: 'text', x: x + 10, y: row + 1, text, sizePt: 8, weight: 'regular', anchor: 'start', role: 'legend' },
    ];
  });
}

function shortDate(date: string, words: PictureWords): string {
  const { month, dayOfMonth } = civilOf(epochDay(date));
  return words.shortDate(month, dayOfMonth);
}

function shifted(shape: Shape, dx: number, dy: number): Shape {
  if (shape.kind === 'line')
    return { ...shape, x1: shape.x1 + dx, x2: shape.x2 + dx, y1: shape.y1 + dy, y2: shape.y2 + dy };
  if (shape.kind === 'rect') return { ...shape, x: shape.x + dx, y: shape.y + dy };
  return shape;
}
