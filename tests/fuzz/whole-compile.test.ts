/**
 * A whole compile on a disk that fails: at every call it makes (a sample in `npm test`, all with `FUZZ_ALL=1`), in every way. What stands
 * afterwards is the old results or the new, whole; and the next compile puts everything right.
 */
import * as fs from 'node:fs';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { run } from '../../src/cli/compile-command.ts';
import { explainFault } from '../../src/cli/faults.ts';
import { type Disk, realDisk } from '../../src/cli/files.ts';
import type { World } from '../../src/cli/world.ts';
import { wholeVersion } from './results.ts';

const ALL = process.env.FUZZ_ALL === '1';
const GECKO = readFileSync(join(import.meta.dirname, '../../examples/one-gecko.yaml'), 'utf8').replace(
  'days: 365',
  'days: 20',
);
const OLD = GECKO.replace(/^name: .*$/m, 'name: Old');
const NEW = GECKO.replace(/^name: .*$/m, 'name: New');

const folder = mkdtempSync(join(tmpdir(), 'dewdial-faults-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const file = join(folder, 'home.yaml');
const out = join(folder, 'out');

function worldOn(disk: Disk, nowMs: number): World {
  return {
    disk,
    out: () => undefined,
    say: () => undefined,
    nowMs: () => nowMs,
    env: {},
    isOutTerminal: false,
    isSayTerminal: false,
    isInTerminal: false,
    terminal: () => Promise.reject(new Error('there is no terminal')),
    columns: 80,
    cwd: folder,
  };
}

/** Compiles as the command line would; returns how it ends. */
async function compiled(text: string, disk: Disk = realDisk, today: string | null = '2027-01-01'): Promise<number> {
  writeFileSync(file, text);
  try {
    const options = { out, pdf: false, ...(today === null ? {} : { today }) };
    return await run([file], options, worldOn(disk, Date.UTC(2027, 0, 1)), 'test');
  } catch (error) {
    const { text: words, exit } = explainFault(error, false);
    if (/\n {4}at /.test(words)) throw new Error(`a stack trace: ${words}`);
    return exit;
  }
}

interface FailingDisk {
  readonly disk: Disk;
  readonly calls: () => number;
}

/** Fails at one call and, where the process is as good as gone, at each after it. */
function failingDisk(at: number, code: string, isKilled: boolean): FailingDisk {
  let calls = 0;
  const failing = Object.entries(realDisk).map(([name, call]) => [
    name,
    typeof call !== 'function' || !name.endsWith('Sync')
      ? call
      : (...args: unknown[]) => {
          calls++;
          if (calls === at || (isKilled && calls > at)) throw Object.assign(new Error(code), { code });
          return name === 'fsyncSync' ? undefined : (call as (...args: unknown[]) => unknown)(...args);
        },
  ]);
  return { disk: Object.fromEntries(failing) as unknown as Disk, calls: () => calls };
}

interface Versions {
  readonly before: string | null;
  readonly after: string | null;
  readonly calls: number;
}

/** What stands before and after an ordinary compile of the change, and the calls that it takes. */
async function ordinary(): Promise<Versions> {
  rmSync(out, { recursive: true, force: true });
  await compiled(OLD);
  const before = wholeVersion(out, 'home');
  const counting = failingDisk(-1, '', false);
  expect(await compiled(NEW, counting.disk)).toBe(0);
  const after = wholeVersion(out, 'home');
  expect(after).not.toBe(before);
  return { before, after, calls: counting.calls() };
}

describe('a compile on a disk that fails', () => {
  const codes = [
    ['ENOSPC', false],
    ['EIO', false],
    ['EACCES', false],
    ['EIO', true],
  ] as const;

  it.each(codes)('with %s (killed: %s) leaves old or new, and the next one heals', async (code, isKilled) => {
    const { before, after, calls } = await ordinary();
    const kept = join(folder, 'kept');
    rmSync(kept, { recursive: true, force: true });
    rmSync(out, { recursive: true });
    await compiled(OLD);
    fs.cpSync(out, kept, { recursive: true, verbatimSymlinks: true });
    expect(calls).toBeGreaterThan(60);
    const counted = { old: 0, new: 0, failed: 0 };
    const step = ALL ? 1 : 13;
    for (let at = 1 + (code.length % step); at <= calls; at += step) {
      rmSync(out, { recursive: true, force: true });
      fs.cpSync(kept, out, { recursive: true, verbatimSymlinks: true });
      const exit = await compiled(NEW, failingDisk(at, code, isKilled).disk);
      const stands = wholeVersion(out, 'home');
      expect([before, after], `call ${at}`).toContain(stands);
      expect([0, 1, 73], `call ${at}`).toContain(exit);
      if (exit === 0) expect(stands, `call ${at}`).toBe(after);
      counted[stands === before ? 'old' : 'new']++;
      counted.failed += exit === 0 ? 0 : 1;
      if (at % 3 === 0) {
        expect(await compiled(NEW)).toBe(0);
        expect(wholeVersion(out, 'home')).toBe(after);
        expect(readdirSync(join(out, '.versions')).filter((name) => name.startsWith('home-'))).toEqual([after]);
      }
    }
    console.info(
      `${code}${isKilled ? ', killed' : ''}: ${calls} calls, old ${counted.old}, new ${counted.new}, ended badly ${counted.failed}`,
    );
    expect(counted.old).toBeGreaterThan(0);
    expect(counted.failed).toBeGreaterThan(0);
  });
});

describe('a compile into a place that is not its own', () => {
  beforeEach(() => rmSync(out, { recursive: true, force: true }));

  it.each<[string, (elsewhere: string) => void]>([
    ['a link where the household stands', (elsewhere) => symlinkSync(elsewhere, join(out, 'home'))],
    ['a link where the versions stand', (elsewhere) => symlinkSync(elsewhere, join(out, '.versions'))],
    ['a file where the household stands', () => writeFileSync(join(out, 'home'), 'mine')],
    ['a file where the versions stand', () => writeFileSync(join(out, '.versions'), 'mine')],
    [
      'a folder of somebody else',
      () => {
        mkdirSync(join(out, 'home'));
        writeFileSync(join(out, 'home/thesis.txt'), 'mine');
      },
    ],
    [
      'a damaged plan',
      () => {
        mkdirSync(join(out, 'home'));
        writeFileSync(join(out, 'home/plan.json'), '{ "format": 1, "lighting": 3 }');
      },
    ],
    [
      'a link in the versions where the next one is to stand',
      (elsewhere) => {
        mkdirSync(join(out, '.versions'));
        symlinkSync(elsewhere, join(out, '.versions/.home.link'));
      },
    ],
  ])('ends with 73 or leaves it alone: %s', async (what, plant) => {
    const elsewhere = mkdtempSync(join(folder, 'elsewhere-'));
    mkdirSync(out);
    plant(elsewhere);
    const exit = await compiled(NEW);
    expect(exit).toBe(what.includes('next one') ? 0 : 73);
    expect(readdirSync(elsewhere)).toEqual([]);
    if (what.includes('somebody')) expect(readFileSync(join(out, 'home/thesis.txt'), 'utf8')).toBe('mine');
    if (what.startsWith('a file where the h')) expect(readFileSync(join(out, 'home'), 'utf8')).toBe('mine');
  });

  it('a name that would lead out of the folder is refused, and nothing is written', async () => {
    for (const name of ['...yaml', '..yaml', '.hidden.yaml']) {
      writeFileSync(join(folder, name), NEW);
      let exit = 0;
      try {
        exit = await run([join(folder, name)], { out, pdf: false, today: '2027-01-01' }, worldOn(realDisk, 0), 'test');
      } catch (error) {
        exit = explainFault(error, false).exit;
      }
      expect({ name, exit }).toEqual({ name, exit: 73 });
    }
    expect(fs.existsSync(out) ? readdirSync(out) : []).toEqual([]);
  });

  it('a folder that is read-only ends with 73, and stands as it was', async () => {
    await compiled(OLD);
    const before = wholeVersion(out, 'home');
    const refuse = () => {
      throw Object.assign(new Error('EROFS'), { code: 'EROFS' });
    };
    const open = (...args: unknown[]) => (args[1] === 'r' ? fs.openSync(String(args[0]), 'r') : refuse());
    const disk = {
      ...realDisk,
      openSync: open,
      writeFileSync: refuse,
      renameSync: refuse,
      rmSync: refuse,
      symlinkSync: refuse,
      chmodSync: refuse,
    } as unknown as Disk;
    expect(await compiled(NEW, disk)).toBe(73);
    expect(wholeVersion(out, 'home')).toBe(before);
  });
});

describe('a clock that is set back between two compiles', () => {
  it('changes nothing where nothing changed, and keeps what lies before the later day where something did', async () => {
    rmSync(out, { recursive: true, force: true });
    const [from, later] = ['2027-01-01', '2027-01-10'];
    await compiled(OLD, realDisk, later);
    const before = wholeVersion(out, 'home');
    expect(await compiled(OLD, realDisk, '2020-01-01')).toBe(0);
    expect(wholeVersion(out, 'home')).toBe(before);
    expect(await compiled(NEW, realDisk, '2020-01-01')).toBe(0);
    const plan = JSON.parse(readFileSync(join(out, 'home/plan.json'), 'utf8')) as {
      readonly made: string;
      readonly revision: number;
    };
    expect(plan).toMatchObject({ revision: 2, made: from });
    expect(await compiled(OLD, realDisk, later)).toBe(0);
    wholeVersion(out, 'home');
  });
});
