/**
 * A whole compile on a disk that fails: at every call it makes (a sample in `npm test`, all with `FUZZ_ALL=1`), in every way. What stands
 * afterwards is the old results or the new, whole; and the next compile puts everything right.
 */
import * as fs from 'node:fs';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { type Disk, realDisk } from '../../src/cli/files.ts';
import { countingDisk, failingDisk } from './failing-disk.ts';
import { NEW, newHome, OLD } from './home-of-tests.ts';
import { wholeVersion } from './results.ts';

const ALL = process.env.FUZZ_ALL === '1';
if (ALL) vi.setConfig({ testTimeout: 30 * 60_000 });
const { folder, out, compiled, remove } = newHome();
afterAll(remove);

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
  const counting = countingDisk();
  expect(await compiled(NEW, { disk: counting.disk })).toBe(0);
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
      const exit = await compiled(NEW, { disk: failingDisk(at, code, isKilled).disk });
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

describe('results that have lost files', () => {
  it('are put right, and a disk that fails on the way takes nothing more away', async () => {
    rmSync(out, { recursive: true, force: true });
    await compiled(OLD);
    const whole = filesOf(join(out, 'home'));
    const damage = () => {
      writeFileSync(join(out, 'home/settings.txt'), 'torn');
      rmSync(join(out, 'home/dials'), { recursive: true });
    };
    damage();
    const counting = countingDisk();
    expect(await compiled(OLD, { disk: counting.disk })).toBe(0);
    expect(filesOf(join(out, 'home'))).toEqual(whole);
    for (let at = 1; at <= counting.calls(); at += ALL ? 1 : 5) {
      damage();
      const damaged = filesOf(join(out, 'home'));
      await compiled(OLD, { disk: failingDisk(at, 'EIO', true).disk });
      for (const [path, content] of filesOf(join(out, 'home')))
        if (content !== whole.get(path)) expect(content, `call ${at}: ${path}`).toBe(damaged.get(path));
      for (const path of damaged.keys())
        expect(fs.existsSync(join(out, 'home', path)), `call ${at}: ${path}`).toBe(true);
      expect(await compiled(OLD)).toBe(0);
      expect(filesOf(join(out, 'home')), `call ${at}`).toEqual(whole);
      expect(wholeVersion(out, 'home')).not.toBeNull();
    }
  });
});

function filesOf(root: string): ReadonlyMap<string, string> {
  const entries = readdirSync(root, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const paths = entries.map((entry) => join(entry.parentPath, entry.name)).sort();
  return new Map(paths.map((path) => [path.slice(root.length + 1), readFileSync(path, 'utf8')]));
}

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
    [
      'a link to a file where the one that says who writes stands',
      (elsewhere) => {
        mkdirSync(join(out, '.versions'));
        symlinkSync(join(elsewhere, 'lock'), join(out, '.versions/home.lock'));
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
      const exit = await compiled(NEW, { name });
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
    expect(await compiled(NEW, { disk })).toBe(73);
    expect(wholeVersion(out, 'home')).toBe(before);
  });
});
