/** Watts on each timer: everything at once, and what runs for three hours or more. */

import type { Log } from '../../diagnostics/log.ts';
import type { Device } from '../../hardware/devices.ts';
import {
  CONTINUOUS_MINUTES,
  CONTINUOUS_SHARE,
  type Plug,
  type PowerTree,
  peakWatts,
  type TimerNode,
} from '../../hardware/power-tree.ts';
import { joinedWindows, minutesOn } from '../../plan/dial-day.ts';
import type { DialPlan, Load } from '../../plan/plan.ts';
import type { Care } from '../../resolve/care.ts';
import { loadWords } from './timer-checks.ts';

/** Returns the loads in the file's order and warns about timers near their rating. */
export function timerLoads(care: Care, tree: PowerTree, lighting: readonly DialPlan[], log: Log): readonly Load[] {
  const longest = longestRuns(lighting);
  return tree.timers.map((node) => {
    const lasting = node.behind.filter((plug) => runsLong(plug, care.devices, longest));
    const continuousW = lasting.reduce((sum, { powerW }) => sum + powerW, 0);
    warnNearRating(care, node, continuousW, lasting, log);
    return { device: node.timer.id, peakW: peakWatts(node), continuousW, ratingW: node.timer.ratingW };
  });
}

function warnNearRating(care: Care, node: TimerNode, continuousW: number, lasting: readonly Plug[], log: Log): void {
  const { id, ratingW, path } = node.timer;
  if (ratingW === null || peakWatts(node) > ratingW || continuousW <= ratingW * CONTINUOUS_SHARE) return;
  log.report(
    'timer-near-rating',
    { timer: id, continuousW, ratingW, load: loadWords(lasting) },
    care.placeOf([...path, 'rating']),
  );
}

/** The longest unbroken run of each planned lamp over all settings, minutes, by `ENCLOSURE/LAMP`. */
function longestRuns(lighting: readonly DialPlan[]): ReadonlyMap<string, number> {
  return new Map(
    lighting.flatMap(({ lamps, settings }) => {
      const longest = Math.max(
        0,
        ...settings.flatMap(({ windows }) => joinedWindows(windows).map((each) => minutesOn([each]))),
      );
      return lamps.map(({ enclosure, lamp }) => [`${enclosure}/${lamp}`, longest] as const);
    }),
  );
}

function runsLong(plug: Plug, devices: readonly Device[], longest: ReadonlyMap<string, number>): boolean {
  if (plug.kind === 'lamp') return (longest.get(plug.id) ?? 0) >= CONTINUOUS_MINUTES;
  const device = devices.find(({ id }) => id === plug.id);
  if (device?.kind === 'dripper') return device.runs === 'always';
  return (
    (device?.kind === 'mist-pump' || device?.kind === 'fogger') && device.longestRunSeconds >= CONTINUOUS_MINUTES * 60
  );
}
