import * as fs from 'node:fs';
import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { freshState, readState, stateFolder, writeState } from '../../../src/serve/serve-state.ts';

let folder = '';
let path = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'state-'));
  path = join(folder, 'home.yaml');
  writeFileSync(path, 'format: 1\n');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const state = (): string => join(folder, 'state', 'dewdial');

describe('the token on the disk', () => {
  it('comes back in a later run', () => {
    const fresh = freshState({ path, planId: 'home' });
    writeState(state(), fresh, fs);
    expect(readState(state(), { path, planId: 'home' }, fs)).toEqual(fresh);
  });

  it('is for its owner alone, also where folder and file stood open before', () => {
    mkdirSync(state(), { recursive: true, mode: 0o777 });
    fs.chmodSync(state(), 0o777);
    writeState(state(), freshState({ path, planId: 'home' }), fs);
    const [name = ''] = fs.readdirSync(state());
    fs.chmodSync(join(state(), name), 0o666);
    writeState(state(), freshState({ path, planId: 'home' }), fs);
    expect(fs.readdirSync(state())).toEqual([name]);
    expect(statSync(state()).mode & 0o777).toBe(0o700);
    expect(statSync(join(state(), name)).mode & 0o777).toBe(0o600);
  });

  it('stays where the id of the plan changes', () => {
    const fresh = freshState({ path, planId: 'home' });
    writeState(state(), fresh, fs);
    expect(readState(state(), { path, planId: 'other' }, fs)?.token).toBe(fresh.token);
  });

  it('follows a household file that was moved, but not one that was copied', () => {
    const fresh = freshState({ path, planId: 'home' });
    writeState(state(), fresh, fs);
    const elsewhere = { path: join(folder, 'new.yaml'), planId: 'home' };
    expect(readState(state(), elsewhere, fs)).toBeNull();
    rmSync(path);
    expect(readState(state(), elsewhere, fs)?.token).toBe(fresh.token);
    expect(readState(state(), { ...elsewhere, planId: 'foreign' }, fs)).toBeNull();
  });

  it.each(['', '{', '[]', 'null', '{"household":"x","planId":"home","token":"short","feeds":{}}'])(
    'is none where the file holds %j',
    (text) => {
      writeState(state(), freshState({ path, planId: 'home' }), fs);
      const [name = ''] = fs.readdirSync(state());
      writeFileSync(join(state(), name), text);
      expect(readState(state(), { path, planId: 'home' }, fs)).toBeNull();
    },
  );

  it('is none before the first run', () => {
    expect(readState(state(), { path, planId: 'home' }, fs)).toBeNull();
  });
});

describe('the folder for it', () => {
  it.each([
    [{ XDG_STATE_HOME: '/s' }, 'linux', join('/s', 'dewdial')],
    [{}, 'linux', join('/users/k', '.local', 'state', 'dewdial')],
    [{ LOCALAPPDATA: '/a' }, 'win32', join('/a', 'dewdial')],
    [{ LOCALAPPDATA: '/a' }, 'darwin', join('/users/k', '.local', 'state', 'dewdial')],
  ] as const)('with %j on %s', (env, platform, expected) => {
    expect(stateFolder(env, '/users/k', platform)).toBe(expected);
  });
});
