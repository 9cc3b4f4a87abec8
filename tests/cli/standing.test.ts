/** A check, and the day, of a plan that stands: the same words whether it is taken as it stands or compiled anew. */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { bench } from './built.ts';

const { folder, run } = bench();

it.each(['one-gecko', 'porch-tortoise'])('%s says the same from what is kept as compiled anew', (name) => {
  const file = `${name}.yaml`;
  expect(run(['compile', file, '--no-pdf', '--today', '2027-01-01']).exit).toBe(0);
  const asked = [
    ['check', file, '--today', '2027-01-01'],
    ['check', file, '--today', '2027-05-20', '--json'],
    ['today', file, '--today', '2027-05-20', '--days', '3'],
    ['today', file, '--today', '2027-05-20', '--json'],
    ['check', file, '--today', 'never'],
  ];
  const fromKept = asked.map((args) => run(args));
  rmSync(join(folder, `out/.versions/.kept/${name}.standing`));
  expect(fromKept).toEqual(asked.map((args) => run(args)));
});

it('a changed file is read again', () => {
  const file = join(folder, 'one-gecko.yaml');
  expect(run(['compile', 'one-gecko.yaml', '--no-pdf', '--today', '2027-01-01']).exit).toBe(0);
  writeFileSync(file, readFileSync(file, 'utf8').replace('step: 15 min', 'step: 15'));
  const { exit, said } = run(['check', 'one-gecko.yaml', '--today', '2027-01-01']);
  expect(exit).toBe(1);
  expect(said).toMatch(/^one-gecko\.yaml:\d+:\d+ {2}cannot be read/m);
});
