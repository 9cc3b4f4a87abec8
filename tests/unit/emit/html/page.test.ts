import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { indexHtml } from '../../../../src/emit/html/index-html.ts';
import { html } from '../../../../src/emit/html/markup.ts';
import { pageHtml } from '../../../../src/emit/html/page.ts';
import type { PageLook } from '../../../../src/emit/html/page-look.ts';
import { STYLE_HASH } from '../../../../src/emit/html/style.ts';
import { HOSTILE, pagePlan } from '../../../generated/page-plan.ts';

const FILES = [
  'settings.txt',
  'care-calendar.pdf',
  'calendar/keeper.ics',
  'calendar/keeper-import.ics',
  'plan.json',
  'dials/wall-dial.svg',
];
const BESIDE = FILES.map((path) => ({ path }));
const SERVED: PageLook = {
  today: '2027-01-05',
  files: ['settings.txt', 'keeper.ics', 'keeper-import.ics'],
  served: {
    feeds: [
      {
        person: 'keeper',
        file: 'keeper.ics',
        plain: 'http://192.0.2.5:8710/c/T/keeper.ics',
        webcal: { address: 'webcal://192.0.2.5:8710/c/T/keeper.ics', svg: '<svg id="code"></svg>' },
      },
    ],
    page: { address: 'http://192.0.2.5:8710/c/T/', svg: '<svg></svg>' },
    problem: null,
  },
};

/** Every tag with its attributes. */
function tags(page: string): readonly string[] {
  return page.match(/<[a-z][^>]*>/g) ?? [];
}

/** What is read, without tags. */
function wordsOf(page: string): string {
  return page
    .replace(/<style>[\s\S]*?<\/style>/g, '')
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('\u00a0', ' ')
    .replace(/\s+/g, ' ');
}

