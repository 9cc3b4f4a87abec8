/** The dials of a plan.json. */
import type { DialLamp, DialPlan, DialSetting, Tradeoff, WallWindows, Window } from './plan.ts';
import { clock, date, integer, list, maybe, number, orNull, record, text, truth, word } from './shape.ts';

export const clockKind = word('standard', 'wall', 'automatic');
export const past = maybe(truth);

const window = record<Window>({
  day: maybe(word('mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun')),
  on: clock,
  off: clock,
});
const wallWindows = record<WallWindows>({ from: date, to: date, windows: list(window) });
const setting = record<DialSetting>({
  from: date,
  to: date,
  windows: list(window),
  slots: list(integer),
  wall: list(wallWindows),
  worstErrorMinutes: number,
  meanErrorMinutes: number,
  past,
});
const lamp = record<DialLamp>({
  enclosure: text,
  lamp: text,
  uses: list(word('daylight', 'basking', 'uvb', 'plants', 'heat')),
  powerW: number,
  targetMinutes: list(number),
  worstErrorMinutes: number,
  replaceOn: list(date),
});
/** A pin dial of a plan.json. */
export const dial = record<DialPlan>({
  device: text,
  clock: clockKind,
  stepMinutes: number,
  turnsInDays: word(1, 7),
  pins: orNull(word('down-is-on', 'up-is-on')),
  drives: list(text),
  lamps: list(lamp),
  settings: list(setting),
  setOn: maybe(date),
  targetHighMinutes: list(number),
  targetLowMinutes: list(number),
  targetMinutes: list(number),
  worstErrorMinutes: number,
  meanErrorMinutes: number,
  tradeoff: list(
    record<Tradeoff>({
      settings: number,
      worstErrorMinutes: number,
      meanErrorMinutes: number,
      largestJumpMinutes: number,
    }),
  ),
});
