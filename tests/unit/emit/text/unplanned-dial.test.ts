/** A dial of which nothing is planned has no watts that last on the sheet: hours that are not planned are no hours. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { settingsText } from '../../../../src/emit/text/settings.ts';
import { compiledHousehold, planIn } from '../../../compiled-household.ts';

const CASE = readFileSync(new URL('../../../errors/cases/outlets-too-few.yaml', import.meta.url), 'utf8');

it('says what a dial carries for hours where its light is planned, and not where it is refused', () => {
  const sheet = (rating: string) =>
    settingsText(
      planIn(compiledHousehold(CASE.replace('outlets: 1, rating: 1800 W', `outlets: 2, rating: ${rating}`))),
    );
  expect(sheet('1800 W')).toContain('Together 40 W, of which 40 W run for 3 h or more; it may switch 1800 W.');
  const refused = sheet('30 W');
  expect(refused).toContain('No setting is written for it: ');
  expect(refused).toContain('Together 40 W; it may switch 30 W.');
  expect(refused).not.toContain('run for 3 h');
});
