/** The completion scripts in zsh and fish themselves. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const PROGRAM = process.env.DEWDIAL_BUILT ?? resolve(import.meta.dirname, '../../../dist/dewdial.js');
const folder = mkdtempSync(join(tmpdir(), 'dewdial-shells-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function scriptFor(shell: string): string {
  const path = join(folder, `dewdial.${shell}`);
  writeFileSync(path, spawnSync(process.execPath, [PROGRAM, 'completion', shell], { encoding: 'utf8' }).stdout);
  return path;
}

function said(command: string, args: readonly string[]): string {
  const { status, stdout, stderr, error } = spawnSync(command, args, {
    encoding: 'utf8',
    cwd: folder,
    env: { ...process.env, HOME: folder },
  });
  expect({ status, stderr, error: error?.message }).toEqual({ status: 0, stderr: '', error: undefined });
  return stdout;
}

describe('fish', () => {
  const offered = (line: string) =>
    said('fish', ['--no-config', '-c', `source ${scriptFor('fish')}; complete -C ${JSON.stringify(line)}`])
      .split('\n')
      .map((each) => each.split('\t')[0]);

  it.each([
    ['dewdial compl', 'completion'],
    ['dewdial compile home.yaml --pa', '--part'],
    ['dewdial compile --show ', 'care'],
    ['dewdial completion ', 'zsh'],
  ])('completes %j with %s', (line, word) => {
    expect(offered(line)).toContain(word);
  });

  it('keeps the options of one command from another', () => {
    expect(offered('dewdial species --pa')).not.toContain('--part');
  });
});

describe('zsh', () => {
  it('takes the script, and completes by it', () => {
    const script = scriptFor('zsh');
    said('zsh', ['-f', '-n', script]);
    const line = `autoload -Uz compinit; compinit -D -u; source ${script}; print -r -- $_comps[dewdial]`;
    expect(said('zsh', ['-f', '-c', line]).trim()).toBe('_dewdial');
  });

  it('hands the options and values of the command that stands there to the shell', () => {
    const line = `autoload -Uz compinit; compinit -D -u; source ${scriptFor('zsh')}; _arguments() { print -rl -- "$@" }; words=(dewdial compile ''); CURRENT=3; _dewdial`;
    const handed = said('zsh', ['-f', '-c', line]);
    expect(handed).toContain('--part[');
    expect(handed).toContain(':value:(household care plan)');
    expect(handed).not.toContain('--days[');
  });
});
