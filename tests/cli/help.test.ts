/** What a beginner reads: help with examples first that can be typed as they stand, and a way on behind wrong usage. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bench } from './built.ts';

const { run } = bench();
const README = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8');
const COMMANDS = [...(run(['--help']).out.split('Commands:')[1] ?? '').matchAll(/^ {2}([a-z]+) /gm)]
  .map(([, name = '']) => name)
  .filter((name) => name !== 'help');

describe('help', () => {
  it.each(COMMANDS)(
    'of %s begins with examples of options that it takes, and ends with those that all take',
    (name) => {
      const { exit, out } = run([name, '--help']);
      expect(exit).toBe(0);
      const [examples = '', options = ''] = out.split('Usage:');
      expect(examples).toMatch(/^Examples:\n {2}(source <\()?dewdial /);
      const lines = examples.split('\n').filter((line) => line.includes(`dewdial ${name}`));
      expect(lines.length).toBeGreaterThan(0);
      const used = [...examples.matchAll(/ (--[a-z-]+)/g)].map(([, flag = '']) => flag);
      for (const flag of used) expect(options, `${name} ${flag}`).toMatch(new RegExp(`^  (-\\w, )?${flag}\\b`, 'm'));
      expect(options.trimEnd()).toMatch(/--debug {2,}print details of a fault\n {2}-h, --help {2,}print help$/);
      for (const line of examples.split('\n')) expect(line.length).toBeLessThan(112);
    },
  );

  it('names every command once in the table of the README, in the same order', () => {
    const table = README.split('## Commands')[1]?.split('\n## ')[0] ?? '';
    const rows = [...table.matchAll(/^\| `dewdial ([a-z]+)/gm)].map(([, name]) => name);
    expect(rows).toEqual(COMMANDS);
  });
});

describe('wrong usage', () => {
  it.each([
    [
      ['check'],
      'dewdial: FILE is missing\n  for instance  dewdial check home.yaml\n  more          dewdial check --help\n',
    ],
    [['compile'], 'dewdial: FILE is missing\n  for instance  dewdial compile home.yaml\n'],
    [['handover', 'home.yaml'], 'dewdial: --from is missing\n  for instance  dewdial handover home.yaml --from'],
    [['chek'], "dewdial: unknown command 'chek'\n(Did you mean check?)\n  dewdial --help lists the commands\n"],
  ])('%o leads on', (args, words) => {
    const { exit, out, said } = run(args);
    expect({ exit, out }).toEqual({ exit: 2, out: '' });
    expect(said.startsWith(words)).toBe(true);
  });
});
