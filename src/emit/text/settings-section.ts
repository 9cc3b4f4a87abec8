/** What the sections of `settings.txt` share. */
import { civilOf, epochDay, weekdayOf } from '../../basics/calendar-day.ts';
import type { IsoDate } from '../../basics/civil.ts';
import type { DialPlan, Plan, PlanDevice } from '../../plan/plan.ts';
import type { Words } from '../../plan/words/words.ts';

export type ShelfWords = Words['shelf'];

/** A heading and its lines; one without lines is left out. */
export interface Section {
  readonly heading: string;
  readonly lines: readonly string[];
}

/** Returns a date in the sheet's language, without the weekday. */
export function dateWords(date: IsoDate, words: ShelfWords): string {
  const { year, month, dayOfMonth } = civilOf(epochDay(date));
  return words.date(year, month, dayOfMonth);
}

/** Returns `Saturday 13 February 2027`. */
export function weekdayDateWords(date: IsoDate, words: ShelfWords): string {
  return words.weekdayDate(words.weekdays[weekdayOf(epochDay(date))], dateWords(date, words));
}

/** Returns a span in hours and minutes, to the whole minute. */
export function minuteWords(minutes: number, words: ShelfWords): string {
  const whole = Math.round(minutes);
  return words.span(Math.floor(whole / 60), whole % 60);
}

/** Returns the date that the sheet is for: the day of the revision, inside the plan. */
export function sheetDate(plan: Plan): IsoDate {
  const [, middle = plan.from] = [plan.from, plan.made, plan.to].sort();
  return middle;
}

/** Returns the device of an id; null where the plan has none. */
export function deviceOf(plan: Plan, id: string): PlanDevice | null {
  return plan.hardware.find((device) => device.id === id) ?? null;
}

/** Returns the timers for which settings are written. */
export function setDials(plan: Plan): readonly DialPlan[] {
  return plan.lighting.filter(({ settings }) => settings.length > 0);
}
