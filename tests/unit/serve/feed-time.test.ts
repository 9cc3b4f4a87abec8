import { describe, expect, it } from 'vitest';
import { feedModifiedSecond } from '../../../src/serve/feed-time.ts';

const at = (text: string): number => Date.parse(text) / 1000;
const events = [
  { stamp: '2027-01-05T00:00:00Z' },
  { stamp: '2027-02-01T00:00:00Z' },
  { stamp: '2027-01-01T00:00:00Z' },
];
const now = at('2027-03-01T12:00:00Z');

describe('when a feed last changed', () => {
  it('is its newest stamp', () => {
    expect(feedModifiedSecond('"a"', events, now, undefined)).toBe(at('2027-02-01T00:00:00Z'));
  });

  it('is what was said before where nothing changed', () => {
    expect(feedModifiedSecond('"a"', events, now, { etag: '"a"', modifiedSecond: 7 })).toBe(7);
  });

  it('is later than before where it changed again on one day', () => {
    const before = { etag: '"a"', modifiedSecond: at('2027-02-01T00:00:00Z') };
    expect(feedModifiedSecond('"b"', events, now, before)).toBe(before.modifiedSecond + 1);
  });

  it('is never in the future: a plan may begin later than today', () => {
    const early = at('2026-12-01T00:00:00Z');
    expect(feedModifiedSecond('"a"', events, early, undefined)).toBe(early);
    expect(feedModifiedSecond('"a"', events, early, { etag: '"a"', modifiedSecond: now })).toBe(early);
  });

  it('is long ago where there is no event', () => {
    expect(feedModifiedSecond('"a"', [], now, undefined)).toBe(0);
  });
});
