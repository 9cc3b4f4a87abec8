/** The ring of a dial for a screen: as small as a telephone's, its words outside the drawing. */
import { DAY_MINUTES } from '../basics/minute-of-day.ts';
import type { DialPlan, DialSetting } from '../plan/plan.ts';
import { slotDifference } from '../plan/slots.ts';
import { ringShapes } from './dial-ring.ts';
import type { Drawing } from './shapes.ts';

const WIDTH_MM = 94;
const HEIGHT_MM = 76;
/** Leaves room for the arrowheads. */
const TIME_GAP_MM = 4.4;

/** Returns the ring of a setting, marked with what moves against the one before where that is given. */
export function screenRing(
  dial: Pick<DialPlan, 'stepMinutes'>,
  setting: DialSetting,
  before: DialSetting | null,
  said: Pick<Drawing, 'title' | 'description'>,
): Drawing {
  const perDay = DAY_MINUTES / dial.stepMinutes;
  const ofDay = ({ slots }: DialSetting): readonly number[] => slots.filter((slot) => slot < perDay);
  const moved = before ? slotDifference(ofDay(before), ofDay(setting)) : { added: [], removed: [] };
  return {
    ...said,
    widthMm: WIDTH_MM,
    heightMm: HEIGHT_MM,
    shapes: ringShapes(
      {
        stepMinutes: dial.stepMinutes,
        on: new Set(ofDay(setting)),
        comesOn: new Set(moved.added),
        goesOff: new Set(moved.removed),
      },
      {
        centreX: WIDTH_MM / 2,
        centreY: HEIGHT_MM / 2,
        radius: 24,
        pinMm: 5.5,
        small: { numeralEvery: 3, numeralPt: 10, timePt: 11, timeGapMm: TIME_GAP_MM },
      },
    ),
  };
}
