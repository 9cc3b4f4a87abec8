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

const TODAY = { today: '2027-01-01' };

describe('new, on a terminal', () => {
  it('asks for what is missing, says why, asks again where an answer will not do, and takes the presets', async () => {
    const file = join(folder, 'asked.yaml');
    const { world, heard } = terminalOf([
      'gecko',
      'crested-geko',
      'crested-gecko',
      '85.3',
      '27.7, 85.3',
      'Mars/Base',
      'Asia/Kathmandu',
      '',
      '',
      'pump',
    ]);
    expect(await run([file], TODAY, world)).toBe(0);
    expect(heard).toContain('  which: crested-gecko, giant-day-gecko, leopard-gecko?\n');
    expect(heard).toContain('  did you mean crested-gecko?\n');
    expect(heard.filter((text) => text.startsWith('Time zone'))).toHaveLength(1);
    expect(heard.filter((text) => text.includes('\nTime zone'))).toHaveLength(1);
    expect(heard.join('')).toContain('north or south of the equator');
    expect(heard.at(-1)).toBe('closed');
    const text = readFileSync(file, 'utf8');
    expect(text).toContain('timezone: Asia/Kathmandu\n');
    expect(text).toContain('latitude: 27.7 ');
    expect(text).toContain('step: 15 min ');
    expect(text).toContain('units: metric ');
    expect(text).toContain('mist: pump ');
  });

  it('takes a species by its number, name and scientific name', async () => {
    for (const [index, said] of ['2', 'Inland bearded dragon', 'pogona vitticeps'].entries()) {
      const file = join(folder, `named-${index}.yaml`);
      const { world } = terminalOf([said, "37°49'S 144°58'E", 'Australia/Melbourne', '', '']);
      expect(await run([file], TODAY, world)).toBe(0);
      expect(readFileSync(file, 'utf8')).toContain('species: bearded-dragon ');
    }
  });

  it('does not take a place and a clock that cannot go together, and asks for both again', async () => {
    const file = join(folder, 'sign.yaml');
    const { world, heard } = terminalOf([
      '2',
      '37.8, 145',
      'Australia/Melbourne',
      '-37.8, 145',
      'Australia/Melbourne',
      '',
      '',
    ]);
    expect(await run([file], TODAY, world)).toBe(0);
    expect(heard.join('')).toContain('summer time in January, which is winter at latitude 37.8');
    expect(readFileSync(file, 'utf8')).toContain('latitude: -37.8 ');
  });

  it('does not ask for what was given, and takes inches where the clock is one of the United States', async () => {
    const file = join(folder, 'given.yaml');
    const { world, heard } = terminalOf(['']);
    const given = {
      species: 'corn-snake',
      timezone: 'America/Chicago',
      step: '30',
      coordinates: '41.9 N 87.6 W',
      ...TODAY,
    };
    await run([file], given, world);
    expect(heard.filter((text) => text.includes('Units'))).toEqual(['\nUnits, metric or us [us]: ']);
    expect(heard.filter((text) => text.endsWith(': '))).toHaveLength(1);
    expect(readFileSync(file, 'utf8')).toContain('width: 47 in');
  });

  it('writes nothing where the input ends early', async () => {
    const file = join(folder, 'early.yaml');
    const { world } = terminalOf(['corn-snake']);
    await expect(run([file], {}, world)).rejects.toThrow('nothing is written');
    expect(existsSync(file)).toBe(false);
  });
});

describe('new, without a terminal', () => {
  const plain = (): { readonly world: World; readonly heard: string[] } => {
    const heard: string[] = [];
    return { world: { ...realWorld(), isInTerminal: false, out: (text) => heard.push(text) }, heard };
  };

  it('says which presets it took', async () => {
    const { world, heard } = plain();
    const given = {
      species: 'corn-snake',
      latitude: '41.9',
      longitude: '87.6 W',
      timezone: 'America/Chicago',
      ...TODAY,
    };
    await run([join(folder, 'preset.yaml')], given, world);
    expect(heard.join('')).toContain('taken, as nothing else was said: --step "15 min", --units us\n');
  });

  it.each([
    [{ species: 'corn-snake', latitude: '41.9', timezone: 'UTC' }, '--longitude is needed beside the other'],
    [{ species: 'corn-snake', latitude: '141.9', longitude: '0' }, '--latitude 141.9: degrees from -90 to 90'],
    [{ coordinates: '0, 0', timezone: 'UTC' }, '--species is needed'],
    [
      { species: 'corn-snake', coordinates: '0, 0', timezone: 'Madrid' },
      '--timezone Madrid: did you mean Europe/Madrid?',
    ],
    [
      { species: 'corn-snake', coordinates: '41.9, 87.6', timezone: 'America/Chicago' },
      'at longitude 87.6 the sun is 12 h from the clocks of America/Chicago',
    ],
  ])('%o is wrong usage', async (options, words) => {
    await expect(run([join(folder, 'wrong.yaml')], { ...options, ...TODAY }, plain().world)).rejects.toThrow(words);
    expect(existsSync(join(folder, 'wrong.yaml'))).toBe(false);
  });
});
