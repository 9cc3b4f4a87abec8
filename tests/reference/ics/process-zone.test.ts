/** The same household is the same bytes, whatever time zone the process runs in. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';
import { afterAll, beforeAll, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const folder = mkdtempSync(join(root, 'node_modules', '.calendar-'));
const program = join(folder, 'print-digests.mjs');

beforeAll(() => {
  const entryPoints = [join(root, 'tests/generated/print-digests.ts')];
  buildSync({ entryPoints, outfile: program, bundle: true, platform: 'node', format: 'esm', packages: 'external' });
});

afterAll(() => rmSync(folder, { recursive: true }));

function printed(timezone: string, ...more: readonly string[]): string {
  return execFileSync(process.execPath, [program, ...more], {
    env: { ...process.env, TZ: timezone },
    encoding: 'utf8',
  });
}

it('prints the same calendars in every process time zone, and twice the same in one', () => {
  const utc = printed('UTC');
  expect(utc.trim().split('\n')).toHaveLength(3);
  for (const zone of ['UTC', 'America/New_York', 'Pacific/Kiritimati', 'Australia/Lord_Howe', 'Europe/Dublin']) {
    expect(printed(zone), zone).toBe(utc);
  }
});

it('does run in these time zones', () => {
  expect(printed('Pacific/Kiritimati', 'zone')).toMatch(/^-840 /);
  expect(printed('America/New_York', 'zone')).toMatch(/^240 /);
});
