/** A change of a dial as lines for a terminal: six hours a line, a mark a pin, a gap between hours. The marks differ in shape, never in colour alone. */
import { WEEKDAYS } from '../../basics/calendar-day.ts';
import { clockTimeOf, DAY_MINUTES } from '../../basics/minute-of-day.ts';
import type { DialPlan } from '../../plan/plan.ts';
import { pinsToMove } from '../../plan/slots.ts';
import type { Words } from '../../plan/words/words.ts';

const LINE_MINUTES = 360;
type PinnedDial = Pick<DialPlan, 'stepMinutes' | 'turnsInDays' | 'pins'>;
type ShelfWords = Words['shelf'];

export interface StripLook {
  /** Whether the terminal has more than ASCII. */
  readonly unicode: boolean;
  readonly words: ShelfWords;
}

/** The marks, and how the key names them. */
interface Marks {
  readonly on: string;
  readonly off: string;
  readonly push: string;
  readonly lift: string;
}

const DRAWN: Marks = { on: '█', off: '·', push: '▼', lift: '△' };
const ASCII: Marks = { on: '#', off: '.', push: 'v', lift: '^' };

/**
 * Returns the lines of a change from the slots `before` to `after`: pins to push and to lift marked apart from those that stay. Four lines
 * for a day, those of each weekday where the days of a 7-day dial differ, and last the key; none for a timer without pins.
 */
export function changeStrip(
  dial: PinnedDial,
  before: readonly number[],
  after: readonly number[],
  look: StripLook,
): readonly string[] {
  if (dial.pins === null) return [];
  const marks = look.unicode ? DRAWN : ASCII;
  const on = new Set(after);
  const { push, lift } = pinsToMove(before, after, dial.pins);
  const [pushed, lifted] = [new Set(push), new Set(lift)];
  const lines = strip(dial, look, (slot) => {
    if (pushed.has(slot)) return marks.push;
    if (lifted.has(slot)) return marks.lift;
    return on.has(slot) ? marks.on : marks.off;
  });
  const key = [
    `${marks.push} ${look.words.strip.push}`,
    `${marks.lift} ${look.words.strip.lift}`,
    `${marks.on} ${look.words.strip.staysOn}`,
    `${marks.off} ${look.words.strip.staysOff}`,
  ].join('  ');
  return [...lines, key];
}

function strip(dial: PinnedDial, look: StripLook, markOf: (slot: number) => string): readonly string[] {
  const perDay = DAY_MINUTES / dial.stepMinutes;
  const days = Array.from({ length: dial.turnsInDays }, (_, day) =>
    dayLines(dial, (slot) => markOf(day * perDay + slot)),
  );
  const [first] = days;
  if (!first) return [];
  const alike = days.every((day) => day.join() === first.join());
  const { words } = look;
  if (dial.turnsInDays === 1) return first;
  return alike
    ? [words.strip.everyDay, ...first]
    : days.flatMap((lines, day) => [words.weekdays[WEEKDAYS[day] ?? 'mon'], ...lines]);
}

function dayLines(dial: PinnedDial, markOf: (slot: number) => string): readonly string[] {
  const perDay = DAY_MINUTES / dial.stepMinutes;
  const lines = new Map<number, string>();
  for (let slot = 0; slot < perDay; slot++) {
    const minute = slot * dial.stepMinutes;
    const line = Math.floor(minute / LINE_MINUTES);
    const isHour = minute % 60 === 0 && minute % LINE_MINUTES !== 0;
    lines.set(line, `${lines.get(line) ?? `${clockTimeOf(minute)} `}${isHour ? ' ' : ''}${markOf(slot)}`);
  }
  return [...lines.values()];
}
