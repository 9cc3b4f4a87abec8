/** The built program, killed at any moment and run several times at once. `FUZZ_ALL=1` kills it more often. */
import { spawn } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { drawOf } from './campaign.ts';
import { wholeVersion } from './results.ts';

const PROGRAM = process.env.DEWDIAL_BUILT ?? join(import.meta.dirname, '../../dist/dewdial.js');
const KILLS = process.env.FUZZ_ALL === '1' ? 200 : 8;
const LONG_MS = 30 * 60_000;
const GECKO = readFileSync(join(import.meta.dirname, '../../examples/one-gecko.yaml'), 'utf8');

const folder = mkdtempSync(join(tmpdir(), 'dewdial-processes-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const out = join(folder, 'out');

function named(name: string): string {
  return GECKO.replace(/^name: .*$/m, `name: ${name}`);
}

interface Ended {
  readonly exit: number | null;
  readonly said: string;
  readonly tookMs: number;
}

/** Runs a compile; killed after so many milliseconds where a number is given. `preload` is a script that runs before the program. */
function compile(file: string, killAfterMs: number | null, preload: string | null = null): Promise<Ended> {
  const begun = performance.now();
  const day = preload === null ? ['--today', '2027-01-01'] : [];
  const before = preload === null ? [] : ['--require', preload];
  const args = [...before, PROGRAM, 'compile', file, '--no-pdf', '--out', out, ...day];
  const child = spawn(process.execPath, args, { cwd: folder, stdio: ['ignore', 'ignore', 'pipe'] });
  let said = '';
  child.stderr.on('data', (part: Buffer) => {
    said += part.toString();
  });
  const timer = killAfterMs === null ? null : setTimeout(() => child.kill('SIGKILL'), killAfterMs);
  return new Promise((resolve) =>
    child.on('close', (exit) => {
      if (timer) clearTimeout(timer);
      resolve({ exit, said, tookMs: performance.now() - begun });
    }),
  );
}

/** As if the time had passed after which a lock of a run that is gone no longer counts. */
function letLocksGrowOld(): void {
  const versions = join(out, '.versions');
  for (const name of existsSync(versions) ? readdirSync(versions) : [])
    if (name.endsWith('.lock')) utimesSync(join(versions, name), 1, 1);
}

describe('the built program', () => {
  it(
    'killed at any moment leaves the old or the new results, whole, and the next run goes on from there',
    async () => {
      const file = join(folder, 'home.yaml');
      writeFileSync(file, named('Round 0'));
      const { tookMs } = await compile(file, null);
      let before = wholeVersion(out, 'home');
      const counted = { old: 0, new: 0, ended: 0 };
      for (let round = 1; round <= KILLS; round++) {
        writeFileSync(file, named(`Round ${round}`));
        const { exit } = await compile(file, tookMs * (0.4 + 0.7 * drawOf(7, round).share()));
        const stands = wholeVersion(out, 'home');
        expect(stands, `round ${round}`).not.toBeNull();
        counted[stands === before ? 'old' : 'new']++;
        counted.ended += exit === 0 ? 1 : 0;
        if (exit === 0) expect(stands).not.toBe(before);
        before = stands;
        letLocksGrowOld();
      }
      console.info(
        `${KILLS} kills: old ${counted.old}, new ${counted.new}, of them ended before the kill ${counted.ended}`,
      );
      expect((await compile(file, null)).exit).toBe(0);
      const left = readdirSync(join(out, '.versions')).filter((name) => name.startsWith('home-'));
      expect(left).toEqual([wholeVersion(out, 'home')]);
      expect(readFileSync(join(out, 'home/plan.json'), 'utf8')).toContain(`"name": "Round ${KILLS}"`);
    },
    LONG_MS,
  );

  it('run several times at once writes one result after the other, whole', async () => {
    const files = ['a', 'b', 'c'].map((name) => {
      const file = join(folder, name, 'shared.yaml');
      rmSync(join(folder, name), { recursive: true, force: true });
      return { name, file };
    });
    for (const { name, file } of files) {
      mkdirSync(join(folder, name));
      writeFileSync(file, named(`From ${name}`));
    }
    const ended = await Promise.all(files.map(({ file }) => compile(file, null)));
    expect(ended.map(({ exit }) => exit)).toEqual([0, 0, 0]);
    wholeVersion(out, 'shared');
    const plan = JSON.parse(readFileSync(join(out, 'shared/plan.json'), 'utf8')) as {
      readonly name: string;
      readonly revision: number;
    };
    expect(files.map(({ name }) => `From ${name}`)).toContain(plan.name);
    expect(plan.revision).toBe(3);
    expect(readdirSync(join(out, '.versions')).filter((name) => name.startsWith('shared'))).toEqual([
      wholeVersion(out, 'shared'),
    ]);
  });

  it('ends well and writes whole results while the clock jumps at every look: 1970, 2038, 2100, backward', async () => {
    const clock = join(folder, 'jumping-clock.cjs');
    writeFileSync(clock, JUMPING_CLOCK);
    const file = join(folder, 'jumping.yaml');
    const standing: (string | null)[] = [];
    for (const name of ['One', 'Two', 'Three']) {
      writeFileSync(file, named(name));
      const { exit, said } = await compile(file, null, clock);
      expect(said).not.toMatch(/\n {4}at |a fault of this program/);
      expect(exit).toBe(0);
      standing.push(wholeVersion(out, 'jumping'));
    }
    expect(new Set(standing).size).toBe(3);
    expect(await compile(file, null)).toMatchObject({ exit: 0 });
    expect(readdirSync(join(out, '.versions')).filter((name) => name.startsWith('jumping'))).toEqual([
      wholeVersion(out, 'jumping'),
    ]);
  });
});

const JUMPING_CLOCK = `
  const Real = Date;
  const moments = [0, 2 ** 31 * 1000, Real.UTC(2100, 1, 28), Real.UTC(2027, 0, 5), Real.now(), -1];
  let looks = 0;
  const now = () => moments[looks++ % moments.length];
  globalThis.Date = class extends Real {
    constructor(...given) {
      super(...(given.length === 0 ? [now()] : given));
    }
    static now() {
      return now();
    }
  };
`;
