/** Runs a target over many cases and counts what came of it. */
import { Draw } from '../property/household-generator.ts';

/** How a case ended well: in the target's own word, for instance `planned` or `refused`. */
export type Ending = string;

export interface Target {
  readonly name: string;
  /** Share of all cases of a long run. */
  readonly share: number;
  /** Runs one case; throws, with what was wrong, where it ended badly. */
  readonly run: (draw: Draw, index: number) => Ending | Promise<Ending>;
  /** What is not to be counted against the first case. */
  readonly prepare?: () => Promise<void>;
  readonly close?: () => Promise<void>;
}

export interface Counts {
  readonly cases: number;
  readonly endings: Readonly<Record<Ending, number>>;
  readonly faults: readonly { readonly index: number; readonly what: string }[];
  readonly slowestMs: number;
  readonly mostMemoryMb: number;
}

/** No case of a long run may take longer, in processor time. */
export const SLOW_MS = 2000;
const FAULTS_AT_MOST = 25;

export function drawOf(seed: number, index: number): Draw {
  return new Draw((Math.imul(seed, 0x9e3779b1) ^ Math.imul(index + 1, 0x85ebca6b)) >>> 0);
}

export async function campaign(
  target: Target,
  seed: number,
  indexes: Iterable<number>,
  {
    slowMs = SLOW_MS,
    done = () => undefined,
  }: { readonly slowMs?: number; readonly done?: (index: number) => void } = {},
): Promise<Counts> {
  const endings: Record<Ending, number> = {};
  const faults: { index: number; what: string }[] = [];
  let [cases, slowestMs] = [0, 0];
  await target.prepare?.();
  for (const index of indexes) {
    const before = process.cpuUsage();
    try {
      const ending = await target.run(drawOf(seed, index), index);
      endings[ending] = (endings[ending] ?? 0) + 1;
    } catch (error) {
      faults.push({ index, what: error instanceof Error ? (error.stack ?? error.message) : String(error) });
    }
    const { user, system } = process.cpuUsage(before);
    const tookMs = (user + system) / 1000;
    if (tookMs > slowMs) faults.push({ index, what: `took ${tookMs.toFixed(0)} ms of processor time` });
    slowestMs = Math.max(slowestMs, tookMs);
    cases++;
    done(index);
    if (faults.length >= FAULTS_AT_MOST) break;
  }
  await target.close?.();
  const mostMemoryMb = process.resourceUsage().maxRSS / 1024;
  return { cases, endings, faults, slowestMs, mostMemoryMb };
}
