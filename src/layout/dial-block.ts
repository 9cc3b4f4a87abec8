/** A dial as it stands on a day: a small ring, the words that say the same, and what changes next. */
import type { IsoDate } from '../basics/civil.ts';
import { clockTimeOf } from '../basics/minute-of-day.ts';
import { plainLine } from '../basics/plain-line.ts';
import { joinedWindows, settingOn } from '../plan/dial-day.ts';
import type { DialPlan, DialSetting } from '../plan/plan.ts';
import { pinsToMove, slotRuns } from '../plan/slots.ts';
import { words as allWords } from '../plan/words/words.ts';
import { type Block, beside, type Setting, stack, textBlock } from './block.ts';
import { bothClocks } from './both-clocks.ts';
import { ringShapes } from './dial-ring.ts';
import { sizePtOf } from './page-style.ts';
import type { PageWords } from './page-words.ts';
import { dayAndDate, fullDate } from './printed-values.ts';
import type { Shape } from './shapes.ts';
import { MM_PER_PT } from './text-measure.ts';
import type { Run } from './wrap-text.ts';

const RINGS = { roomy: { radius: 13, pinMm: 4 }, close: { radius: 9, pinMm: 3 } } as const;
/** Of a time written at its pin, from the ring outwards. */
const TIME_MM = 12.2;
const TEXT_GAP_MM = 2;

/** Returns the dial as it stands on a date, `widthMm` wide. */
export function dialBlock(
  dial: DialPlan,
  date: IsoDate,
  language: 'en' | 'es',
  widthMm: number,
  setting: Setting,
): Block {
  const words = allWords(language).page;
  const stands = settingOn(dial, date) ?? dial.settings[0] ?? null;
  const next = stands ? (dial.settings.find(({ from }) => from > stands.from && from > date) ?? null) : null;
  if (!stands) return textBlock([{ text: plainLine(dial.device), weight: 'bold' }], { role: 'text', widthMm }, setting);
  const windows = windowsText(dial, stands, language);
  const ring = ringFigure(dial, stands, words.dialAlt(plainLine(dial.device), windows), setting);
  const own = RINGS[setting.style.density];
  const ringMm = (2 * (own.radius + own.pinMm + TIME_MM) + TEXT_GAP_MM) * setting.style.scale;
  const textMm = widthMm - ringMm;
  const name = { text: plainLine(dial.device), weight: 'bold' } as const;
  const said: readonly Run[] = [
    { text: `${windows}. `, weight: 'bold' },
    `${[...pinsText(dial, stands, words.dialPins), senseText(dial, words)].join('. ')}. `,
  ];
  const then = nextText(dial, stands, next, words);
  const wish = { role: 'text', widthMm: textMm } as const;
  const text =
    setting.style.density === 'close'
      ? textBlock([name, ' ', ...said, then], wish, setting)
      : stack([
          textBlock([name], { role: 'heading', widthMm: textMm, tag: 'H3' }, setting),
          textBlock(said, wish, setting),
          textBlock(then, wish, setting),
        ]);
  return beside([
    { block: ring, leftMm: 0 },
    { block: text, leftMm: ringMm },
  ]);
}

