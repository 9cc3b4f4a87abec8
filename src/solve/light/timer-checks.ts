/** Timers that must not carry what the file plugs into them, found by reading the file alone. */

import type { Log } from '../../diagnostics/log.ts';
import { type Plug, type PowerTree, peakWatts, type TimerNode } from '../../hardware/power-tree.ts';
import type { NotPlanned } from '../../plan/plan.ts';
import type { Care } from '../../resolve/care.ts';

export interface TimerRefusals {
  /** Why no setting is written for a timer, by id. */
  readonly timers: ReadonlyMap<string, string>;
  readonly notPlanned: readonly NotPlanned[];
}

/** Returns the timers for which nothing is written and the lamps that go with them, or that find no outlet. */
export function checkTimers(care: Care, tree: PowerTree, log: Log): TimerRefusals {
  const timers = new Map<string, string>();
  const notPlanned: NotPlanned[] = [];
  for (const node of tree.timers) {
    const why = timerRefusal(care, node, log);
    if (why !== null) timers.set(node.timer.id, why);
  }
  for (const node of tree.timers) {
    const why = [node.timer.id, ...node.supply].flatMap((id) => timers.get(id) ?? [])[0];
    const crowded = why === undefined ? crowdedOut(care, node, log) : [];
    const left = why === undefined ? crowded : node.direct;
    const reason = why ?? `${node.timer.id} has ${node.timer.outlets} outlets`;
    notPlanned.push(...lampsOf(left).map((lamp) => ({ lamp, device: node.timer.id, why: reason })));
    if (why !== undefined) timers.set(node.timer.id, why);
  }
  return { timers, notPlanned };
}

function lampsOf(plugs: readonly Plug[]): readonly string[] {
  return plugs.filter(({ kind }) => kind === 'lamp').map(({ id }) => id);
}

function timerRefusal(care: Care, node: TimerNode, log: Log): string | null {
  const { timer } = node;
  const at = (key: string) => care.placeOf([...timer.path, key]);
  const peakW = peakWatts(node);
  if (timer.ratingW !== null && peakW > timer.ratingW) {
    log.report(
      'timer-overloaded',
      { timer: timer.id, peakW, ratingW: timer.ratingW, load: loadWords(node.behind) },
      at('rating'),
    );
    return `${peakW} W on a timer rated ${timer.ratingW} W`;
  }
  if (timer.ratingW === null && peakW > 0)
    log.report('rating-unknown', { timer: timer.id, peakW }, care.placeOf(timer.path));
  const [supply] = node.supply;
  const losesTime = timer.kind === 'pin-dial' || (timer.kind === 'programmable-timer' && !timer.keepsTime);
  if (supply === undefined) return null;
  const lamps = lampsOf(node.direct).join(', ');
  if (!losesTime) {
    if (lamps !== '') log.report('timer-behind-timer', { timer: timer.id, supply, lamps }, at('outlet'));
    return null;
  }
  log.report('dial-behind-timer', { dial: timer.id, timer: supply }, at('outlet'));
  return `${timer.id} loses the time while ${supply} is off`;
}

/** Returns what is plugged in beyond the outlets, the last in the file; lamps give way before devices. */
function crowdedOut(care: Care, { timer, direct }: TimerNode, log: Log): readonly Plug[] {
  const over = direct.length - timer.outlets;
  if (over <= 0) return [];
  const byRank = [...direct.filter(({ kind }) => kind === 'device'), ...direct.filter(({ kind }) => kind === 'lamp')];
  const left = byRank.slice(timer.outlets);
  const values = {
    timer: timer.id,
    outlets: timer.outlets,
    plugged: direct.length,
    left: left.map(({ id }) => id).join(', '),
  };
  log.report('outlets-too-few', values, care.placeOf([...timer.path, 'outlets']));
  return left;
}

/** Returns what hangs on a timer with its watts, for instance `fern/sun 75 W, pump 30 W`. */
export function loadWords(plugs: readonly Plug[]): string {
  return plugs
    .filter(({ powerW }) => powerW > 0)
    .map(({ id, powerW }) => `${id} ${powerW} W`)
    .join(', ');
}
