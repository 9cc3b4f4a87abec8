/** Who gets power from whom: timers, what hangs on them directly and behind other timers, and the watts that adds up to. */
import type { Device, Outlet, Timer } from './devices.ts';

/** A lamp as the cable sees it. */
export interface PluggedLamp {
  /** `ENCLOSURE/LAMP`. */
  readonly id: string;
  readonly powerW: number;
  readonly outlet: Outlet;
}

/** Anything with a plug: a lamp or a device, with the watts it draws itself. */
export interface Plug {
  readonly kind: 'lamp' | 'device';
  readonly id: string;
  readonly powerW: number;
}

export interface TimerNode {
  readonly timer: Timer;
  /** What is plugged into it directly, lamps before devices, each in the file's order. */
  readonly direct: readonly Plug[];
  /** Everything that it switches, also through timers plugged into it. */
  readonly behind: readonly Plug[];
  /** The timers between it and the wall, nearest first; empty on a live outlet. */
  readonly supply: readonly string[];
}

export interface PowerTree {
  /** In the file's order. */
  readonly timers: readonly TimerNode[];
  /** What is plugged into live outlets. */
  readonly live: readonly Plug[];
}

/** Continuous load: three hours or more (NFPA 70 Article 100); at most 80 % of the rating (210.20(A): 125 % of the continuous load). Both from the check values, opened in quotation. */
export const CONTINUOUS_MINUTES = 180;
export const CONTINUOUS_SHARE = 0.8;

const TIMER_KINDS: readonly string[] = ['pin-dial', 'programmable-timer', 'repeat-cycle-timer'];

/** Returns whether a device switches others. */
export function isTimer(device: Device): device is Timer {
  return TIMER_KINDS.includes(device.kind);
}

/** Builds the tree from named outlets; lamps on `auto` hang nowhere. Circles must have been refused before. */
export function powerTree(devices: readonly Device[], lamps: readonly PluggedLamp[]): PowerTree {
  const plugs = plugsByOutlet(devices, lamps);
  const timers = devices.filter(isTimer);
  return {
    timers: timers.map((timer) => ({
      timer,
      direct: plugs.get(timer.id) ?? [],
      behind: everythingBehind(timer.id, plugs),
      supply: supplyOf(timer, timers),
    })),
    live: plugs.get('always') ?? [],
  };
}

/** Returns the names under which the plan lists what a timer drives: `lamp:ENCLOSURE/LAMP`, `device:ID`. */
export function drivenNames(node: TimerNode): readonly string[] {
  return node.direct.map((plug) => `${plug.kind}:${plug.id}`);
}

/** Returns the watts with everything behind the timer on at once. */
export function peakWatts(node: TimerNode): number {
  return node.behind.reduce((sum, plug) => sum + plug.powerW, 0);
}

function plugsByOutlet(devices: readonly Device[], lamps: readonly PluggedLamp[]): Map<string, Plug[]> {
  const plugs = new Map<string, Plug[]>();
  const add = (outlet: string, plug: Plug) => {
    const at = plugs.get(outlet);
    if (at) at.push(plug);
    else plugs.set(outlet, [plug]);
  };
  for (const lamp of lamps) add(lamp.outlet, { kind: 'lamp', id: lamp.id, powerW: lamp.powerW });
  for (const device of devices)
    if (device.kind !== 'hand-sprayer') add(device.outlet, { kind: 'device', id: device.id, powerW: ownWatts(device) });
  return plugs;
}

function ownWatts(device: Device): number {
  return 'powerW' in device ? device.powerW : 0;
}

function everythingBehind(
  timer: string,
  plugs: ReadonlyMap<string, readonly Plug[]>,
  seen = new Set<string>(),
): readonly Plug[] {
  if (seen.has(timer)) return [];
  seen.add(timer);
  return (plugs.get(timer) ?? []).flatMap((plug) =>
    plug.kind === 'device' ? [plug, ...everythingBehind(plug.id, plugs, seen)] : [plug],
  );
}

function supplyOf(timer: Timer, timers: readonly Timer[]): readonly string[] {
  const supply: string[] = [];
  let next = timers.find((other) => other.id === timer.outlet);
  while (next && !supply.includes(next.id)) {
    supply.push(next.id);
    const outlet: Outlet = next.outlet;
    next = timers.find((other) => other.id === outlet);
  }
  return supply;
}
