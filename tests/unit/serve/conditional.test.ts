import { describe, expect, it } from 'vitest';
import { isUnchanged } from '../../../src/serve/conditional.ts';
import { httpDate } from '../../../src/serve/http-date.ts';

const SECOND = Date.UTC(2027, 0, 1) / 1000;
const FILE = { etag: '"abc"', modifiedSecond: SECOND };
const date = (offset: number): string => httpDate((SECOND + offset) * 1000);

/** Source: RFC 9110, sections 8.8.3.2 (weak comparison), 13.1.2, 13.1.3 and 13.2.2 (tags before dates). */
const CASES: readonly (readonly [
  what: string,
  tags: string | undefined,
  since: string | undefined,
  unchanged: boolean,
])[] = [
  ['no condition', undefined, undefined, false],
  ['the tag', '"abc"', undefined, true],
  ['the tag as a weak one', 'W/"abc"', undefined, true],
  ['another tag', '"abd"', undefined, false],
  ['a part of the tag', '"ab"', undefined, false],
  ['a list that holds it', '"x", W/"abc" ,"y"', undefined, true],
  ['a list without spaces', '"x","abc"', undefined, true],
  ['a list with empty members', ', "x",, "abc"', undefined, true],
  ['a list that does not', '"x", "y"', undefined, false],
  ['a tag that holds commas and spaces of the wanted', '"x, W/\\"abc"', undefined, false],
  ['a tag whose text holds a comma', '"a,b"', undefined, false],
  ['anything at all', '*', undefined, true],
  ['a star within a list', '"x", *', undefined, false],
  ['a tag without quotes', 'abc', undefined, false],
  ['a small w', 'w/"abc"', undefined, false],
  ['nothing said', '', undefined, false],
  ['the same second', undefined, date(0), true],
  ['a later second', undefined, date(1), true],
  ['an earlier second', undefined, date(-1), false],
  ['the same second in the oldest form', undefined, 'Fri Jan  1 00:00:00 2027', true],
  ['a date that is none', undefined, 'tomorrow', false],
  ['another tag and a later second', '"abd"', date(1), false],
  ['the tag and an earlier second', '"abc"', date(-1), true],
];

describe('a client that holds a copy', () => {
  it.each(CASES)('with %s', (_what, ifNoneMatch, ifModifiedSince, unchanged) => {
    expect(isUnchanged({ ifNoneMatch, ifModifiedSince }, FILE)).toBe(unchanged);
  });

  it('is answered quickly whatever it sends', () => {
    const hostile = `${'W/"'.repeat(5000)}${',"x" '.repeat(5000)}`;
    expect(isUnchanged({ ifNoneMatch: hostile, ifModifiedSince: undefined }, FILE)).toBe(false);
  });
});
