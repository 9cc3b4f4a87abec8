import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../../../src/basics/calendar-day.ts';
import { offTheSitter } from '../../../../src/solve/feeding/sitter-dustings.ts';
import type { ServedFeed } from '../../../../src/solve/feeding/stand-ins.ts';
import { careOf, insects } from '../../../generated/solved-feeding.ts';

const AWAY = 'away: [{ from: 2027-02-10, to: 2027-02-12, sitter: sitter, visits: every 1 day }]';
const care = careOf({ enclosure: insects(), top: [AWAY] }, 90);
const enclosure = care.enclosures[0] ?? fail();
const rule = enclosure.targets.stages.adult?.feeds[0] ?? fail();

function feed(date: string, dusting: string | null): ServedFeed {
  const place = { day: epochDay(date), ordinal: 0, rule, food: 'insects', stage: 'adult', slot: 0 } as const;
  return { ...place, feeder: 'cricket', dusting, standIn: false, lostDusting: null, unserved: false };
}

function handed(...feeds: readonly ServedFeed[]): readonly string[] {
  return offTheSitter(care, enclosure, feeds, []).map(
    ({ day, dusting, preDosed }) => `${isoDateOf(day).slice(5)} ${dusting}${preDosed ? ', put up' : ''}`,
  );
}

function fail(): never {
  throw new Error('nothing is fed');
}

describe('a vitamin powder that falls to a sitter', () => {
  it('trades places with the nearest feed of the household', () => {
    expect(
      handed(
        feed('2027-02-01', 'calcium'),
        feed('2027-02-08', 'calcium'),
        feed('2027-02-11', 'multivitamin'),
        feed('2027-02-16', null),
      ),
    ).toEqual(['02-01 calcium', '02-08 multivitamin', '02-11 calcium', '02-16 null']);
  });

  it('takes the earlier of two that are as near, and a plain feed too', () => {
    expect(handed(feed('2027-02-09', null), feed('2027-02-11', 'multivitamin'), feed('2027-02-13', 'calcium'))).toEqual(
      ['02-09 multivitamin', '02-11 null', '02-13 calcium'],
    );
  });

  it('passes over feeds that lie too near another vitamin', () => {
    const feeds = [
      feed('2027-02-05', 'calcium-d3'),
      feed('2027-02-08', 'calcium'),
      feed('2027-02-10', 'multivitamin'),
      feed('2027-02-19', 'calcium'),
    ];
    const apart = enclosure.targets.stages.adult?.apart ?? [];
    expect(apart.map(({ days }) => days)).toContain(3);
    expect(handed(...feeds)[1]).toBe('02-08 multivitamin');
    expect(handed(feed('2027-02-06', 'calcium-d3'), ...feeds.slice(1))).toEqual([
      '02-06 calcium-d3',
      '02-08 calcium',
      '02-10 calcium',
      '02-19 multivitamin',
    ]);
  });

  it('is put up beforehand where nothing within a fortnight may take it, and calcium stays with the sitter', () => {
    expect(
      handed(feed('2027-01-25', 'calcium'), feed('2027-02-11', 'multivitamin'), feed('2027-02-12', 'calcium')),
    ).toEqual(['01-25 calcium', '02-11 multivitamin, put up', '02-12 calcium']);
  });
});
