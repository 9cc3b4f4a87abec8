/** Days as JSON: what the screen tells, with each dial by name and the setting that stands on it instead of its whole plan. */
import type { DayView, LightDay } from '../../plan/day-view.ts';

/** Returns a list of days, two-space indent. */
export function todayJson(views: readonly DayView[]): string {
  return `${JSON.stringify(views.map(dayOf), null, 2)}\n`;
}

function dayOf(view: DayView) {
  return { ...view, lights: view.lights.map(lightOf) };
}

function lightOf({ device, dial, setting, wall, isOnNow, changesToday }: LightDay) {
  return {
    device,
    clock: dial.clock,
    drives: dial.drives,
    wall,
    setting: setting && { from: setting.from, to: setting.to, windows: setting.windows },
    isOnNow,
    changesToday,
  };
}
