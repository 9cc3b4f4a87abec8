/** A disk that fails at one call. */
import { type Disk, realDisk } from '../../src/cli/files.ts';

export interface FailingDisk {
  readonly disk: Disk;
  readonly calls: () => number;
}

type Call = (...args: unknown[]) => unknown;

/** Fails at one call (a write after its first half) and, where the process is as good as gone, at each after it. */
export function failingDisk(at: number, code: string, isKilled: boolean): FailingDisk {
  let calls = 0;
  const failing = Object.entries(realDisk).map(([name, call]) => [
    name,
    typeof call !== 'function' || !name.endsWith('Sync')
      ? call
      : (...args: unknown[]) => {
          calls++;
          if (calls === at && name === 'writeFileSync') writeHalf(args);
          if (calls === at || (isKilled && calls > at)) throw Object.assign(new Error(code), { code });
          return name === 'fsyncSync' ? undefined : (call as Call)(...args);
        },
  ]);
  return { disk: Object.fromEntries(failing) as unknown as Disk, calls: () => calls };
}

/** Counts the calls of a disk that works. */
export function countingDisk(): FailingDisk {
  return failingDisk(-1, '', false);
}

function writeHalf([target, content]: readonly unknown[]): void {
  const bytes = Buffer.from(content as string);
  realDisk.writeFileSync(target as number, bytes.subarray(0, bytes.length >> 1));
}
