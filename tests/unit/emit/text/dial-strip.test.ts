import { expect, test } from 'vitest';
import { changeStrip } from '../../../../src/emit/text/dial-strip.ts';
import type { DialPlan } from '../../../../src/plan/plan.ts';
import { words } from '../../../../src/plan/words/words.ts';

type PinnedDial = Pick<DialPlan, 'stepMinutes' | 'turnsInDays' | 'pins'>;
const ascii = { unicode: false, words: words('en').shelf };
const drawn = { unicode: true, words: words('en').shelf };

const quarter: PinnedDial = { stepMinutes: 15, turnsInDays: 1, pins: 'down-is-on' };
/** A change that moves nothing. */
const stripOf = (dial: PinnedDial, slots: readonly number[], look: typeof ascii) =>
  changeStrip(dial, slots, slots, look);
const range = (from: number, to: number) => Array.from({ length: to - from }, (_, at) => from + at);

test('a day is four lines of six hours, a mark a pin', () => {
  expect(stripOf(quarter, range(30, 74), ascii)).toEqual([
    '00:00 .... .... .... .... .... ....',
    '06:00 .... ..## #### #### #### ####',
    '12:00 #### #### #### #### #### ####',
    '18:00 ##.. .... .... .... .... ....',
    'v push down  ^ lift  # stays on  . stays off',
  ]);
});

test('without ASCII the marks are solid and a dot', () => {
  expect(stripOf({ ...quarter, stepMinutes: 30 }, [0, 47], drawn)).toEqual([
    '00:00 █· ·· ·· ·· ·· ··',
    '06:00 ·· ·· ·· ·· ·· ··',
    '12:00 ·· ·· ·· ·· ·· ··',
    '18:00 ·· ·· ·· ·· ·· ·█',
    '▼ push down  △ lift  █ stays on  · stays off',
  ]);
});

test('a change marks what to push and what to lift apart from what stays', () => {
  const lines = changeStrip(quarter, range(29, 74), range(30, 75), ascii);
  expect(lines.slice(1)).toEqual([
    '06:00 .... .^## #### #### #### ####',
    '12:00 #### #### #### #### #### ####',
    '18:00 ##v. .... .... .... .... ....',
    'v push down  ^ lift  # stays on  . stays off',
  ]);
  expect(changeStrip({ ...quarter, pins: 'up-is-on' }, range(29, 74), range(30, 75), ascii)[1]).toBe(
    '06:00 .... .v## #### #### #### ####',
  );
});

test('the key speaks the language of the household', () => {
  expect(stripOf(quarter, [1], { unicode: false, words: words('es').shelf }).at(-1)).toBe(
    'v bajar  ^ subir  # sigue encendido  . sigue apagado',
  );
});

test('a week of like days is drawn once, of unlike days a day at a time', () => {
  const week: PinnedDial = { stepMinutes: 120, turnsInDays: 7, pins: 'down-is-on' };
  const alike = range(0, 7).flatMap((day) => [day * 12 + 4, day * 12 + 5]);
  expect(stripOf(week, alike, ascii)).toEqual([
    'every day',
    '00:00 . . .',
    '06:00 . # #',
    '12:00 . . .',
    '18:00 . . .',
    'v push down  ^ lift  # stays on  . stays off',
  ]);
  expect(stripOf(week, alike.slice(1), ascii)).toHaveLength(7 * 5 + 1);
});

test('every mark of every 96-pin strip stands for its pin', () => {
  for (let slot = 0; slot < 96; slot++) {
    const marks = stripOf(quarter, [slot], ascii)
      .slice(0, 4)
      .map((line) => line.slice(6).replaceAll(' ', ''))
      .join('');
    expect(marks).toHaveLength(96);
    expect(marks.indexOf('#')).toBe(slot);
  }
});

test('a timer without pins has no strip', () => {
  expect(stripOf({ stepMinutes: 1, turnsInDays: 1, pins: null }, range(450, 1000), ascii)).toEqual([]);
});
