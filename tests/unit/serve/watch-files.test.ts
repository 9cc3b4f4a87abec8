import { appendFileSync, mkdtempSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type FileWatch, watchFiles } from '../../../src/serve/watch-files.ts';

let folder = '';
let watch: FileWatch | null = null;
let told = 0;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'watch-'));
  told = 0;
});
afterEach(() => {
  watch?.close();
  rmSync(folder, { recursive: true, force: true });
});

const path = (name: string): string => join(folder, name);
const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** Waits until it is told of a change; false where it is not within two seconds. */
async function isTold(times = 1): Promise<boolean> {
  for (let waited = 0; waited < 2000 && told < times; waited += 10) await pause(10);
  return told >= times;
}

function follow(names: readonly string[]): void {
  watch = watchFiles(() => told++, 20, 60);
  watch.follow(names.map(path));
}

describe('a watched file', () => {
  beforeEach(() => writeFileSync(path('home.yaml'), 'one'));

  it.each([
    ['is written in place', () => writeFileSync(path('home.yaml'), 'two')],
    ['grows', () => appendFileSync(path('home.yaml'), 'more')],
    [
      'is replaced by renaming, as editors do',
      () => {
        writeFileSync(path('.home.yaml.swp'), 'two');
        renameSync(path('.home.yaml.swp'), path('home.yaml'));
      },
    ],
    [
      'is set aside and written anew',
      () => {
        renameSync(path('home.yaml'), path('home.yaml~'));
        writeFileSync(path('home.yaml'), 'two');
      },
    ],
    ['goes', () => rmSync(path('home.yaml'))],
  ])('is told of when it %s, and again afterwards', async (_how, change) => {
    follow(['home.yaml']);
    change();
    expect(await isTold()).toBe(true);
    const before = told;
    writeFileSync(path('home.yaml'), 'three!');
    expect(await isTold(before + 1)).toBe(true);
  });

  it('is not told of for what else happens in its folder', async () => {
    follow(['home.yaml']);
    writeFileSync(path('other.yaml'), 'x');
    await pause(200);
    expect(told).toBe(0);
  });

  it('is told of once where an editor writes several times at once', async () => {
    watch = watchFiles(() => told++, 80, 10_000);
    watch.follow([path('home.yaml')]);
    for (const text of ['a', 'ab', 'abc', 'abcd']) writeFileSync(path('home.yaml'), text);
    expect(await isTold()).toBe(true);
    await pause(200);
    expect(told).toBe(1);
  });

  it('is told of no more than once a change', async () => {
    follow(['home.yaml']);
    writeFileSync(path('home.yaml'), 'two');
    expect(await isTold()).toBe(true);
    await pause(300);
    expect(told).toBe(1);
  });

  it('is told of by its folder, also after it was replaced', async () => {
    watch = watchFiles(() => told++, 20, 60_000);
    watch.follow([path('home.yaml')]);
    for (const times of [1, 2]) {
      writeFileSync(path('fresh'), 'x'.repeat(times));
      renameSync(path('fresh'), path('home.yaml'));
      expect(await isTold(times)).toBe(true);
    }
  });

  it('is told of when it comes to be, and when a link leads elsewhere', async () => {
    symlinkSync(path('home.yaml'), path('link'));
    follow(['new.yaml', 'link']);
    writeFileSync(path('new.yaml'), 'x');
    expect(await isTold()).toBe(true);
    const before = told;
    symlinkSync(path('new.yaml'), path('fresh'));
    renameSync(path('fresh'), path('link'));
    expect(await isTold(before + 1)).toBe(true);
  });

  it('is let go', async () => {
    follow(['home.yaml']);
    watch?.close();
    writeFileSync(path('home.yaml'), 'two');
    await pause(150);
    expect(told).toBe(0);
  });
});
