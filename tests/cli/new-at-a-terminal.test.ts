/** The built program asks its questions, as at a terminal: standard input is said to be one before the program starts. */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bench, PROGRAM } from './built.ts';

const { folder } = bench();
const preload = join(folder, 'terminal.mjs');
writeFileSync(preload, "Object.defineProperty(process.stdin, 'isTTY', { value: true });\n");

function typed(answers: readonly string[], ...args: readonly string[]): { exit: number | null; said: string } {
  const { status, stderr } = spawnSync(process.execPath, ['--import', `file://${preload}`, PROGRAM, ...args], {
    cwd: folder,
    encoding: 'utf8',
    input: answers.map((answer) => `${answer}\n`).join(''),
  });
  return { exit: status, said: stderr };
}

describe('new, at a terminal', () => {
  it('asks, and writes what was answered', () => {
    const { exit, said } = typed(
      ['crested-gecko', '41.9, -87.6', 'America/Chicago', '', '', ''],
      'new',
      'asked.yaml',
      '--today',
      '2027-01-01',
    );
    expect({ exit, said }).toEqual({ exit: 0, said: expect.stringContaining('Time zone') });
    expect(readFileSync(join(folder, 'asked.yaml'), 'utf8')).toContain('latitude: 41.9 ');
  });

  it('writes nothing where the input ends early', () => {
    const { exit, said } = typed(['crested-gecko'], 'new', 'early.yaml');
    expect({ exit, said }).toEqual({ exit: 2, said: expect.stringContaining('ended early; nothing is written') });
  });
});

describe('the bundled program', () => {
  it('imports nothing by itself: what the runtime took over from the build cannot', () => {
    const text = readFileSync(PROGRAM.replace(/dewdial\.js$/, 'program.cjs'), 'utf8');
    expect(text.match(/[^\w.$]import\((?!\w+\))/g)).toBeNull();
  });
});
