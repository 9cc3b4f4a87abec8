/** The built program in a keeper's hands: results on standard output, messages on standard error, JSON wherever it is asked for. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bench } from './built.ts';

const { folder, run, files } = bench(56);
const TODAY = ['--today', '2027-01-01'];

describe('new, compile and again', () => {
  const file = 'fresh.yaml';

  it('writes a starter file that compiles without a message but notes', () => {
    const place = ['--timezone', 'America/Chicago', '--latitude', '41.9', '--longitude', '-87.6', '--units', 'us'];
    const made = run(['new', file, '--species', 'crested-gecko', ...place, '--step', '30 min', ...TODAY]);
    expect(made.exit).toBe(0);
    expect(made.out).toContain(`dewdial compile ${file}`);
    expect(run(['new', file, '--species', 'crested-gecko', ...place]).exit).toBe(73);
    const compiled = run(['compile', file, ...TODAY]);
    expect(compiled.exit).toBe(0);
    expect(compiled.said).not.toMatch(/cannot be|not safe/);
    expect(compiled.out).toContain('Set on 2027-01-01');
    expect(files('out/fresh')).toEqual(expect.arrayContaining(['plan.json', 'settings.txt', 'dials/dial.svg']));
  });

  it('writes the same bytes again, whatever the day', () => {
    const before = files('out/fresh').map((name) => readFileSync(join(folder, 'out/fresh', name), 'utf8'));
    expect(run(['compile', file, '--today', '2027-03-01']).exit).toBe(0);
    expect(files('out/fresh').map((name) => readFileSync(join(folder, 'out/fresh', name), 'utf8'))).toEqual(before);
  });

  it('answers new in JSON too', () => {
    const where = ['--timezone', 'UTC', '--latitude', '0', '--longitude', '0'];
    const { out } = run(['new', 'second.yaml', '--species', 'ball-python', ...where, '--json', ...TODAY]);
    expect(JSON.parse(out)).toEqual({ file: 'second.yaml', species: 'ball-python' });
    expect(existsSync(join(folder, 'second.yaml'))).toBe(true);
    expect(run(['new', 'nowhere/third.yaml', '--species', 'ball-python', ...where]).exit).toBe(73);
  });
});

describe('--json', () => {
  it.each([
    ['check', ['check', 'one-gecko.yaml', ...TODAY]],
    ['compile', ['compile', 'one-gecko.yaml', ...TODAY]],
    ['today', ['today', 'one-gecko.yaml', ...TODAY]],
    ['changes', ['changes', 'one-gecko.yaml', ...TODAY]],
    ['why', ['why', 'one-gecko.yaml', 'dial', ...TODAY]],
    ['species', ['species']],
    ['one species', ['species', 'corn-snake']],
    ['schema', ['schema', 'household']],
  ])('of %s is JSON and nothing else on standard output', (_, args) => {
    const { exit, out } = run([...args, '--json']);
    expect(exit).toBe(0);
    expect(typeof JSON.parse(out)).toBe('object');
  });

  it('of check names each message with its place', () => {
    writeFileSync(join(folder, 'bad.yaml'), 'format: 1\nname: 3\n');
    const { exit, out } = run(['check', 'bad.yaml', '--json']);
    expect(exit).toBe(1);
    const messages: readonly { code: string; weight: string; place: { line: number } | null }[] = JSON.parse(out);
    expect(messages.length).toBeGreaterThan(0);
    expect(messages.every(({ code, weight }) => code.length > 0 && weight.length > 0)).toBe(true);
  });
});

describe('reading commands', () => {
  it('check writes nothing', () => {
    const before = files();
    expect(run(['check', 'reading-room.yaml', '--out', 'elsewhere', ...TODAY]).exit).toBe(0);
    expect(files()).toEqual(before);
  });

  it('today says what the machines and people do', () => {
    const { exit, out } = run(['today', 'one-gecko.yaml', '--days', '2', ...TODAY]);
    expect(exit).toBe(0);
    expect(out).toContain('dial');
    expect(out).toMatch(/\d{2}:\d{2}/);
  });

  it('today says nothing of a day behind the end of the plan', () => {
    const { exit, out, said } = run(['today', 'one-gecko.yaml', '--on', '2029-01-01', ...TODAY]);
    expect({ exit, out }).toEqual({ exit: 1, out: '' });
    expect(said).toContain(
      '2029-01-01 lies outside the plan (2027-01-01 to 2027-02-25); the timers go on as they stand',
    );
  });

  it('why lists what may be asked, each once, and answers for a heater that no timer switches', () => {
    const { out } = run(['why', 'reading-room.yaml', ...TODAY]);
    const names = [...out.matchAll(/^ {2}(\S+)/gm)].map(([, name]) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(out).toMatch(/^ {2}wall-dial +its settings, and what others would buy$/m);
    expect(out).toMatch(/^ {2}fern\/sun +this lamp$/m);
    expect(run(['why', 'reading-room.yaml', 'ochre/mat', ...TODAY])).toMatchObject({
      exit: 0,
      out: 'ochre/mat hangs on a live socket behind its thermostat: no timer switches it, and there is no setting to explain\n',
    });
    expect(run(['why', 'one-gecko.yaml', 'ochre/day', ...TODAY]).out).toMatch(/hangs on dial[\s\S]*\n {2}day\./);
  });

  it('species lists all profiles, and one with its sources', () => {
    expect(
      run(['species'])
        .out.split('\n')
        .filter((line) => /[a-z]-[a-z]/.test(line)).length,
    ).toBeGreaterThanOrEqual(13);
    expect(run(['species', 'leopard-gecko']).out).toMatch(/common practice|published/);
  });

  it('each stage can be printed', () => {
    for (const stage of ['household', 'care', 'plan'])
      expect(typeof JSON.parse(run(['compile', 'one-gecko.yaml', '--show', stage, ...TODAY]).out)).toBe('object');
  });

  it('help goes to standard output', () => {
    const { exit, out, said } = run(['--help']);
    expect([exit, said]).toEqual([0, '']);
    expect(out).toContain('compile');
    expect(run(['--version']).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});

describe('colour', () => {
  it('is never used where there is no terminal', () => {
    writeFileSync(join(folder, 'odd.yaml'), 'format: 1\nnmae: x\n');
    expect(run(['check', 'odd.yaml']).said).not.toContain('\u001b[');
    expect(run(['check', 'odd.yaml'], { NO_COLOR: '1' }).said).not.toContain('\u001b[');
  });
});

describe('the same file in four process zones', () => {
  it('gives the same bytes', () => {
    const written = ['UTC', 'Pacific/Kiritimati', 'America/St_Johns', 'Australia/Lord_Howe'].map((zone, i) => {
      expect(
        run(['compile', 'porch-tortoise.yaml', '--out', `zone-${i}`, ...TODAY], { TZ: zone, LANG: 'de_DE.UTF-8' }).exit,
      ).toBe(0);
      return files(`zone-${i}`).map((name) => [name, readFileSync(join(folder, `zone-${i}`, name), 'latin1')]);
    });
    expect(written[0]?.length).toBeGreaterThan(4);
    for (const each of written) expect(each).toEqual(written[0]);
  });
});
