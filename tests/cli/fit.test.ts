/** `dewdial fit` as it is run. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compiledFern, csvOf, fernHousehold, gaugeLog, WEEK } from '../generated/gauge-log.ts';
import { bench } from './built.ts';

const { folder, run, files } = bench();
const wish = { ...WEEK, factors: { airChangesPerHour: 0.6, baseEvaporationGPerHour: 1.2, transferMPerHour: 0.8 } };
const { lines } = gaugeLog(compiledFern(fernHousehold()), wish);
const at = (name: string) => join(folder, name);
const today = ['--today', '2027-01-20'];
const plan = () => JSON.parse(readFileSync(at('out/fern/plan.json'), 'utf8'));

writeFileSync(at('fern.yaml'), fernHousehold());
writeFileSync(at('gauge.csv'), csvOf(lines));
const spanish = `Fecha;Hora;HR (%);Temp. (°C)\r\n${lines
  .map(({ date, time, humidity, celsius }) => {
    const [year, month, day] = date.split('-');
    return `${day}/${month}/${year};${time};${String(humidity).replace('.', ',')};${String(celsius).replace('.', ',')}\r\n`;
  })
  .join('')}`;
writeFileSync(at('latin.csv'), Buffer.from(spanish, 'latin1'));
writeFileSync(at('utf16.csv'), Buffer.from(`\ufeff${spanish}`, 'utf16le'));
writeFileSync(at('short.csv'), csvOf(lines.slice(0, 20)));

describe('fit', () => {
  it('only reports under --dry, the same from every form of the log', () => {
    const before = files();
    const plain = run(['fit', 'fern.yaml', 'gauge.csv', '--dry', ...today]);
    expect(plain).toMatchObject({ exit: 0, said: '' });
    expect(plain.out).toContain('Fern: 1008 readings, 2027-01-05 00:00 to 2027-01-11 23:50');
    expect(plain.out).toContain('nothing written (--dry)');
    for (const log of ['latin.csv', 'utf16.csv'])
      expect(run(['fit', 'fern.yaml', log, '--dry', ...today]).out).toBe(plain.out);
    expect(files()).toEqual(before);
  });

  it('writes values and a picture, and the next compile uses them', () => {
    expect(run(['compile', 'fern.yaml', '--no-pdf', '--today', '2027-01-01']).exit).toBe(0);
    const before = plan();
    const fitted = run(['fit', 'fern.yaml', 'gauge.csv', ...today, '--json']);
    expect(fitted.exit).toBe(0);
    const told = JSON.parse(fitted.out);
    expect(told).toMatchObject({ enclosure: 'fern', fittedFile: 'fern.fit.yaml', picture: 'out/fern/fit/fern.svg' });
    expect(readFileSync(at('out/fern/fit/fern.svg'), 'utf8')).toMatch(/^<svg [\s\S]*<\/svg>\n$/u);
    expect(plan()).toEqual(before);
    expect(run(['compile', 'fern.yaml', '--no-pdf', ...today]).exit).toBe(0);
    expect(plan().revision).toBe(2);
    expect(plan().misting[0].model.airChangesPerHour).toBeCloseTo(told.values.airChangesPerHour.value, 2);
    expect(files('out/fern')).toContain('fit/fern.svg');
    expect(readFileSync(at('out/fern/changes.txt'), 'utf8')).toMatch(/mist/u);
    expect(run(['why', 'fern.yaml', 'fern/air', ...today]).out).toMatch(
      /air changes: 4\.\d+ an hour\n {6}fitted from gauge\.csv, 2027-01-05 to 2027-01-11; 95 % between/u,
    );
  });

  it('is taken back by --remove', () => {
    expect(run(['fit', 'fern.yaml', '--remove', 'moss', ...today])).toMatchObject({ exit: 2, out: '' });
    expect(run(['fit', 'fern.yaml', '--remove', 'fern', ...today]).exit).toBe(0);
    expect(files()).not.toContain('fern.fit.yaml');
    expect(run(['fit', 'fern.yaml', '--remove', 'fern', ...today]).exit).toBe(2);
    expect(run(['fit', 'fern.yaml', '--remove', 'all', ...today]).exit).toBe(0);
  });

  it('changes nothing where the log is of no use, and ends with 1', () => {
    const before = files();
    const short = run(['fit', 'fern.yaml', 'short.csv', ...today]);
    expect(short).toMatchObject({ exit: 1, out: '' });
    expect(short.said).toMatch(/^short\.csv:2:1 {2}falls short \(readings-too-few\)\n/u);
    const shifted = run(['fit', 'fern.yaml', 'gauge.csv', '--shift=-120', ...today]);
    expect(shifted.exit).toBe(1);
    expect(shifted.said).toContain('(gauge-clock-off)');
    expect(run(['fit', 'fern.yaml', 'missing.csv', ...today])).toMatchObject({
      exit: 1,
      said: 'dewdial: cannot read missing.csv: there is no such file\n',
    });
    expect(files()).toEqual(before);
  });

  it.each([
    [['fit', 'fern.yaml']],
    [['fit', 'fern.yaml', 'gauge.csv', '--enclosure', 'fren']],
    [['fit', 'reading-room.yaml', 'gauge.csv']],
    [['fit', 'fern.yaml', 'gauge.csv', '--salt', '75.3=72']],
    [['fit', 'fern.yaml', 'gauge.csv', '--salt', 'NaCl=72,MgCl2=35', '--salt-at', '60 °C']],
    [['fit', 'fern.yaml', 'gauge.csv', '--columns', 'humidity']],
    [['fit', 'fern.yaml', 'gauge.csv', '--shift', 'later']],
    [['fit', 'fern.yaml', 'gauge.csv', '--dates', 'xyz']],
  ])('%j is wrong usage', (args) => {
    const ended = run([...args, ...today]);
    expect(ended.exit).toBe(2);
    expect(ended.said).not.toContain('    at ');
  });
});
