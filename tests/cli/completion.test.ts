/** The completion scripts: bash runs its own; what is offered is what the program takes. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bench } from './built.ts';

const { folder, run } = bench();
const script = join(folder, 'dewdial.bash');
writeFileSync(script, run(['completion', 'bash']).out);

/** What bash offers at the end of a line. */
function offered(...words: readonly string[]): readonly string[] {
  const line = `set -eu; source ${script}; COMP_WORDS=(${['dewdial', ...words].map((word) => `'${word}'`).join(' ')}); COMP_CWORD=${words.length}; _dewdial; printf '%s\\n' "\${COMPREPLY[@]:-}"`;
  const { status, stdout, stderr } = spawnSync('bash', ['-c', line], { encoding: 'utf8' });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  return stdout.split('\n').filter((word) => word !== '');
}

describe('completion in bash', () => {
  it('offers every command that the help names', () => {
    const [, listed = ''] = run(['--help']).out.split('Commands:');
    const named = [...listed.matchAll(/^ {2}([a-z]+)/gm)]
      .map(([, name = '']) => name)
      .filter((name) => name !== 'help');
    expect(named.length).toBeGreaterThan(8);
    expect(offered('')).toEqual(expect.arrayContaining(named));
    expect(offered('comp')).toEqual(['compile', 'completion']);
  });

  it('offers the options of a command, and those that the program takes alone', () => {
    expect(offered('compile', 'home.yaml', '--pa')).toEqual(['--part']);
    expect(offered('species', '--pa')).toEqual([]);
    expect(offered('compile', '--')).toEqual(expect.arrayContaining(['--out', '--no-pdf', '--today', '--help']));
  });

  it('offers values where they are few, and leaves files to the shell', () => {
    expect(offered('compile', '--show', '')).toEqual(['household', 'care', 'plan']);
    expect(offered('schema', '')).toEqual(['household', 'profile']);
    expect(offered('completion', 'z')).toEqual(['zsh']);
    expect(offered('compile', '')).toEqual([]);
  });
});

describe('the other shells', () => {
  it.each([
    ['zsh', '#compdef dewdial'],
    ['fish', 'complete -c dewdial'],
  ])('%s has a script with every command', (shell, word) => {
    const { exit, out } = run(['completion', shell]);
    expect(exit).toBe(0);
    expect(out).toContain(word);
    for (const name of ['compile', 'today', 'serve', 'completion']) expect(out).toContain(name);
  });

  it('another shell is wrong usage', () => {
    const { exit, said } = run(['completion', 'toString']);
    expect({ exit, said }).toEqual({
      exit: 2,
      said: 'dewdial: there is no completion for "toString": say bash, zsh or fish\n',
    });
  });
});
