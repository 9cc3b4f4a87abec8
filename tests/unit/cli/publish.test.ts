import * as fs from 'node:fs';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Disk, realDisk } from '../../../src/cli/files.ts';
import { CannotWrite, otherFiles, type Product, publish } from '../../../src/cli/publish.ts';

const OLD: readonly Product[] = [
  { path: 'plan.json', content: '{"old":1}' },
  { path: 'dials/a.svg', content: '<old/>' },
];
const NEW: readonly Product[] = [
  { path: 'plan.json', content: '{"new":2}' },
  { path: 'dials/a.svg', content: '<new/>' },
  { path: 'charts/b.svg', content: new Uint8Array([1, 2, 3]) },
];

let out = '';
beforeEach(() => {
  out = mkdtempSync(join(tmpdir(), 'publish-'));
});
afterEach(() => rmSync(out, { recursive: true, force: true }));

/** What a reader of the household's folder sees, or null where there is none. */
function seen(): Readonly<Record<string, string>> | null {
  const folder = join(out, 'home');
  if (!fs.existsSync(folder)) return null;
  const files = fs.readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return Object.fromEntries(
    files.map((entry) => [
      join(entry.parentPath, entry.name).slice(folder.length + 1),
      fs.readFileSync(join(entry.parentPath, entry.name), 'latin1'),
    ]),
  );
}

function asSeen(products: readonly Product[]): Readonly<Record<string, string>> {
  return Object.fromEntries(
    products.map(({ path, content }) => [path, Buffer.from(content as string).toString('latin1')]),
  );
}

const OLD_SEEN = asSeen(OLD);
const NEW_SEEN = asSeen(NEW);

/** A disk whose call number `at` fails; with `isKilled` every later call fails too, as if the process were gone. */
function failingDisk(
  at: number,
  code: string,
  isKilled: boolean,
): { readonly disk: Disk; readonly calls: () => number } {
  let calls = 0;
  const disk = Object.fromEntries(
    Object.entries(realDisk).map(([name, call]) => [
      name,
      typeof call !== 'function'
        ? call
        : (...args: unknown[]) => {
            calls++;
            if (calls === at || (isKilled && calls > at)) throw Object.assign(new Error(code), { code });
            return name === 'fsyncSync' ? undefined : (call as (...args: unknown[]) => unknown)(...args);
          },
    ]),
  ) as unknown as Disk;
  return { disk, calls: () => calls };
}

function countCalls(): number {
  publish(out, 'home', OLD);
  const counting = failingDisk(-1, '', false);
  publish(out, 'home', NEW, counting.disk);
  rmSync(out, { recursive: true });
  return counting.calls();
}

describe('publish', () => {
  it('writes all products, and nothing where the same stand already', () => {
    expect(publish(out, 'home', OLD)).toMatchObject({ folder: join(out, 'home'), changed: true });
    expect(seen()).toEqual(OLD_SEEN);
    expect(publish(out, 'home', OLD).changed).toBe(false);
    expect(publish(out, 'home', NEW).changed).toBe(true);
    expect(seen()).toEqual(NEW_SEEN);
    expect(fs.readdirSync(join(out, '.versions'))).toHaveLength(1);
  });

  it.each(['ENOSPC', 'EIO', 'EACCES'])('leaves the old or the new whole where any call fails with %s', (code) => {
    const calls = countCalls();
    expect(calls).toBeGreaterThan(15);
    for (let at = 1; at <= calls; at++) {
      rmSync(out, { recursive: true, force: true });
      publish(out, 'home', OLD);
      let failed = false;
      try {
        publish(out, 'home', NEW, failingDisk(at, code, false).disk);
      } catch {
        failed = true;
      }
      expect([OLD_SEEN, NEW_SEEN], `call ${at}`).toContainEqual(seen());
      if (!failed) expect(seen()).toEqual(NEW_SEEN);
      publish(out, 'home', NEW);
      expect(seen()).toEqual(NEW_SEEN);
    }
  });

  it('leaves the old or the new whole where it is killed at any call, and the next run heals', () => {
    const calls = countCalls();
    for (let at = 1; at <= calls; at++) {
      rmSync(out, { recursive: true, force: true });
      publish(out, 'home', OLD);
      try {
        publish(out, 'home', NEW, failingDisk(at, 'EIO', true).disk);
      } catch {
        // The process is gone.
      }
      expect([OLD_SEEN, NEW_SEEN], `call ${at}`).toContainEqual(seen());
      publish(out, 'home', NEW);
      expect(seen()).toEqual(NEW_SEEN);
      expect(fs.readdirSync(join(out, '.versions'))).toHaveLength(1);
    }
  });

  it('refuses names and paths that would leave the folder', () => {
    for (const name of ['..', '.', '', 'a/b', '.versions']) expect(() => publish(out, name, OLD)).toThrow(CannotWrite);
    for (const path of ['../plan.json', '/etc/plan.json', 'a/../../b']) {
      expect(() => publish(out, 'home', [{ path, content: '' }])).toThrow(CannotWrite);
    }
    expect(fs.readdirSync(out)).toEqual([]);
  });

  it('never writes through a link that was planted, nor over a folder that is not its own', () => {
    const elsewhere = mkdtempSync(join(tmpdir(), 'elsewhere-'));
    fs.symlinkSync(elsewhere, join(out, 'home'));
    expect(() => publish(out, 'home', NEW)).toThrow(/link to somewhere else/);
    fs.rmSync(join(out, 'home'));
    fs.rmSync(join(out, '.versions'), { recursive: true, force: true });
    fs.symlinkSync(elsewhere, join(out, '.versions'));
    expect(() => publish(out, 'home', NEW)).toThrow(/link to somewhere else/);
    fs.rmSync(join(out, '.versions'));
    fs.mkdirSync(join(out, 'home'));
    fs.writeFileSync(join(out, 'home', 'thesis.txt'), 'mine');
    expect(() => publish(out, 'home', NEW)).toThrow(/not made by this program/);
    expect(fs.readdirSync(elsewhere)).toEqual([]);
    expect(fs.readFileSync(join(out, 'home', 'thesis.txt'), 'utf8')).toBe('mine');
    rmSync(elsewhere, { recursive: true });
  });

  it('takes over a plain folder that holds a plan, for instance one copied from elsewhere', () => {
    fs.mkdirSync(join(out, 'home'));
    fs.writeFileSync(join(out, 'home', 'plan.json'), '{}');
    publish(out, 'home', NEW);
    expect(seen()).toEqual(NEW_SEEN);
  });

  it('carries over what is no result of a compile', () => {
    publish(out, 'home', [...OLD, { path: 'note.txt', content: 'mine' }, { path: 'handover/a.pdf', content: 'pdf' }]);
    expect(otherFiles(out, 'home').map(({ path }) => path)).toEqual(['handover/a.pdf', 'note.txt']);
  });
});
