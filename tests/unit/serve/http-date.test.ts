import { describe, expect, it } from 'vitest';
import { httpDate, parseHttpDate } from '../../../src/serve/http-date.ts';

/** Source: RFC 9110, section 5.6.7: one instant in the three forms. */
const ONE_INSTANT = ['Sun, 06 Nov 1994 08:49:37 GMT', 'Sunday, 06-Nov-94 08:49:37 GMT', 'Sun Nov  6 08:49:37 1994'];
const SECOND = Date.UTC(1994, 10, 6, 8, 49, 37) / 1000;

describe('a date in a header', () => {
  it.each(ONE_INSTANT)('is read in every form of the standard: %s', (text) => {
    expect(parseHttpDate(text)).toBe(SECOND);
  });

  it('is written in the preferred form, in whole seconds', () => {
    expect(httpDate(SECOND * 1000 + 999)).toBe(ONE_INSTANT[0]);
  });

  it.each([
    '',
    'yesterday',
    '1994-11-06T08:49:37Z',
    'Sun, 06 Nov 1994 08:49:37',
    'Sun, 06 Nov 1994 08:49:37 CET',
    'Sun, 31 Nov 1994 08:49:37 GMT',
    'Sun, 06 Noo 1994 08:49:37 GMT',
    'Sun, 06 Nov 1994 24:49:37 GMT',
    'Sun, 06 Nov 1994 08:60:37 GMT',
    'Sun, 06 Nov 1994 08:49:37 GMT, Sun, 06 Nov 1994 08:49:37 GMT',
  ])('is none where the text is another: %s', (text) => {
    expect(parseHttpDate(text)).toBeNull();
  });

  it('comes back from what was written, on every day of a leap year', () => {
    for (let day = 0; day < 366; day++) {
      const second = Date.UTC(2028, 0, 1 + day, 23, 59, 59) / 1000;
      expect(parseHttpDate(httpDate(second * 1000))).toBe(second);
    }
  });
});
