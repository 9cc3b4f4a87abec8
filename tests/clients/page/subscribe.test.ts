/**
 * A household served by the built program and subscribed to with vdirsyncer: a second run changes nothing, one change in the household file
 * is one change on the other side, and what is taken out goes.
 */
import { execFile } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ServedHousehold, serveHousehold } from './served-household.ts';

const CHORES = `    chores:
      - { id: bulb, title: Look at the bulb, on: [2027-03-01], minutes: 5 }
      - { id: lock, title: Oil the lock, on: [2027-04-01], minutes: 5 }
`;

let household: ServedHousehold;
let local = '';
beforeAll(async () => {
  household = await serveHousehold(
    'one-gecko.yaml',
    ['--today', '2027-01-05'],
    (text) => `${text.trimEnd()}\n${CHORES}`,
  );
  local = join(household.folder, 'local');
  mkdirSync(local);
  writeFileSync(
    join(household.folder, 'config'),
    `[general]\nstatus_path = "${join(household.folder, 'status')}"\n[pair care]\na = "feed"\nb = "local"\ncollections = null\nconflict_resolution = "a wins"\n` +
      `[storage feed]\ntype = "http"\nurl = "${household.feeds[0]?.http}"\n[storage local]\ntype = "filesystem"\npath = "${local}"\nfileext = ".ics"\n`,
  );
  await vdirsyncer('discover');
});
afterAll(async () => {
  expect(await household.end('SIGTERM')).toBe(0);
});

async function vdirsyncer(command: string): Promise<void> {
  await promisify(execFile)(
    'vdirsyncer',
    ['-c', join(household.folder, 'config'), command, ...(command === 'sync' ? ['--force-delete'] : [])],
    {
      env: { ...process.env, LC_ALL: 'C.UTF-8', LANG: 'C.UTF-8' },
    },
  );
}

/** Title, sequence and uid of each copy by its file, with the time at which it was written. */
async function synced(): Promise<ReadonlyMap<string, string>> {
  await vdirsyncer('sync');
  return new Map(
    readdirSync(local).map((name) => {
      const { ino, mtimeNs } = statSync(join(local, name), { bigint: true });
      return [name, `${ino} ${mtimeNs} ${readFileSync(join(local, name), 'utf8')}`];
    }),
  );
}

function difference(before: ReadonlyMap<string, string>, after: ReadonlyMap<string, string>) {
  const fresh = [...after].filter(([name, copy]) => before.get(name) !== copy).map(([, copy]) => titleOf(copy));
  const gone = [...before].filter(([name, copy]) => after.get(name) !== copy).map(([, copy]) => titleOf(copy));
  return { fresh, gone };
}

function titleOf(copy: string): string {
  return /^SUMMARY:(.*?)\r?$/m.exec(copy)?.[1] ?? '';
}

describe('a subscription', () => {
  let copies: ReadonlyMap<string, string>;

  it('is fetched whole, and again without a change', async () => {
    copies = await synced();
    const events = (await (await fetch(household.feeds[0]?.http ?? '')).text()).match(/^BEGIN:VEVENT/gm) ?? [];
    expect(copies.size).toBe(events.length);
    expect(copies.size).toBeGreaterThan(10);
    expect(difference(copies, await synced())).toEqual({ fresh: [], gone: [] });
  });

  it('has one change where one thing changes', async () => {
    await household.edit((text) => text.replace('Look at the bulb', 'Look at the bulb and wipe it'));
    const after = await synced();
    expect(difference(copies, after)).toEqual({
      fresh: [expect.stringContaining('Look at the bulb and wipe it')],
      gone: [expect.stringContaining('Look at the bulb')],
    });
    expect([...after.values()].find((copy) => copy.includes('wipe it'))).toContain('SEQUENCE:1');
    copies = after;
  });

  it('loses what is taken out, and nothing else', async () => {
    await household.edit((text) => text.replace(/^.*id: lock.*\n/m, ''));
    const after = await synced();
    expect(difference(copies, after)).toEqual({ fresh: [], gone: [expect.stringContaining('Oil the lock')] });
    copies = after;
  });

  it('keeps all it has while the household file cannot be used', async () => {
    await household.edit((text) => `${text}]`);
    expect(difference(copies, await synced())).toEqual({ fresh: [], gone: [] });
    await household.edit((text) => text.replace(/\]$/, ''));
    expect(difference(copies, await synced())).toEqual({ fresh: [], gone: [] });
  });
});
