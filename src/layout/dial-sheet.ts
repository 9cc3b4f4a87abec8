import { civilOf, epochDay } from '../basics/calendar-day.ts';
import { clockTimeOf } from '../basics/minute-of-day.ts';
import { joinedWindows } from '../plan/dial-day.ts';
import type { DialPlan, DialSetting, Plan } from '../plan/plan.ts';
import { pinsToMove, slotDifference, slotRuns } from '../plan/slots.ts';
import { type Words, words } from '../plan/words/words.ts';
import { bothClocks } from './both-clocks.ts';
import { ringShapes } from './dial-ring.ts';
import type { Drawing, Shape } from './shapes.ts';

export type PictureWords = Words['pictures'];

const CELL = { width: 98, height: 118 } as const;
const HEAD_MM = 34;
const COLUMNS = 2;

/** One ring to draw: what stands after it, and what stood before. */
export interface RingCell {
  readonly heading: string;
  readonly setting: DialSetting;
  readonly before: DialSetting | null;
}

/** Returns the sheet of a dial: a ring for each setting, marked with what changes against the one before; first the change from an earlier plan. */
export function dialSheet(plan: Plan, dial: DialPlan): Drawing {
  const said = words(plan.language).pictures;
  const cells = cellsOf(plan, dial, said);
  const rows = Math.ceil(cells.length / COLUMNS);
  return {
    widthMm: CELL.width * COLUMNS + 8,
    heightMm: HEAD_MM + CELL.height * rows + 4,
    title: said.dialTitle(dial.device),
    description: said.dialDescription(dial.device, dial.settings.length),
    shapes: [
      ...heading(dial, said),
      ...cells.flatMap((cell, i) =>
        cellShapes(cell, dial, said, 4 + (i % COLUMNS) * CELL.width, HEAD_MM + Math.floor(i / COLUMNS) * CELL.height),
      ),
    ],
  };
}

function cellsOf(plan: Plan, dial: DialPlan, said: PictureWords): readonly RingCell[] {
  const standing =
    plan.previous?.lighting
      .find(({ device }) => device === dial.device)
      ?.settings.find(({ from, to }) => from <= plan.made && plan.made <= to) ?? null;
  const today = dial.settings.find(({ from, to }) => from <= plan.made && plan.made <= to) ?? null;
  const change =
    standing && today && standing.slots.join() !== today.slots.join()
      ? [{ heading: said.changeToday(longDate(plan.made, said)), setting: today, before: standing }]
      : [];
  const settings = dial.settings.map((setting, i) => ({
    heading: said.dateSpan(longDate(setting.from, said), longDate(setting.to, said)),
    setting,
    before: dial.settings[i - 1] ?? null,
  }));
  return [...change, ...settings];
}

function heading(dial: DialPlan, said: PictureWords): readonly Shape[] {
  const lines = [
    [
      said.dialStep(dial.stepMinutes),
      dial.pins === 'up-is-on' ? said.dialDirectionUp : said.dialDirectionDown,
      dial.clock === 'wall' ? said.clockWall : said.clockStandard,
    ].join(' '),
    [said.dialKey, said.arrowKeyIn, said.arrowKeyOut].join(' '),
    [said.dialNotATimer, ...(dial.turnsInDays === 7 ? [said.everyDay] : [])].join(' '),
  ];
  return [
    {
      kind: 'text',
      x: 6,
      y: 9,
      text: said.dialTitle(dial.device),
      sizePt: 14,
      weight: 'bold',
      anchor: 'start',
      role: 'title',
    },
    ...lines.map(
      (line, i): Shape => ({
        kind: 'text',
        x: 6,
        y: 16 + i * 5,
        text: line,
        sizePt: 9,
        weight: 'regular',
        anchor: 'start',
        role: 'note',
      }),
    ),
  ];
}

