/** The folder of results from one run to the next: recovered, recognised, never destroyed. */
import { spawn } from 'node:child_process';
import { chmodSync, copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/plan/plan.ts';
import { bench } from './built.ts';

const { folder, run, files } = bench(56);
const FILE = 'porch-tortoise.yaml';

function pathOf(out: string, name = 'plan.json'): string {
  return join(folder, out, 'porch-tortoise', name);
}

function planIn(out: string): Plan {
  return JSON.parse(readFileSync(pathOf(out), 'utf8')) as Plan;
}

function edit(from: string, to: string): void {
  const path = join(folder, FILE);
  const text = readFileSync(path, 'utf8');
  if (!text.includes(from)) throw new Error(`nothing to edit: ${from}`);
  writeFileSync(path, text.replace(from, to));
}

function compile(out: string, ...more: readonly string[]) {
  return run(['compile', FILE, '--no-pdf', '--out', out, ...more]);
}

const FROM = /from: (\d{4}-\d\d-\d\d)/.exec(readFileSync(join(folder, FILE), 'utf8'))?.[1] ?? '';
const day = (days: number): string =>
  new Date(Date.parse(`${FROM}T00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);

describe('changes', () => {
  const changes = (...more: readonly string[]) => run(['changes', FILE, '--out', 'sheets', ...more]);

  it('says what changes.txt will say, and afterwards what it says, on any day', () => {
    compile('sheets', '--today', day(0));
    edit('feeds_at: "10:00"', 'feeds_at: "10:15"');
    const before = changes('--today', day(20));
    expect(before.exit).toBe(0);
    compile('sheets', '--today', day(20));
    expect(before.out).toBe(readFileSync(pathOf('sheets', 'changes.txt'), 'utf8'));
    expect(changes('--today', day(31)).out).toBe(before.out);
  });

  it('of the first day are told against its first plan, whose pins may be set', () => {
    compile('first', '--today', day(0));
    edit('feeds_at: "10:15"', 'feeds_at: "10:45"');
    compile('first', '--today', day(0));
    const sheet = readFileSync(pathOf('first', 'changes.txt'), 'utf8');
    expect(sheet).toContain('against the first plan of that day');
    expect(sheet).toContain('10:45');
    edit('feeds_at: "10:45"', 'feeds_at: "10:15"');
  });

  it('--since goes back to older revisions, and names those that are kept', () => {
    edit('feeds_at: "10:15"', 'feeds_at: "10:30"');
    compile('sheets', '--today', day(40));
    const sheet = (...more: readonly string[]) =>
      JSON.parse(changes('--today', day(41), '--json', ...more).out) as {
        since: string;
        feeds: { first: { before: { time: string }; after: { time: string } } }[];
      };
    expect([sheet().since, sheet().feeds[0]?.first.before.time]).toEqual([day(20), '10:15']);
    const old = sheet('--since', day(10));
    expect([old.since, old.feeds[0]?.first.before.time, old.feeds[0]?.first.after.time]).toEqual([
      day(0),
      '10:00',
      '10:30',
    ]);
    const none = changes('--since', day(-1));
    expect(none.exit).toBe(2);
    expect(none.said).toContain(`${day(0)}, ${day(20)}`);
    edit('feeds_at: "10:30"', 'feeds_at: "10:00"');
  });
});

describe('a folder of results', () => {
  it('that is lost comes back from the last plan.json alone, as if it had not been', () => {
    compile('whole', '--today', day(0));
    mkdirSync(join(folder, 'saved/porch-tortoise'), { recursive: true });
    copyFileSync(pathOf('whole'), pathOf('saved'));
    expect(compile('saved', '--today', day(30)).exit).toBe(0);
    expect(files('saved')).toEqual(files('whole'));
    for (const file of files('whole'))
      expect(readFileSync(join(folder, 'saved', file), 'utf8'), file).toBe(
        readFileSync(join(folder, 'whole', file), 'utf8'),
      );
  });

  it('that is lost goes on with rotations and identities after an edit too', () => {
    copyFileSync(join(folder, FILE), join(folder, 'kept.yaml'));
    edit('name: Porch tortoise', 'name: Porch tortoises');
    for (const out of ['whole', 'saved']) expect(compile(out, '--today', day(30)).exit).toBe(0);
    expect(planIn('saved')).toEqual(planIn('whole'));
    expect(planIn('saved').revision).toBe(2);
    expect(planIn('saved').previous?.revision).toBe(1);
    expect(files('saved')).toContain('porch-tortoise/changes.txt');
  });

  it.each([
    ['cut short', (text: string) => text.slice(0, text.length / 2), 'damaged'],
    ['of something else', () => '{"format": 1}', 'not a plan of this program'],
    ['of a later format', (text: string) => text.replace('"format": 1', '"format": 7'), 'format 7'],
    ['altered by hand', (text: string) => text.replace(/"feeding": \[/, '"feeding": [7, '), 'damaged'],
    [
      'of another household',
      (text: string) =>
        text
          .replace(/"id": "[0-9a-f]{32}"/, '"id": "attic"')
          .replace(/"name": "[^"]*"/, '"name": "Attic"')
          .replaceAll('"id": "terra"', '"id": "x"'),
      'another household',
    ],
  ])('with a plan %s is recognised, said, and left as it is', (_, damage, word) => {
    mkdirSync(join(folder, 'odd/porch-tortoise'), { recursive: true });
    const text = damage(readFileSync(pathOf('whole'), 'utf8'));
    const isOther = word === 'another household';
    if (isOther) edit('format: 1\n', 'format: 1\nid: porch\n');
    writeFileSync(pathOf('odd'), text);
    const ended = compile('odd', '--today', day(40));
    expect(ended.exit).toBe(73);
    expect(ended.said).toContain(word);
    expect(ended.said).not.toMatch(/\n\s+at /);
    expect(readFileSync(pathOf('odd'), 'utf8')).toBe(text);
    expect(files('odd')).toEqual(['porch-tortoise/plan.json']);
    const checked = run(['check', FILE, '--out', 'odd', '--today', day(40)]);
    expect(checked.exit).toBe(0);
    expect(checked.said).toContain('left alone');
    if (isOther) edit('id: porch\n', '');
  });

  it.skipIf(process.getuid?.() === 0)('with a plan that may not be read is left as it is', () => {
    mkdirSync(join(folder, 'shut/porch-tortoise'), { recursive: true });
    writeFileSync(pathOf('shut'), '{}');
    chmodSync(pathOf('shut'), 0);
    expect(compile('shut').exit).toBe(73);
    chmodSync(pathOf('shut'), 0o600);
  });

  it('with a plan that is no file is left as it is', () => {
    mkdirSync(pathOf('dir'), { recursive: true });
    const ended = compile('dir', '--today', day(0));
    expect(ended.exit).toBe(73);
    expect(ended.said).toContain('folder, not a file');
  });

  it('written by two at once holds the whole work of one, and then of the other', async () => {
    const program = process.env.DEWDIAL_BUILT ?? join(import.meta.dirname, '../../dist/dewdial.js');
    const started = Array.from({ length: 4 }, () => {
      const child = spawn(
        process.execPath,
        [program, 'compile', FILE, '--no-pdf', '--out', 'both', '--today', day(0)],
        { cwd: folder },
      );
      return new Promise<number | null>((resolve) => child.on('close', resolve));
    });
    expect(await Promise.all(started)).toEqual([0, 0, 0, 0]);
    expect(planIn('both').revision).toBe(1);
    expect(files('both')).toEqual(files('whole').filter((file) => !file.endsWith('changes.txt')));
    rmSync(join(folder, 'both'), { recursive: true });
  });

  it('made on a later day than today is gone on with, and it is said', () => {
    const before = planIn('whole');
    const same = compile('whole', '--today', day(10));
    expect([same.exit, same.said.includes('clock-set-back')]).toEqual([0, true]);
    expect(planIn('whole')).toEqual(before);
    edit('name: Porch tortoises', 'name: Porch tortoise');
    expect(compile('whole', '--today', day(10)).exit).toBe(0);
    const after = planIn('whole');
    expect(after.revision).toBe(3);
    expect(after.previous?.revision).toBe(1);
    expect(after.feeding.length).toBe(before.feeding.length);
    const stamps = after.events.map(({ stamp }) => stamp).sort();
    expect(stamps.at(-1)?.slice(0, 10)).toBe(
      before.events
        .map(({ stamp }) => stamp)
        .sort()
        .at(-1)
        ?.slice(0, 10),
    );
  });
});
