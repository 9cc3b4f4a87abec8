import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from '../../../src/cli/new-command.ts';
import { realWorld, type World } from '../../../src/cli/world.ts';

const folder = mkdtempSync(join(tmpdir(), 'dewdial-new-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A terminal at which these answers are typed, and everything that it was asked or told. */
function terminalOf(answers: readonly string[]): { readonly world: World; readonly heard: string[] } {
  const heard: string[] = [];
  const left = [...answers];
  const question = async (text: string): Promise<string> => {
    heard.push(text);
    const answer = left.shift();
    if (answer === undefined) throw Object.assign(new Error('Aborted with Ctrl+D'), { name: 'AbortError' });
    return answer;
  };
  const world: World = {
    ...realWorld(),
    isInTerminal: true,
    terminal: async () => ({ question, close: () => heard.push('closed') }),
    out: () => undefined,
    say: (text) => heard.push(text),
  };
  return { world, heard };
}

describe('new, on a terminal', () => {
  it('asks for what is missing, again where an answer will not do, and takes the presets', async () => {
    const file = join(folder, 'asked.yaml');
    const { world, heard } = terminalOf([
      'crested-geko',
      'crested-gecko',
      'Mars/Base',
      'Asia/Kathmandu',
      '27.7',
      '85.3',
      '',
      '',
    ]);
    expect(await run([file], { today: '2027-01-01' }, world)).toBe(0);
    expect(heard).toContain('  did you mean crested-gecko?\n');
    expect(heard.filter((text) => text.startsWith('Time zone'))).toHaveLength(2);
    expect(heard.at(-1)).toBe('closed');
    const text = readFileSync(file, 'utf8');
    expect(text).toContain('timezone: Asia/Kathmandu\n');
    expect(text).toContain('step: 15 min ');
    expect(text).toContain('units: metric ');
  });

  it('does not ask for what was given', async () => {
    const { world, heard } = terminalOf(['0', '0']);
    const given = { species: 'corn-snake', timezone: 'UTC', step: '30 min', units: 'us', today: '2027-01-01' };
    await run([join(folder, 'given.yaml')], given, world);
    expect(heard.filter((text) => text.includes('degrees')).length).toBe(2);
    expect(heard).toHaveLength(3);
  });

  it('writes nothing where the input ends early', async () => {
    const file = join(folder, 'early.yaml');
    const { world } = terminalOf(['corn-snake']);
    await expect(run([file], {}, world)).rejects.toThrow('nothing is written');
    expect(existsSync(file)).toBe(false);
  });
});
