import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

interface Table {
  readonly name: string;
  readonly rows: readonly (readonly [string, string, string])[];
}

const ROUNDS = 15;
const EXAMPLE = 'examples/reading-room.yaml';

/** Whole processes, the least of several runs each, taken in turn so that all meet the same machine; ratios to `node -e 0`. */
export async function run(): Promise<readonly Table[]> {
  const out = mkdtempSync(join(tmpdir(), 'dewdial-bench-'));
  const commands: readonly (readonly [string, readonly string[]])[] = [
    ['node -e 0 (the floor)', ['-e', '0']],
    ['dewdial --version', ['dist/dewdial.js', '--version']],
    ['dewdial check', ['dist/dewdial.js', 'check', EXAMPLE, '--out', out, '--today', '2027-01-01']],
    ['dewdial today', ['dist/dewdial.js', 'today', EXAMPLE, '--out', out, '--today', '2027-01-01']],
    ['dewdial compile', ['dist/dewdial.js', 'compile', EXAMPLE, '--out', out, '--today', '2027-01-01']],
  ];
  const least = commands.map(() => Number.POSITIVE_INFINITY);
  for (let round = 0; round < ROUNDS; round++) {
    for (const [i, [, args]] of commands.entries()) {
      if (i === 4) rmSync(out, { recursive: true, force: true });
      const start = performance.now();
      spawnSync(process.execPath, args, { stdio: 'ignore' });
      least[i] = Math.min(least[i] ?? Number.POSITIVE_INFINITY, performance.now() - start);
    }
  }
  rmSync(out, { recursive: true, force: true });
  const floor = least[0] ?? 1;
  return [
    {
      name: 'Whole commands on the example',
      rows: commands.map(([label], i) => [
        label,
        `${(least[i] ?? 0).toFixed(0)}`,
        `ms  ${((least[i] ?? 0) / floor).toFixed(2)} x floor`,
      ]),
    },
  ];
}