/** Returns the small ring of a setting as a figure, with its times outside. */
function ringFigure(dial: DialPlan, stands: DialSetting, alt: string, { style }: Setting): Block {
  const perDay = 1440 / dial.stepMinutes;
  const on = new Set(stands.slots.filter((slot) => slot < perDay));
  const { scale, density } = style;
  const { radius, pinMm } = RINGS[density];
  const place = (centreX: number, centreY: number) => ({
    centreX,
    centreY,
    radius: radius * scale,
    pinMm: pinMm * scale,
    small: {
      numeralEvery: density === 'close' ? 6 : 3,
      numeralPt: sizePtOf('dial-numeral', style),
      timePt: sizePtOf('switch-time', style),
    },
  });
  const shapesAt = (x: number, y: number): readonly Shape[] =>
    ringShapes({ stepMinutes: dial.stepMinutes, on, comesOn: new Set(), goesOff: new Set() }, place(x, y));
  const reach = (radius + pinMm) * scale;
  const half = sizePtOf('switch-time', style) * MM_PER_PT * 0.6;
  const ys = shapesAt(0, 0).flatMap((shape) => (shape.kind === 'text' ? [shape.y - half / 2] : []));
  const above = Math.max(reach, ...ys.map((y) => -y + half));
  const below = Math.max(reach, ...ys.map((y) => y + half));
  const width = 2 * (reach + TIME_MM * scale);
  return {
    heightMm: above + below + 0.6,
    at: (left, top) => [
      {
        tag: 'Figure',
        alt,
        box: { left, top, width, height: above + below + 0.6 },
        shapes: [
          {
            kind: 'group',
            mark: { dial: dial.device, setting: stands.from },
            shapes: shapesAt(left + width / 2, top + above + 0.3),
          },
        ],
      },
    ],
  };
}

function windowsText(dial: DialPlan, stands: DialSetting, language: 'en' | 'es'): string {
  const words = allWords(language).page;
  const perDay = 1440 / dial.stepMinutes;
  const shown = stands.slots.filter((slot) => slot < perDay);
  if (shown.length === 0) return words.dialOff;
  if (shown.length === perDay) return words.dialAllDay;
  const { pictures } = allWords(language);
  const clock = (minute: number): string => (words.twelveHours ? bothClocks(minute, pictures) : clockTimeOf(minute));
  return joinedWindows(stands.windows)
    .map(({ onMinute, offMinute }) => words.dialOn(clock(onMinute), clock(offMinute % 1440)))
    .join('; ');
}

/** Returns the runs of ON pins, each by how many, its first and its last; empty where none or all are on. */
export function pinsText(dial: DialPlan, stands: DialSetting, said: PageWords['dialPins']): readonly string[] {
  const perDay = 1440 / dial.stepMinutes;
  const shown = stands.slots.filter((slot) => slot < perDay);
  if (shown.length === 0 || shown.length === perDay) return [];
  return slotRuns(shown, perDay).map(({ count, first, last }) =>
    said(count, clockTimeOf(first * dial.stepMinutes), clockTimeOf(last * dial.stepMinutes)),
  );
}

/** Returns what a pressed pin does and which time the dial keeps. */
export function senseText(dial: DialPlan, words: PageWords): string {
  return [
    dial.pins === 'up-is-on' ? words.pressedOff : words.pressedOn,
    dial.clock === 'wall' ? words.wallTime : words.standardTime,
  ].join('. ');
}

function nextText(dial: DialPlan, stands: DialSetting, next: DialSetting | null, words: PageWords): string {
  if (!next) return words.noChange(fullDate(stands.to, words));
  return words.nextChange(dayAndDate(next.from, words), changeText(dial, stands, next, words));
}

/** Returns the pins to push and to lift from one setting to the next, in words. */
export function changeText(dial: DialPlan, before: DialSetting, after: DialSetting, words: PageWords): string {
  const perDay = 1440 / dial.stepMinutes;
  const ofDay = ({ slots }: DialSetting): readonly number[] => slots.filter((slot) => slot < perDay);
  const { push, lift } = pinsToMove(ofDay(before), ofDay(after), dial.pins ?? 'down-is-on');
  const spans = (slots: readonly number[]): string =>
    words.list(
      slotRuns(slots, perDay).map(({ count, first, last }) => {
        const time = clockTimeOf(first * dial.stepMinutes);
        return count === 1 ? time : words.pinSpan(time, clockTimeOf(last * dial.stepMinutes));
      }),
    );
  return [
    ...(push.length > 0 ? [words.push(spans(push))] : []),
    ...(lift.length > 0 ? [words.lift(spans(lift))] : []),
  ].join('; ');
}
