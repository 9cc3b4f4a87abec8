/**
 * The page in a real browser: nothing blocked, nothing that a reader cannot use, codes that a phone reads. PICTURES=FOLDER keeps what it
 * looked like, to be looked at.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { indexHtml } from '../../../src/emit/html/index-html.ts';
import { ownNames } from '../../../src/serve/hosts.ts';
import { HouseholdSite } from '../../../src/serve/household-site.ts';
import { type Listening, listen } from '../../../src/serve/http-server.ts';
import { qrTerminal } from '../../../src/serve/qr.ts';
import { tokenCheck } from '../../../src/serve/token.ts';
import { HOSTILE, pagePlan } from '../../generated/page-plan.ts';
import { type ServedHousehold, serveHousehold } from './served-household.ts';

const AXE = createRequire(import.meta.url).resolve('axe-core');
const TOKEN = 'mJ3rYx0h2kQ8vB5nW7tLzA';
const VIEWS = [320, 360, 1280].flatMap((width) =>
  (['light', 'dark'] as const).map((scheme) => [width, scheme] as const),
);

let browser: Browser;
let household: ServedHousehold;
let site: HouseholdSite;
let small: Listening;
let pictures = '';

beforeAll(async () => {
  browser = await chromium.launch({
    executablePath: '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-dev-shm-usage', '--disable-gpu'],
  });
  household = await serveHousehold('reading-room.yaml', ['--today', '2027-01-05']);
  pictures = process.env.PICTURES ?? join(household.folder, 'pictures');
  mkdirSync(pictures, { recursive: true });
  const files = new Map([
    ['calendar/keeper.ics', Buffer.from('BEGIN:VCALENDAR\r\n')],
    ['calendar/keeper-import.ics', Buffer.from('BEGIN:VCALENDAR\r\n')],
  ]);
  const options = {
    authority: '192.168.1.50:8710',
    isReachable: true,
    token: TOKEN,
    nowMs: () => Date.parse('2027-01-05T09:00Z'),
    today: null,
  };
  site = new HouseholdSite(options, { plan: pagePlan('es', HOSTILE), files }, {});
  const gate = { names: ownNames(null, null), isToken: tokenCheck(TOKEN), file: (name: string) => site.file(name) };
  small = await listen(() => gate, '127.0.0.1', 0);
});
afterAll(async () => {
  await browser?.close();
  await small?.close();
  await household?.end();
});

interface Opened {
  readonly context: BrowserContext;
  readonly page: Page;
  /** What the browser complained of. */
  readonly complaints: string[];
}

