/** A step of the build: runs the program on examples and keeps what the runtime has made of its code meanwhile. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { evaluate, madeCodePath, madeOf, programScript } from './load-program.ts';
import { expectShortRun } from './short-run.ts';

/** Arguments of the runs whose code is kept: what keepers do every day, and no more, for all that is kept is loaded each time. */
const RUNS = [
  ['check', 'examples/one-gecko.yaml', '--today', '2027-01-01'],
  ['compile', 'examples/reading-room.yaml', '--no-pdf', '--today', '2027-01-01'],
  ['check', 'examples/reading-room.yaml', '--today', '2027-01-02'],
  ['today', 'examples/reading-room.yaml', '--today', '2027-01-02'],
];

const path = fileURLToPath(new URL('./program.cjs', import.meta.url));
const out = mkdtempSync(join(tmpdir(), 'dewdial-build-'));
try {
  expectShortRun();
  const script = programScript(path);
  const { main } = evaluate(script, path);
  for (const run of RUNS) await main([...run, '--out', out], (name) => import(name));
  writeFileSync(madeCodePath(path), madeOf(script, path));
} finally {
  rmSync(out, { recursive: true, force: true });
}
process.exitCode = 0;
