/** Many households in one run of the built program. */
import { mkdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bench } from './built.ts';

const { folder, run, files } = bench(28);
const TODAY = ['--today', '2027-01-01', '--no-pdf'];
const GECKO = readFileSync(join(folder, 'one-gecko.yaml'), 'utf8');

/** Writes a household into a folder of its own. */
function put(path: string, change: (text: string) => string = (text) => text): string {
  mkdirSync(join(folder, path, '..'), { recursive: true });
  writeFileSync(join(folder, path), change(GECKO));
  return path;
}

interface Line {
  readonly file?: string;
  readonly end?: string;
  readonly exit?: number;
  readonly folder?: string | null;
  readonly messages?: readonly { readonly code: string; readonly line: number | null }[];
  readonly summary?: Readonly<Record<string, number>>;
}

function lines(args: readonly string[]): {
  readonly exit: number | null;
  readonly told: readonly Line[];
  readonly said: string;
} {
  const { exit, out, said } = run(['compile', ...args, '--json', ...TODAY]);
  const told = out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Line);
  return { exit, told, said };
}

/** How each file of a run ended. */
function ends(args: readonly string[]): Readonly<Record<string, string>> {
  return Object.fromEntries(lines(args).told.flatMap(({ file, end }) => (file && end ? [[file, end]] : [])));
}

describe('a folder of households', () => {
  for (const name of ['a', 'b', 'c'])
    put(`room/${name}.yaml`, (text) => text.replace(/^name: .*$/m, `name: Gecko ${name}`));
  put('room/broken.yaml', (text) => text.replace('15 min', '15'));
  put('room/a.fit.yaml', () => 'format: 1\n');
  put('room/own-species.yaml', () => 'format: 1\nspecies: own\nname: Own\n');
  put('room/notes.yaml', () => '- enclosures and format\n');
  rmSync(join(folder, 'room/a.fit.yaml'));

  it('is compiled whole; what one file lacks stops no other, and the worst end is the end', () => {
    const { exit, out, said } = run(['compile', 'room', ...TODAY]);
    expect(exit).toBe(1);
    expect(out).toMatch(/^4 households, 3 enclosures\n {2}3 written\n {2}1 cannot be used:\n {4}room\/broken\.yaml\n/);
    expect(said).toContain('room/broken.yaml:');
    expect(said).not.toContain('\r');
    expect(files('out').filter((file) => file.endsWith('plan.json'))).toEqual(
      ['a', 'b', 'c'].map((name) => `${name}/plan.json`),
    );
  });

  it('comes out as each file alone, to the byte', () => {
    for (const name of ['a', 'b']) run(['compile', `room/${name}.yaml`, '--out', 'alone', ...TODAY]);
    const paths = files('out/a');
    expect(paths.length).toBeGreaterThan(4);
    for (const name of ['a', 'b'])
      for (const path of paths) {
        const [many, alone] = ['out', 'alone'].map((out) => readFileSync(join(folder, out, name, path)));
        expect(many?.equals(alone ?? Buffer.alloc(0)), `${name}/${path}`).toBe(true);
      }
  });

  it('is not compiled again where nothing changed, and says the same', () => {
    const { told } = lines(['room']);
    expect(told.map(({ end }) => end)).toEqual(['kept', 'kept', 'not usable', 'kept', undefined]);
    const again = run(['compile', 'room', ...TODAY]);
    const before = run(['compile', 'room', '--out', 'afresh', ...TODAY]);
    expect(again.said).toBe(before.said);
    expect(again.out).toBe(before.out.replace('written', 'unchanged'));
  });

  it('compiles again what changed, and that alone', () => {
    put('room/b.yaml', (text) => text.replace(/^name: .*$/m, 'name: Gecko of another name'));
    expect(ends(['room'])).toMatchObject({ 'room/a.yaml': 'kept', 'room/b.yaml': 'written', 'room/c.yaml': 'kept' });
  });

  it('is told in JSON lines, a line a household in the order of the files, the sum at the end', () => {
    const { exit, told, said } = lines(['room']);
    expect(said).toBe('');
    const names = ['a', 'b', 'broken', 'c'].map((name) => `room/${name}.yaml`);
    expect(told.map(({ file }) => file)).toEqual([...names, undefined]);
    expect(told[2]?.messages?.[0]?.line).toBeGreaterThan(0);
    expect(told.at(-1)?.summary).toMatchObject({ households: 4, enclosures: 3, unchanged: 3, notUsable: 1, exit });
  });
});

