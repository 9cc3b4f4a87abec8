/** What a command says, and how it ends, when it cannot do what it is asked. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bench } from './built.ts';

const { folder, run, shell, files } = bench(28);
const TODAY = ['--today', '2027-01-01'];

function household(name: string, change: (text: string) => string): string {
  const text = readFileSync(join(folder, 'one-gecko.yaml'), 'utf8');
  const changed = change(text);
  if (changed === text) throw new Error(`${name} is unchanged`);
  writeFileSync(join(folder, name), changed);
  return name;
}

describe('wrong usage ends with 2', () => {
  it.each([
    ['an unknown command', ['chek', 'one-gecko.yaml'], 'check'],
    ['a missing file', ['check'], 'FILE is missing'],
    ['an unknown option', ['check', 'one-gecko.yaml', '--nope'], '--nope'],
    ['a date that does not exist', ['check', 'one-gecko.yaml', '--today', '2027-02-30'], 'YYYY-MM-DD'],
    ['a day that does not exist', ['today', 'one-gecko.yaml', '--on', 'monday'], 'YYYY-MM-DD'],
    ['a number of days that is none', ['today', 'one-gecko.yaml', '--days', '0'], '1 to 31'],
    ['a person nobody knows', ['today', 'one-gecko.yaml', '--for', 'nobody'], 'keeper'],
    ['a species nobody knows', ['species', 'leopard-geko'], 'did you mean leopard-gecko'],
    ['a thing that is not there', ['why', 'one-gecko.yaml', 'dail'], 'did you mean dial'],
    ['a schema that is not there', ['schema', 'plan'], 'household or profile'],
    ['a revision that is not there', ['changes', 'one-gecko.yaml', '--since', '2020-01-01'], '2020-01-01'],
    ['a stage that is not there', ['compile', 'one-gecko.yaml', '--show', 'soup'], 'household, care, plan'],
    ['units that are none', ['new', 'x.yaml', '--units', 'cubits'], 'metric or us'],
  ])('%s', (_, args, word) => {
    const { exit, out, said } = run(args);
    expect({ exit, out }).toEqual({ exit: 2, out: '' });
    expect(said).toContain(word);
    expect(said).toMatch(/^dewdial: /);
    expect(said).not.toContain('    at ');
  });
});

describe('a file that cannot be used ends with 1, and nothing is written', () => {
  it.each([
    ['is not there', 'nowhere.yaml', 'there is no such file'],
    ['is no text', 'noise.yaml', 'it is not UTF-8 text'],
    ['is empty', 'empty.yaml', 'empty.yaml'],
    ['is no household', 'list.yaml', 'list.yaml:1'],
  ])('that %s', (_, file, word) => {
    writeFileSync(join(folder, 'noise.yaml'), new Uint8Array([0xff, 0xfe, 0, 1, 2, 0xc3]));
    writeFileSync(join(folder, 'empty.yaml'), '');
    writeFileSync(join(folder, 'list.yaml'), '- 1\n- 2\n');
    for (const command of ['check', 'compile', 'today']) {
      const { exit, out, said } = run([command, file, '--out', 'none', ...TODAY]);
      expect({ command, exit, out: command === 'check' ? '' : out }).toEqual({ command, exit: 1, out: '' });
      expect(said).toContain(word);
    }
    expect(files('none')).toEqual([]);
  });

  it('that is a folder', () => {
    for (const command of ['check', 'today']) {
      const { exit, said } = run([command, '.', ...TODAY]);
      expect({ command, exit }).toEqual({ command, exit: 1 });
      expect(said).toContain('it is a folder');
    }
  });

  it('that has faults, all of them told at once', () => {
    const file = household('faults.yaml', (text) => text.replace('15 min', '15').replace('open: 45 %', 'opne: 45 %'));
    const { exit, said } = run(['compile', file, '--out', 'none', ...TODAY]);
    expect(exit).toBe(1);
    expect(said).toMatch(/faults\.yaml:\d+:\d+ {2}cannot be read/);
    expect(said.match(/^faults\.yaml:\d+:\d+/gm)?.length).toBeGreaterThanOrEqual(2);
    expect(files('none')).toEqual([]);
  });
});

describe('a part that is refused for safety', () => {
  const file = household('overload.yaml', (text) => text.replace('power: 10 W', 'power: 2500 W'));

  it('is named, the rest is written, and the run ends with 1', () => {
    const { exit, out, said } = run(['compile', file, ...TODAY]);
    expect(exit).toBe(1);
    expect(said).toContain('timer-overloaded');
    expect(out).toContain('ochre/day');
    const plan = JSON.parse(readFileSync(join(folder, 'out/overload/plan.json'), 'utf8'));
    expect(plan.lighting[0].settings).toEqual([]);
    expect(plan.notPlanned[0].lamp).toBe('ochre/day');
  });
});

describe('warnings', () => {
  const file = household('warned.yaml', (text) => `${text}people: [{ id: keeper, feeds_at: "03:00" }]\n`);

  it('end with 0, and with 3 under --strict', () => {
    expect(run(['check', file, ...TODAY]).exit).toBe(0);
    expect(run(['check', file, '--strict', ...TODAY]).exit).toBe(3);
    expect(run(['compile', file, '--strict', ...TODAY]).exit).toBe(3);
    expect(files('out/warned')).toContain('plan.json');
  });
});

describe('a place that cannot be written to ends with 73', () => {
  it('where a file stands instead of the folder', () => {
    writeFileSync(join(folder, 'taken'), 'mine');
    const { exit, said } = run(['compile', 'one-gecko.yaml', '--out', 'taken', ...TODAY]);
    expect(exit).toBe(73);
    expect(said).toContain('cannot write');
    expect(readFileSync(join(folder, 'taken'), 'utf8')).toBe('mine');
  });

  it('where a plan stands that is damaged, which is left alone', () => {
    mkdirSync(join(folder, 'hurt/one-gecko'), { recursive: true });
    writeFileSync(join(folder, 'hurt/one-gecko/plan.json'), '{ "format": 1');
    const { exit, said } = run(['compile', 'one-gecko.yaml', '--out', 'hurt', ...TODAY]);
    expect(exit).toBe(73);
    expect(said).toContain('plan.json');
    expect(readFileSync(join(folder, 'hurt/one-gecko/plan.json'), 'utf8')).toBe('{ "format": 1');
  });
});

describe('a pipe that is closed early', () => {
  it('ends quietly', () => {
    const { said, out } = shell('set -o pipefail; dewdial schema household | head -1; echo $?');
    expect(said).toBe('');
    expect(out).toBe('{\n0\n');
  });
});

describe('a fault of ours', () => {
  it('ends with 70, with a stack only under --debug', () => {
    const hidden = join(folder, 'broken.mjs');
    writeFileSync(hidden, 'process.stdout.write = () => { throw new TypeError("planted"); };\n');
    const plain = run(['species'], { NODE_OPTIONS: `--import file://${hidden}` });
    const debug = run(['species', '--debug'], { NODE_OPTIONS: `--import file://${hidden}` });
    expect([plain.exit, debug.exit]).toEqual([70, 70]);
    expect(plain.said).toContain('planted');
    expect(plain.said).not.toMatch(/^ +at /m);
    expect(debug.said).toMatch(/^ +at /m);
  });
});
