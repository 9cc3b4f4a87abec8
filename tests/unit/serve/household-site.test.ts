import { describe, expect, it } from 'vitest';
import { type Feeds, HouseholdSite } from '../../../src/serve/household-site.ts';
import type { Results } from '../../../src/serve/published-results.ts';
import { pagePlan } from '../../generated/page-plan.ts';

const NOON = Date.parse('2027-01-06T11:00:00Z');

function results(feed = 'BEGIN:VCALENDAR\r\n', plan = pagePlan()): Results {
  const files = new Map([
    ['calendar/keeper.ics', Buffer.from(feed)],
    ['calendar/keeper-import.ics', Buffer.from(feed)],
    ['settings.txt', Buffer.from('set')],
    ['dials/wall-dial.svg', Buffer.from('<svg/>')],
  ]);
  return { plan, files };
}

function siteAt(clock: { nowMs: number }, shown = results(), feeds: Feeds = {}, isReachable = true): HouseholdSite {
  const options = { authority: '192.0.2.5:8710', isReachable, token: 'TOKEN', nowMs: () => clock.nowMs, today: null };
  return new HouseholdSite(options, shown, feeds);
}

const page = (site: HouseholdSite): string => site.file('')?.body.toString() ?? '';
const modified = (site: HouseholdSite): string =>
  new Date((site.file('keeper.ics')?.modifiedSecond ?? 0) * 1000).toISOString();

describe('what stands below the token', () => {
  it('is each feed by its name, the page, and what it points to', () => {
    const site = siteAt({ nowMs: NOON });
    for (const name of ['', 'keeper.ics', 'keeper-import.ics', 'settings.txt', 'dials/wall-dial.svg'])
      expect(site.file(name)).not.toBeNull();
    for (const name of ['index.html', 'calendar/keeper.ics', 'plan.json', '..']) expect(site.file(name)).toBeNull();
    for (const [, link = ''] of page(site).matchAll(/<a href="([^"#:]+)"/g))
      expect(site.file(link), link).not.toBeNull();
  });

  it('moves on to the next day at midnight of the place, not of the machine', () => {
    const clock = { nowMs: Date.parse('2027-01-05T22:59:59Z') };
    const site = siteAt(clock);
    expect(page(site)).toContain('Today: Tuesday 5 January 2027');
    const before = site.file('')?.etag;
    expect(site.file('')?.etag).toBe(before);
    clock.nowMs += 1000;
    expect(page(site)).toContain('Today: Wednesday 6 January 2027');
    expect(site.file('')?.etag).not.toBe(before);
  });

  it('is rendered once a day', () => {
    const site = siteAt({ nowMs: NOON });
    expect(site.file('')).toBe(site.file(''));
  });

  it('tells on the page what is wrong, and no longer once it is right', () => {
    const site = siteAt({ nowMs: NOON });
    site.tell('home.yaml:3:1  cannot be read');
    expect(page(site)).toContain('home.yaml:3:1  cannot be read');
    expect(site.file('keeper.ics')).not.toBeNull();
    site.tell(null);
    expect(page(site)).not.toContain('cannot be read');
  });

  it('has changed when its newest stamp says so, and later with each further change', () => {
    const site = siteAt({ nowMs: NOON });
    expect(modified(site)).toBe('2027-01-05T00:00:00.000Z');
    site.show(results());
    expect(modified(site)).toBe('2027-01-05T00:00:00.000Z');
    const feeds = site.show(results('BEGIN:VCALENDAR\r\nX\r\n'));
    expect(modified(site)).toBe('2027-01-05T00:00:01.000Z');
    expect(modified(siteAt({ nowMs: NOON }, results('BEGIN:VCALENDAR\r\nX\r\n'), feeds))).toBe(
      '2027-01-05T00:00:01.000Z',
    );
  });

  it('goes with a person who is no longer in the plan', () => {
    const site = siteAt({ nowMs: NOON });
    site.show({ plan: { ...pagePlan(), people: [] }, files: new Map() });
    expect(site.file('keeper.ics')).toBeNull();
    expect(site.links()).toEqual([]);
  });

  it('has codes only where a phone reaches it', () => {
    expect(page(siteAt({ nowMs: NOON }))).toContain('webcal://192.0.2.5:8710/c/TOKEN/keeper.ics');
    expect(page(siteAt({ nowMs: NOON })).match(/class="qr"/g)).toHaveLength(2);
    expect(page(siteAt({ nowMs: NOON }, results(), {}, false))).not.toContain('class="qr"');
  });
});
