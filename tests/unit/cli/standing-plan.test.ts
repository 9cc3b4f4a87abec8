import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { realDisk } from '../../../src/cli/files.ts';
import { notingDisk } from '../../../src/cli/kept-results.ts';
import { keepPlan, type StandingRun, standingRun } from '../../../src/cli/standing-plan.ts';
import { realWorld, type World } from '../../../src/cli/world.ts';
import type { Diagnostic } from '../../../src/diagnostics/diagnostic.ts';

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

const note = (said: Partial<Diagnostic> & { readonly code: string }): Diagnostic => ({
  kind: 'note',
  weight: 'note',
  place: null,
  because: 'because',
  instead: '',
  ...said,
});

interface Kept {
  readonly path: (name: string) => string;
  readonly standing: (asked?: { file?: string; today?: string; version?: string }) => StandingRun | null;
  readonly stands: () => boolean;
}

/** A folder in which a plan was written from a household file and a profile. */
function kept(said: Partial<Diagnostic> & { readonly code: string } = { code: 'a-note' }): Kept {
  const folder = mkdtempSync(join(tmpdir(), 'dewdial-standing-'));
  folders.push(folder);
  const path = (name: string): string => join(folder, name);
  const world: World = { ...realWorld(), disk: realDisk, cwd: folder };
  mkdirSync(path('out/home'), { recursive: true });
  for (const name of ['home.yaml', 'own.yaml', 'out/home/plan.json']) writeFileSync(path(name), name);
  const { disk, inputs } = notingDisk(world, path('out'), 'home');
  for (const name of ['home.yaml', 'own.yaml']) disk.readFileSync(path(name));
  expect(() => disk.readFileSync(path('home.fit.yaml'))).toThrow();
  const sources = new Map([['home.yaml', { shown: path('home.yaml'), text: 'home.yaml' }]]);
  const run = { compiled: { diagnostics: [note(said), note({ code: 'clock-set-back' })] }, sources };
  const plan = { made: '2027-02-01', from: '2027-01-01', timezone: 'Europe/Madrid' };
  keepPlan(path('out'), 'home', { content: 'out/home/plan.json', plan }, run, inputs(), world, '1');
  const standing: Kept['standing'] = ({ file = 'home.yaml', today = '2027-02-01', version = '1' } = {}) =>
    standingRun(path(file), path('out'), { date: today }, world, version);
  return { path, standing, stands: () => standing() !== null };
}

describe('the plan that stands', () => {
  it('comes with what there was to say, the clock that was met left out', () => {
    const { standing } = kept();
    const run = standing();
    expect(String(run?.planBytes)).toBe('out/home/plan.json');
    expect(run?.compiled.diagnostics.map(({ code }) => code)).toEqual(['a-note']);
  });

  it('shows the files that messages point into, and reads no others', () => {
    const { path, standing } = kept({ code: 'placed', place: { file: 'home.yaml', line: 1, column: 1, length: 4 } });
    const shown = { shown: path('home.yaml'), text: 'home.yaml' };
    expect([...(standing()?.sources ?? [])]).toEqual([['home.yaml', shown]]);
    expect([...(kept().standing()?.sources ?? [])]).toEqual([]);
  });

  it('does not stand before the day it was revised, for then there is more to say', () => {
    const { standing } = kept();
    expect([standing({ today: '2027-01-31' }), standing({ today: '2027-02-01' }) !== null]).toEqual([null, true]);
  });

  it.each(['home.yaml', 'own.yaml', 'out/home/plan.json'])('does not stand where %s reads otherwise', (name) => {
    const { path, stands } = kept();
    expect(stands()).toBe(true);
    writeFileSync(path(name), 'changed');
    expect(stands()).toBe(false);
  });

  it.each(['home.yaml', 'own.yaml', 'out/home/plan.json'])('does not stand where %s is gone', (name) => {
    const { path, stands } = kept();
    rmSync(path(name));
    expect(stands()).toBe(false);
  });

  it('does not stand where a file has come that was not there', () => {
    const { path, stands } = kept();
    writeFileSync(path('home.fit.yaml'), 'fitted');
    expect(stands()).toBe(false);
  });

  it('does not stand for another file of the same name, nor for another version', () => {
    const { path, standing } = kept();
    mkdirSync(path('b'));
    writeFileSync(path('b/home.yaml'), 'home.yaml');
    expect(standing({ file: 'b/home.yaml' })).toBeNull();
    expect(standing({ version: '2' })).toBeNull();
  });

  it.each<[string, (entry: string, text: string) => void]>([
    ['cut short', (entry, text) => writeFileSync(entry, text.slice(0, -20))],
    ['empty', (entry) => writeFileSync(entry, '')],
    ['gone', () => undefined],
    ['a folder', (entry) => mkdirSync(entry)],
    ['a link to nowhere', (entry) => symlinkSync('nowhere', entry)],
    ['a link to itself', (entry) => symlinkSync(entry, entry)],
  ])('does not stand where what was kept is %s', (_, spoil) => {
    const { path, stands } = kept();
    const entry = path('out/.versions/.kept/home.standing');
    const text = readFileSync(entry, 'utf8');
    rmSync(entry);
    spoil(entry, text);
    expect(stands()).toBe(false);
  });

  it('does not stand where what was kept is not whole', () => {
    const { path, stands } = kept();
    const entry = path('out/.versions/.kept/home.standing');
    writeFileSync(entry, readFileSync(entry, 'utf8').replace('a-note', 'b-note'));
    expect(stands()).toBe(false);
  });
});