describe('the page', () => {
  it('stands by itself: nothing is fetched, nothing runs', () => {
    const page = indexHtml(pagePlan(), BESIDE);
    expect(page).not.toMatch(/<script|javascript:|<iframe|<object|<embed|@import|url\(http|\son[a-z]+=|\sstyle=/i);
    const sources = [...page.matchAll(/\s(?:src|srcset|href|data|action)="([^"]*)"/g)].map(
      ([, address]) => address ?? '',
    );
    expect(sources.filter((address) => /^(https?:)?\/\//.test(address))).toEqual([]);
  });

  it('names its own style sheet in its policy', () => {
    const page = indexHtml(pagePlan(), BESIDE);
    const [, style = ''] = /<style>([\s\S]*?)<\/style>/.exec(page) ?? [];
    expect(`sha256-${createHash('sha256').update(style).digest('base64')}`).toBe(STYLE_HASH);
    expect(page).toContain(`style-src '${STYLE_HASH}'`);
  });

  it.each(['en', 'es'] as const)('lets no text break out, in %s', (language) => {
    const [plain, hostile] = [pagePlan(language), pagePlan(language, HOSTILE)];
    const look = { ...SERVED, served: SERVED.served && { ...SERVED.served, problem: `${HOSTILE}\n${HOSTILE}` } };
    const page = pageHtml(hostile, look);
    const harmless = pageHtml(plain, { ...look, served: look.served && { ...look.served, problem: 'Fern\nFern' } });
    const names = (text: string): readonly string[] => tags(text).map((tag) => tag.replace(/="[^"]*"/g, '=""'));
    expect(names(page)).toEqual(names(harmless));
    expect(page).not.toContain('\u0000');
    expect(page).not.toContain('\u202e');
    expect(page.split('&lt;script&gt;').length).toBeGreaterThan(15);
  });

  it.each(['en', 'es'] as const)('has every part of today, the shelf and the week, in %s', (language) => {
    const page = indexHtml(pagePlan(language), BESIDE);
    expect(page).toContain(`<html lang="${language}">`);
    for (const id of ['act', 'today', 'week', 'dials', 'water', 'tank', 'cautions', 'animals', 'papers', 'warnings'])
      expect(page).toContain(`<h2 id="${id}">`);
    expect(page).not.toMatch(/undefined|NaN|\[object/);
  });

  it('says what stands in the plan', () => {
    const words = wordsOf(indexHtml(pagePlan(), BESIDE));
    for (const said of [
      'Act below 15 °C, after 7 days without food',
      'Today: Tuesday 5 January 2027',
      '08:15 Feed Fern: 5 × cricket, no longer than the head is wide; dust with calcium',
      'Buy 40 × cricket',
      '07:30 wall-dial on: Fern sun',
      '08:00 pump mists Fern, 2 min',
      'Push down the pins from 07:30 up to and including 18:30: 45 pins.',
      'Next: Monday 1 February 2027, in 27 days: on from 07:00 to 19:15',
      'Push down 4 pins: 07:00 to 07:15 and 18:45 to 19:00.',
      'pump holds 15 l, of which 2 l stay in as a reserve; fill it every 7 days',
      'Ill, visited last, hands washed until Saturday 9 January 2027; the vet ordered: Fern',
      'temperature.day 22 to 28 °C the profile, profiles/x.yaml line 4; common practice, no source',
      'humidity.day 50 to 70 % your file, Fern line 9; others say 40 to 60 % (Fern)',
      'feeding.from 1 h after lights on the profile; Fern; from memory, not opened',
    ])
      expect(words).toContain(said);
  });

  it('reads a dial on the wall from the date on which the clocks change, and no span that has gone by', () => {
    const plan = pagePlan();
    const own = [{ on: '07:00', off: '19:00' }];
    const ahead = [{ on: '08:00', off: '20:00' }];
    const wall = [
      { from: '2027-01-01', to: '2027-01-03', windows: ahead },
      { from: '2027-01-04', to: '2027-03-27', windows: own },
      { from: '2027-03-28', to: '2027-03-28', windows: ahead },
      { from: '2027-03-29', to: '2027-10-30', windows: ahead },
    ];
    const setting = { from: '2027-01-01', to: '2027-10-30', windows: own, wall };
    const lighting = plan.lighting.map((dial) => ({
      ...dial,
      clock: 'standard' as const,
      settings: dial.settings.slice(0, 1).map((each) => ({ ...each, ...setting })),
    }));
    const said = wordsOf(pageHtml({ ...plan, lighting }, SERVED)).match(/By the wall clock[^.]*\./g);
    expect(said).toEqual(['By the wall clock, 28 March 2027 to 30 October 2027: on from 08:00 to 20:00.']);
  });

  it('leaves out the numbers of stages that are not lived through', () => {
    expect(indexHtml(pagePlan(), BESIDE)).not.toContain('stages.juvenile');
  });

  it('points only to what stands beside it', () => {
    const page = indexHtml(pagePlan(), BESIDE);
    const links = [...page.matchAll(/<a href="([^"#]+)"/g)]
      .map(([, link]) => link)
      .filter((link) => !link?.startsWith('tel:'));
    expect(links).toEqual(['settings.txt', 'care-calendar.pdf', 'calendar/keeper.ics', 'calendar/keeper-import.ics']);
    expect(indexHtml(pagePlan(), [])).not.toContain('care-calendar.pdf');
  });

  it('leads to its parts, each heading below the one it belongs to', () => {
    const page = pageHtml(pagePlan(), SERVED);
    const ids = [...page.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, target] of page.matchAll(/href="#([^"]+)"/g)) expect(ids).toContain(target);
    for (const [, target] of page.matchAll(/aria-labelledby="([^"]+)"/g))
      for (const id of target?.split(' ') ?? []) expect(ids).toContain(id);
    const levels = [...page.matchAll(/<h([1-6])/g)].map(([, level]) => Number(level));
    expect(levels[0]).toBe(1);
    for (const [index, level] of levels.entries()) expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1);
  });

  it('dials the numbers of keeper and vet', () => {
    const page = indexHtml(pagePlan(), BESIDE);
    expect([...page.matchAll(/href="tel:([^"]+)"/g)].map(([, number]) => number)).toEqual([
      '+34600000000',
      '+34976000000',
    ]);
  });

  it('of a room with many dials points to the drawings, and says numbers once', () => {
    const one = pagePlan();
    const [dial, enclosure] = [one.lighting[0], one.enclosures[0]];
    if (!dial || !enclosure) throw new Error('the plan lacks a dial or an enclosure');
    const ids = Array.from({ length: 30 }, (_, index) => `number-${index}`);
    const room = {
      ...one,
      lighting: ids.map((device) => ({ ...dial, device })),
      enclosures: ids.map((id) => ({ ...enclosure, id })),
    };
    const page = indexHtml(room, [{ path: 'dials/number-7.svg' }, { path: 'charts/number-7.svg' }]);
    expect(page).not.toContain('<svg');
    expect(page.match(/href="(dials|charts)\/[^"]+"/g)).toEqual([
      'href="dials/number-7.svg"',
      'href="charts/number-7.svg"',
    ]);
    expect(page.match(/<code>temperature\.day<\/code>/g)).toHaveLength(1);
    expect(page.match(/href="#number-0-needs"/g)).toHaveLength(29);
  });

  it('is the same bytes each time', () => {
    expect(pageHtml(pagePlan(), SERVED)).toBe(pageHtml(pagePlan(), SERVED));
  });

  it('shows the feeds with a code where it is served, and says what is wrong with the file', () => {
    const page = pageHtml(pagePlan(), {
      ...SERVED,
      served: SERVED.served && { ...SERVED.served, problem: 'home.yaml:3:1  cannot be read' },
    });
    expect(page).toContain('href="webcal://192.0.2.5:8710/c/T/keeper.ics"');
    expect(page).toContain('<svg id="code">');
    expect(page).toContain('home.yaml:3:1  cannot be read');
    expect(page.indexOf('role="alert"')).toBeLessThan(page.indexOf('<main>'));
    expect(pageHtml(pagePlan(), SERVED)).not.toContain('role="alert"');
  });

  it('says where a day lies outside the plan', () => {
    const words = wordsOf(pageHtml(pagePlan(), { ...SERVED, today: '2027-04-01' }));
    expect(words).toContain('this day lies outside it');
    expect(words).toContain('No machine switches anything.');
  });

  it('reads as a page of its own where the plan is empty', () => {
    const empty = {
      ...pagePlan(),
      enclosures: [],
      lighting: [],
      misting: [],
      hardware: [],
      feeding: [],
      chores: [],
      stock: [],
      cautions: [],
      warnings: [],
      notPlanned: [],
      contacts: {},
    };
    const page = indexHtml(empty, []);
    expect(page).toContain('<h2 id="today">');
    expect(page).not.toMatch(/<(ul|ol|dl)[^>]*><\/\1>/);
  });
});

describe('markup', () => {
  it('escapes texts and keeps what is markup', () => {
    const inner = html`<b title="${'"\'<&'}">${1}</b>`;
    expect(html`<p>${inner}${[inner]}${'<i>'}</p>`.html).toBe(
      '<p><b title="&quot;&#39;&lt;&amp;">1</b><b title="&quot;&#39;&lt;&amp;">1</b>&lt;i&gt;</p>',
    );
  });

  it('keeps a number and its unit on one line', () => {
    expect(html`${'22 to 28 °C, 70 %, 3 h 36 min, 5 l, 5 letters, 5 s'}`.html).toBe(
      '22 to 28\u00a0°C, 70\u00a0%, 3\u00a0h 36\u00a0min, 5\u00a0l, 5 letters, 5\u00a0s',
    );
  });
});
