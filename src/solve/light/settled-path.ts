/** The one plan among the best: fewest pins moved, then the earliest change dates, then the shortest lengths. */
import type { OptimalPaths, PathStart } from './optimal-paths.ts';
import { nodeOf } from './optimal-paths.ts';

/** Starts that share all their dates so far, and for each of them those of the next date that it can change to. */
interface DateStep {
  readonly starts: readonly PathStart[];
  readonly next: ReadonlyMap<number, readonly PathStart[]>;
}

/** Returns the start of each chosen setting, in order, and the pins moved; no starts where what stands is held to the end. */
export function settledPath(paths: OptimalPaths): { readonly starts: readonly PathStart[]; readonly pins: number } {
  const pins = Math.min(...paths.entries.map((entry) => entry.pins));
  const fewest = paths.entries.filter((entry) => entry.pins === pins).map((entry) => entry.start);
  if (fewest.length === 0) return { starts: [], pins: 0 };
  const day = Math.min(...fewest.map((start) => start.day));
  const steps = datesOf(
    paths,
    fewest.filter((start) => start.day === day),
  );
  return { starts: shortestLengths(paths, steps), pins };
}

/** Walks date by date: of all that are left, those survive whose next change is the earliest. */
function datesOf(paths: OptimalPaths, entries: readonly PathStart[]): readonly DateStep[] {
  const steps: DateStep[] = [];
  let starts = entries;
  while ((starts[0]?.changesLeft ?? 0) > 0) {
    const firstChanges = starts.map((start) => firstChangesOf(paths, start));
    const earliest = Math.min(...firstChanges.map((changes) => changes[0]?.day ?? Number.POSITIVE_INFINITY));
    const next = new Map<number, readonly PathStart[]>();
    const reached = new Map<number, PathStart>();
    starts.forEach((start, at) => {
      const changes = firstChanges[at] ?? [];
      if (changes[0]?.day !== earliest) return;
      next.set(start.node, changes);
      for (const change of changes) reached.set(change.c, change);
    });
    steps.push({ starts, next });
    starts = [...reached.values()];
  }
  steps.push({ starts, next: new Map() });
  return steps;
}

/** The changes on the first date on which a setting can be changed without moving a pin too many. */
function firstChangesOf(paths: OptimalPaths, start: PathStart): readonly PathStart[] {
  const pins = paths.pinsFrom(start.node);
  let node = start.node;
  for (let day = start.settledOn; ; day++) {
    const changes = paths.fewestPinChanges(node);
    if (changes.length > 0) return changes;
    node = nodeOf(paths.layers, start.changesLeft, day + 1, start.c);
    if (node < 0 || paths.pinsFrom(node) !== pins) return [];
  }
}

/** The dates are settled; keeps what can still follow them to the end, then takes the shortest at each. */
function shortestLengths(paths: OptimalPaths, steps: readonly DateStep[]): readonly PathStart[] {
  let alive = new Set(steps.at(-1)?.starts.map((start) => start.node));
  const aliveAt = [alive];
  for (const step of steps.slice(0, -1).reverse()) {
    const follows = (start: PathStart) => step.next.get(start.node)?.some((next) => alive.has(next.node)) ?? false;
    alive = new Set(step.starts.filter(follows).map((start) => start.node));
    aliveAt.unshift(alive);
  }
  const chosen: PathStart[] = [];
  let open = steps[0]?.starts ?? [];
  steps.forEach((step, at) => {
    const candidates = open.filter((start) => aliveAt[at]?.has(start.node));
    const shortest = candidates.reduce((one, other) => (lengthOf(paths, other) < lengthOf(paths, one) ? other : one));
    chosen.push(shortest);
    open = step.next.get(shortest.node) ?? [];
  });
  return chosen;
}

function lengthOf(paths: OptimalPaths, start: PathStart): number {
  return paths.layers.bounded.graph.lengthMinutes[start.c] as number;
}
