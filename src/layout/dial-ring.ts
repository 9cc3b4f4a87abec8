/**
 * The ring of pins of a dial, to set by. Minute m stands at 360·m/1440 degrees, 00 at the top, clockwise. Two cues say the same thing:
 * an ON pin is solid and long, an OFF pin hollow and short; what moves since the setting before carries an arrowhead besides.
 * It is a diagram of the day, not a picture of any timer: dials differ in direction and marks.
 */
import { clockTimeOf } from '../basics/minute-of-day.ts';
import type { PathStep, Shape, TextShape } from './shapes.ts';

export interface RingPins {
  readonly stepMinutes: number;
  /** Indexes of ON steps of one day, 0 = 00:00. */
  readonly on: ReadonlySet<number>;
  /** Steps that come on, and that go off, since the setting before. */
  readonly comesOn: ReadonlySet<number>;
  readonly goesOff: ReadonlySet<number>;
}

/** Where a ring stands on the page and how large it is, in mm. */
export interface RingPlace {
  readonly centreX: number;
  readonly centreY: number;
  /** Of the inner edge of the pins. */
  readonly radius: number;
  readonly pinMm: number;
  /** Of a small ring: hours between two numerals, and times without words, no two of which may touch; from the pins to a time, 2.6 mm. */
  readonly small?: {
    readonly numeralEvery: number;
    readonly numeralPt: number;
    readonly timePt: number | null;
    readonly timeGapMm?: number;
  };
}

const THIN = { widthMm: 0.15, shade: 'ink' } as const;

/** Returns the shapes of one ring: pins, hour numerals within, times of switching outside. */
export function ringShapes(pins: RingPins, place: RingPlace): readonly Shape[] {
  const count = 1440 / pins.stepMinutes;
  return [
    { kind: 'circle', x: place.centreX, y: place.centreY, radius: place.radius, stroke: THIN },
    ...Array.from({ length: count }, (_, slot) => pin(slot, pins, place)),
    ...hourNumerals(place),
    ...switchTimes(pins, place),
  ];
}

function pin(slot: number, pins: RingPins, place: RingPlace): Shape {
  const isOn = pins.on.has(slot);
  const moved = pins.comesOn.has(slot) ? 'comes-on' : pins.goesOff.has(slot) ? 'goes-off' : 'stays';
  const from = slot * pins.stepMinutes;
  const gap = pins.stepMinutes * 0.16;
  const outer = place.radius + (isOn ? place.pinMm : place.pinMm * 0.45);
  const body: Shape = {
    kind: 'path',
    steps: sector(place, from + gap, from + pins.stepMinutes - gap, place.radius + 0.4, outer),
    stroke: THIN,
    fill: { shade: isOn ? 'ink' : 'none' },
  };
  const head =
    moved === 'stays'
      ? []
      : [
          arrowhead(
            place,
            from + pins.stepMinutes / 2,
            place.radius + place.pinMm + 0.9,
            moved === 'comes-on',
            pins.stepMinutes,
          ),
        ];
  return { kind: 'group', mark: { pin: slot, state: isOn ? 'on' : 'off', moved }, shapes: [body, ...head] };
}

/** Solid and pointing at the ring: comes on. Hollow and pointing away: goes off. */
function arrowhead(place: RingPlace, minute: number, radius: number, isInward: boolean, stepMinutes: number): Shape {
  const half = Math.min(stepMinutes * 0.32, 8);
  const height = 2.2;
  const [tip, base] = isInward ? [radius, radius + height] : [radius + height, radius];
  const corner = (m: number, r: number): { x: number; y: number } => at(place, m, r);
  return {
    kind: 'path',
    steps: [
      { to: 'move', ...corner(minute, tip) },
      { to: 'line', ...corner(minute - half, base) },
      { to: 'line', ...corner(minute + half, base) },
      { to: 'close' },
    ],
    stroke: { widthMm: 0.2, shade: 'ink' },
    fill: { shade: isInward ? 'ink' : 'none' },
  };
}

function sector(place: RingPlace, from: number, to: number, inner: number, outer: number): readonly PathStep[] {
  return [
    { to: 'move', ...at(place, from, inner) },
    { to: 'line', ...at(place, from, outer) },
    { to: 'arc', ...at(place, to, outer), radius: outer, large: false, clockwise: true },
    { to: 'line', ...at(place, to, inner) },
    { to: 'arc', ...at(place, from, inner), radius: inner, large: false, clockwise: false },
    { to: 'close' },
  ];
}

function hourNumerals(place: RingPlace): readonly Shape[] {
  const { small } = place;
  const every = small?.numeralEvery ?? 1;
  return Array.from({ length: 24 / every }, (_, index): Shape => {
    const hour = index * every;
    const isQuarter = hour % 6 === 0;
    if (small) {
      const { x, y } = at(place, hour * 60, place.radius - 2.6);
      const role = 'dial-numeral';
      return text(x, y, String(hour).padStart(2, '0'), small.numeralPt, isQuarter ? 'bold' : 'regular', role);
    }
    const { x, y } = at(place, hour * 60, place.radius - (isQuarter ? 3.4 : 2.8));
    return text(x, y, String(hour).padStart(2, '0'), isQuarter ? 9 : 7, isQuarter ? 'bold' : 'regular', 'numeral');
  });
}

/** Times at which the dial switches, each outside the ring at its pin; of a small ring none that would touch another. */
function switchTimes(pins: RingPins, place: RingPlace): readonly Shape[] {
  const count = 1440 / pins.stepMinutes;
  const { small } = place;
  if (pins.on.size === 0 || pins.on.size === count || small?.timePt === null) return [];
  const radius = place.radius + place.pinMm + (small ? (small.timeGapMm ?? 2.6) : 5.6);
  const shown: { readonly x: number; readonly y: number }[] = [];
  return Array.from({ length: count }, (_, slot) => slot)
    .filter((slot) => pins.on.has(slot) !== pins.on.has((slot + count - 1) % count))
    .flatMap((slot): TextShape[] => {
      const minute = slot * pins.stepMinutes;
      const { x, y } = at(place, minute, radius);
      if (small && shown.some((other) => Math.abs(other.y - y) < 4.5 && Math.abs(other.x - x) < 14)) return [];
      shown.push({ x, y });
      const side = Math.sin((minute / 1440) * 2 * Math.PI);
      const anchor = Math.abs(side) < 0.25 ? 'middle' : side > 0 ? 'start' : 'end';
      const word = small ? '' : pins.on.has(slot) ? 'on ' : 'off ';
      const said = text(x, y, `${word}${clockTimeOf(minute)}`, small?.timePt ?? 9, 'bold', 'switch-time');
      return [{ ...said, anchor }];
    });
}

function text(
  x: number,
  y: number,
  value: string,
  sizePt: number,
  weight: 'regular' | 'bold',
  role: string,
): TextShape {
  return { kind: 'text', x, y: y + sizePt * 0.127, text: value, sizePt, weight, anchor: 'middle', role };
}

function at(place: RingPlace, minute: number, radius: number): { readonly x: number; readonly y: number } {
  const angle = (minute / 1440) * 2 * Math.PI;
  return { x: place.centreX + radius * Math.sin(angle), y: place.centreY - radius * Math.cos(angle) };
}