describe('what is kept from the last run', () => {
  const entry = () => join(folder, 'out/.versions/.kept/x.json');
  const result = (path: string) => join(folder, 'out/x', path);
  const settings = () =>
    readFileSync(result('settings.txt'), 'utf8')
      .replace(/Own gecko/g, 'Leopard gecko')
      .replace(/Revision \d/, 'Revision');
  const profile = join(folder, 'kept/own.yaml');
  const shipped = readFileSync(join(import.meta.dirname, '../../profiles/leopard-gecko.yaml'), 'utf8');
  put('kept/x.yaml', (text) => text.replace('species: leopard-gecko', 'species: ./own.yaml'));
  writeFileSync(profile, shipped);

  it('is used where nothing changed', () => {
    expect(ends(['kept'])).toEqual({ 'kept/x.yaml': 'written' });
    expect(ends(['kept'])).toEqual({ 'kept/x.yaml': 'kept' });
  });

  it.each<[string, () => void, string]>([
    [
      'a damaged entry',
      () => writeFileSync(entry(), readFileSync(entry(), 'utf8').replace('"enclosures":1', '"enclosures":2')),
      'unchanged',
    ],
    ['half an entry', () => writeFileSync(entry(), readFileSync(entry(), 'utf8').slice(0, 300)), 'unchanged'],
    ['no entry', () => rmSync(entry()), 'unchanged'],
    ['a result that was written over', () => writeFileSync(result('settings.txt'), 'mine'), 'written'],
    ['a result that is gone', () => rmSync(result('settings.txt')), 'written'],
    ['a result of another time', () => utimesSync(result('plan.json'), 1, 1), 'unchanged'],
    [
      'a profile that reads otherwise',
      () => writeFileSync(profile, shipped.replace(/^name: .*$/m, 'name: Own gecko')),
      'written',
    ],
    ['fitted values that are new', () => writeFileSync(join(folder, 'kept/x.fit.yaml'), '- 1\n'), 'not usable'],
    ['those gone again', () => rmSync(join(folder, 'kept/x.fit.yaml')), 'kept'],
    ['a profile that is gone', () => rmSync(profile), 'not usable'],
    ['the profile of before', () => writeFileSync(profile, shipped), 'written'],
    ['results that are gone', () => rmSync(join(folder, 'out/x')), 'written'],
  ])('is trusted only where it is whole: %s', (_what, harm, end) => {
    const wanted = settings();
    harm();
    expect(ends(['kept'])).toEqual({ 'kept/x.yaml': end });
    expect(settings()).toBe(wanted);
  });

  it('is not used for other wishes', () => {
    expect(ends(['kept', '--language', 'es'])).toEqual({ 'kept/x.yaml': 'written' });
  });
});

describe('parts and names', () => {
  for (const name of ['p1', 'p2', 'p3', 'p4', 'p5']) put(`parts/${name}.yaml`);
  put('other/p1.yaml');

  it('parts share out every file once', () => {
    const parts = [1, 2, 3].map((part) => Object.keys(ends(['parts', '--part', `${part}/3`, '--out', 'shared'])));
    expect(parts).toEqual([['parts/p1.yaml', 'parts/p4.yaml'], ['parts/p2.yaml', 'parts/p5.yaml'], ['parts/p3.yaml']]);
    expect(files('shared').filter((file) => file.endsWith('plan.json'))).toHaveLength(5);
  });

  it('two files of one name are both refused, the others are compiled', () => {
    const { exit, told } = lines(['parts', 'other/p1.yaml']);
    expect(exit).toBe(2);
    expect(Object.fromEntries(told.map(({ file = '', end = '' }) => [file, end]))).toMatchObject({
      'other/p1.yaml': 'refused',
      'parts/p1.yaml': 'refused',
      'parts/p2.yaml': 'written',
    });
    const { said } = run(['compile', 'parts/p1.yaml', 'other/p1.yaml', ...TODAY]);
    expect(said).toContain('rename one, or compile them with an --out of their own');
  });

  it('one file named twice is one', () => {
    expect(Object.keys(ends(['parts/p2.yaml', './parts/p2.yaml', 'parts/p3.yaml', '--part', '1/1']))).toHaveLength(2);
  });

  it.each([
    [['parts', '--part', '0/3'], 2, 'for instance 2/8'],
    [['parts', '--part', '4/3'], 2, 'for instance 2/8'],
    [['parts', '--jobs', '0'], 2, '1 to 999'],
    [['parts', '--today', 'soon'], 2, 'YYYY-MM-DD'],
    [['parts', '--show', 'plan'], 2, 'one file'],
    [['parts/p2.yaml', 'nowhere.yaml'], 1, 'nowhere.yaml: there is no such file'],
    [['empty-folder'], 2, 'no household file'],
  ])('%j ends with %i', (args, exit, word) => {
    mkdirSync(join(folder, 'empty-folder'), { recursive: true });
    const ended = run(['compile', ...TODAY, ...args]);
    expect(ended.said).toContain(word);
    expect(ended.exit).toBe(exit);
  });
});

describe('a clock that was set back', () => {
  it('is told by the run that met it, and by none after', () => {
    put('clock/a.yaml');
    const compile = (today: string) =>
      run(['compile', 'clock', '--out', 'clocked', '--json', '--no-pdf', '--today', today]);
    const isTold = (today: string): boolean => compile(today).out.includes('clock-set-back');
    expect(isTold('2027-01-01')).toBe(false);
    put('clock/a.yaml', (text) => text.replace(/^name: .*$/m, 'name: Another'));
    expect(isTold('2027-02-01')).toBe(false);
    rmSync(join(folder, 'clocked/.versions/.kept/a.json'));
    expect([isTold('2027-01-15'), isTold('2027-03-01')]).toEqual([true, false]);
  });
});