async function opened(url: string, width: number, scheme: 'light' | 'dark', bypassCSP = false): Promise<Opened> {
  const context = await browser.newContext({
    viewport: { width, height: 800 },
    colorScheme: scheme,
    bypassCSP,
    deviceScaleFactor: 2,
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('requestfailed', (request) => complaints.push(`failed: ${request.url()}`));
  await page.goto(url);
  return { context, page, complaints };
}

interface Violations {
  readonly passes: number;
  readonly violations: readonly string[];
}

/** Runs every rule of the checker, with all that is folded in unfolded. */
async function axe(page: Page): Promise<Violations> {
  await page.addScriptTag({ path: AXE });
  return page.evaluate(`(async () => {
    for (const each of document.querySelectorAll('details')) each.open = true;
    const { violations, passes } = await axe.run(document);
    return { passes: passes.length, violations: violations.map((each) => each.id + ': ' + each.nodes.map((node) => node.html).join(' ')) };
  })()`);
}

const urls = (): readonly (readonly [string, string])[] => [
  ['served', household.page],
  ['file', pathToFileURL(join(household.folder, 'out/reading-room/index.html')).href],
  ['hostile', `http://127.0.0.1:${small.port}/c/${TOKEN}/`],
];

describe.each(VIEWS)('the page at %i px, %s', (width, scheme) => {
  it('is whole: nothing blocked, nothing fetched from elsewhere, nothing wider than the screen', async () => {
    for (const [name, url] of urls()) {
      const { context, page, complaints } = await opened(url, width, scheme);
      expect(complaints, name).toEqual([]);
      const [wide, inner] = await page.evaluate<[number, number]>('[document.documentElement.scrollWidth, innerWidth]');
      expect(wide, name).toBeLessThanOrEqual(inner);
      if (process.env.PICTURES)
        await page.screenshot({ path: join(pictures, `${name}-${width}-${scheme}.png`), fullPage: true });
      await context.close();
    }
  });

  it('breaks no rule of the checker', async () => {
    for (const [name, url] of urls()) {
      const { context, page } = await opened(url, width, scheme, true);
      const { passes, violations } = await axe(page);
      expect(violations, name).toEqual([]);
      expect(passes, name).toBeGreaterThan(20);
      await context.close();
    }
  });
});

describe('the page', () => {
  it('runs nothing, even where somebody gets a script into it', async () => {
    const { context, page, complaints } = await opened(household.page, 360, 'light');
    await page.evaluate(
      `document.body.insertAdjacentHTML('beforeend', '<img src="https://example.org/x.png"><img src=x onerror="window.ran=1"><form action="https://example.org"></form>')`,
    );
    await page.evaluate(
      `(() => { const script = document.createElement('script'); script.textContent = 'window.ran=1'; document.body.append(script); })()`,
    );
    await page.waitForTimeout(300);
    expect(await page.evaluate('window.ran ?? null')).toBeNull();
    expect(complaints.filter((text) => text.includes('Content Security Policy')).length).toBeGreaterThanOrEqual(3);
    await context.close();
  });

  it('is walked through by keyboard: first past the links, then along them, each in sight', async () => {
    const { context, page } = await opened(household.page, 360, 'light');
    await page.keyboard.press('Tab');
    const skip = await page.evaluate<string>('document.activeElement.className');
    expect(skip).toBe('skip');
    const box = await page.locator('.skip').boundingBox();
    expect(box && box.x >= 0).toBe(true);
    await page.keyboard.press('Enter');
    expect(new URL(page.url()).hash).toBe('#today');
    const seen = new Set<string>();
    for (let times = 0; times < 60; times++) {
      await page.keyboard.press('Tab');
      const [tag, x, inView] = await page.evaluate<[string, number, boolean]>(
        `(() => { const { left, top, bottom } = document.activeElement.getBoundingClientRect(); return [document.activeElement.tagName, left, bottom > 0 && top < innerHeight]; })()`,
      );
      if (tag === 'BODY') break;
      seen.add(tag);
      expect(x).toBeGreaterThanOrEqual(0);
      expect(inView).toBe(true);
    }
    expect([...seen].sort()).toEqual(['A', 'DIV', 'SUMMARY']);
    await context.close();
  });

  it('names its parts to a screen reader', async () => {
    const { context, page } = await opened(household.page, 360, 'light');
    for (const name of [
      'When to act, and whom to call',
      'The coming week',
      'The dials',
      'Take care',
      'What the animals need',
    ])
      await expect.poll(() => page.getByRole('region', { name, exact: true }).count(), { message: name }).toBe(1);
    expect(await page.getByRole('img', { name: /wall-dial as it should stand now/ }).count()).toBe(1);
    expect(await page.getByRole('navigation', { name: 'On this page' }).getByRole('link').count()).toBeGreaterThan(6);
    await context.close();
  });

  it('prints black on white, with every number unfolded and without what only a screen can use', async () => {
    const { context, page } = await opened(household.page, 1280, 'dark');
    const file = join(pictures, 'print.pdf');
    writeFileSync(file, await page.pdf({ format: 'A4' }));
    const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
    for (const said of ['Today: Tuesday 5 January 2027', 'temperature.never_below', 'Push down the pins'])
      expect(text).toContain(said);
    expect(text).not.toContain('On this page');
    expect(text).not.toMatch(/\/c\/[\w-]{22}\//);
    await page.emulateMedia({ media: 'print' });
    expect(await page.evaluate('getComputedStyle(document.body).backgroundColor')).toBe('rgb(255, 255, 255)');
    await context.close();
  });

  it.each(['light', 'dark'] as const)(
    'shows codes that a phone reads as the addresses beside them, %s',
    async (scheme) => {
      const { context, page } = await opened(`http://127.0.0.1:${small.port}/c/${TOKEN}/`, 320, scheme);
      const wanted = [`webcal://192.168.1.50:8710/c/${TOKEN}/keeper.ics`, `http://192.168.1.50:8710/c/${TOKEN}/`];
      const codes = page.locator('.qr');
      expect(await codes.count()).toBe(wanted.length);
      for (const [index, address] of wanted.entries()) {
        const file = join(pictures, `code-${scheme}-${index}.png`);
        await codes.nth(index).screenshot({ path: file });
        const read = execFileSync('zbarimg', ['-q', '--raw', file], { encoding: 'utf8' }).trim();
        expect(read).toBe(address);
        expect(
          await page
            .getByRole('link', { name: /.*/ })
            .evaluateAll((links) => links.map((link) => link.getAttribute('href'))),
        ).toContain(address);
      }
      await context.close();
    },
  );

  it('has its code in a terminal too, in black on white and where no colour is to be had', async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    for (const colour of [true, false]) {
      const text = qrTerminal(household.page, colour).replaceAll('\u001b[97;40m', '').replaceAll('\u001b[0m', '');
      await page.setContent(
        `<body style="background:#000"><pre style="color:#fff;font:20px/20px 'DejaVu Sans Mono',monospace;display:inline-block">${text}</pre>`,
      );
      const file = join(pictures, 'terminal.png');
      await page.locator('pre').screenshot({ path: file });
      expect(execFileSync('zbarimg', ['-q', '--raw', file], { encoding: 'utf8' }).trim()).toBe(household.page);
    }
    expect(qrTerminal(household.page, true)).toContain('\u001b[97;40m');
    await context.close();
  });

  it('is the file of the results, when it is not served', () => {
    const file = readFileSync(join(household.folder, 'out/reading-room/index.html'), 'utf8');
    expect(file).toContain('href="calendar/keeper.ics"');
    expect(indexHtml(pagePlan(), [])).toBe(indexHtml(pagePlan(), []));
  });
});

describe('the household file', () => {
  it('is followed: a new name on the page, then what is wrong with it, then all is well again', async () => {
    const first = await fetch(household.page);
    const etag = first.headers.get('etag') ?? '';
    expect((await fetch(household.page, { headers: { 'If-None-Match': etag } })).status).toBe(304);
    await household.edit((text) => text.replace(/^name: .*/m, 'name: The shelf <b>behind</b> the door'));
    expect(await (await fetch(household.page, { headers: { 'If-None-Match': etag } })).text()).toContain(
      '<h1>The shelf &lt;b&gt;behind&lt;/b&gt; the door</h1>',
    );
    const said = await household.edit((text) => `${text}\nunknown: [\n`);
    expect(said).toContain('cannot be read');
    const broken = await (await fetch(household.page)).text();
    expect(broken).toContain('role="alert"');
    expect(broken).toContain('cannot be read');
    expect((await fetch(household.feeds[0]?.http ?? '')).status).toBe(200);
    const { context, page } = await opened(household.page, 320, 'light', true);
    expect((await axe(page)).violations).toEqual([]);
    await page.screenshot({ path: join(pictures, 'broken-320-light.png') });
    await context.close();
    await household.edit((text) => text.replace('\nunknown: [\n', ''));
    expect(await (await fetch(household.page)).text()).not.toContain('role="alert"');
  });

  it('stands in no log: what was said holds no token', () => {
    const token = /\/c\/([^/]+)\//.exec(household.page)?.[1] ?? '';
    expect(token).toHaveLength(22);
    expect(household.said()).not.toContain(token);
  });
});