/** Returns the shapes of one ring with its heading above and its words below. */
function cellShapes(cell: RingCell, dial: DialPlan, said: PictureWords, left: number, top: number): readonly Shape[] {
  const perDay = 1440 / dial.stepMinutes;
  const ofDay = (setting: DialSetting | null): readonly number[] =>
    (setting?.slots ?? []).filter((slot) => slot < perDay);
  const moved = cell.before ? slotDifference(ofDay(cell.before), ofDay(cell.setting)) : { added: [], removed: [] };
  const ring = ringShapes(
    {
      stepMinutes: dial.stepMinutes,
      on: new Set(ofDay(cell.setting)),
      comesOn: new Set(moved.added),
      goesOff: new Set(moved.removed),
    },
    { centreX: left + CELL.width / 2, centreY: top + 48, radius: 28, pinMm: 6.5 },
  );
  const lines = cellLines(cell, dial, said);
  return [
    {
      kind: 'group',
      label: cell.heading,
      mark: { setting: cell.setting.from },
      shapes: [
        {
          kind: 'text',
          x: left + CELL.width / 2,
          y: top + 5,
          text: cell.heading,
          sizePt: 11,
          weight: 'bold',
          anchor: 'middle',
          role: 'heading',
        },
        ...ring,
        ...lines.map(
          (line, i): Shape => ({
            kind: 'text',
            x: left + CELL.width / 2,
            y: top + 94 + i * 4.6,
            text: line.text,
            sizePt: 9,
            weight: line.isBold ? 'bold' : 'regular',
            anchor: 'middle',
            role: 'label',
          }),
        ),
      ],
    },
  ];
}

function cellLines(
  cell: RingCell,
  dial: DialPlan,
  said: PictureWords,
): readonly { readonly text: string; readonly isBold: boolean }[] {
  const perDay = 1440 / dial.stepMinutes;
  const ofDay = (setting: DialSetting): readonly number[] => setting.slots.filter((slot) => slot < perDay);
  const windows = joinedWindows(cell.setting.windows);
  const shown = ofDay(cell.setting);
  const times =
    shown.length === 0
      ? [said.notAtAll]
      : shown.length === perDay
        ? [said.allDay]
        : windows.map(({ onMinute, offMinute }) =>
            said.fromTo(bothClocks(onMinute, said), bothClocks(offMinute % 1440, said)),
          );
  const runs = slotRuns(shown, perDay).map((run) =>
    said.pinsSpan(run.count, time(run.first, dial), time(run.last, dial)),
  );
  const changes = cell.before ? changeLines(ofDay(cell.before), shown, dial, said) : [];
  return [
    ...times.map((text) => ({ text, isBold: true })),
    ...(shown.length === 0 || shown.length === perDay ? [] : runs.map((text) => ({ text, isBold: false }))),
    ...(changes.length === 0 ? [] : [{ text: `${said.versusBefore} ${changes.join('; ')}`, isBold: false }]),
  ];
}

function changeLines(
  before: readonly number[],
  after: readonly number[],
  dial: DialPlan,
  said: PictureWords,
): readonly string[] {
  const { push, lift } = pinsToMove(before, after, dial.pins ?? 'down-is-on');
  const spans = (slots: readonly number[]): string =>
    said.pinList(
      slotRuns(slots, 1440 / dial.stepMinutes).map((run) =>
        run.count === 1 ? time(run.first, dial) : said.pinRange(time(run.first, dial), time(run.last, dial)),
      ),
    );
  return [
    ...(push.length > 0 ? [said.pushDown(spans(push))] : []),
    ...(lift.length > 0 ? [said.liftUp(spans(lift))] : []),
  ];
}

function time(slot: number, dial: DialPlan): string {
  return clockTimeOf(slot * dial.stepMinutes);
}

function longDate(date: string, said: PictureWords): string {
  const { year, month, dayOfMonth } = civilOf(epochDay(date));
  return said.longDate(year, month, dayOfMonth);
}
