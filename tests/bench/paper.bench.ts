import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Log } from '../../src/diagnostics/log.ts';
import { fontSet, measureOf } from '../../src/emit/pdf/fonts.ts';
import { paintPdf } from '../../src/emit/pdf/paint-pdf.ts';
import { type CareWish, careDocument, NO_WISH } from '../../src/layout/care-document.ts';
import { handoverDocument } from '../../src/layout/handover-pages.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { examplePlan } from './compiled-example.ts';
import { atMost, median, onceMs, shown, type Table } from './figures.ts';
import { besideGeneralLayout } from './paper-beside.ts';

const ROOT = new URL('../../', import.meta.url).pathname;
const ROUNDS = 20;
const PAGES = 100;
const FOUR_WEEKS: CareWish = { ...NO_WISH, weeks: 4 };
const ONE_WEEK: CareWish = { ...NO_WISH, weeks: 1 };

async function rounds(work: () => unknown, count = ROUNDS): Promise<readonly number[]> {
  const times: number[] = [];
  for (let round = 0; round < count; round++) times.push(await onceMs(work));
  return times;
}

function processMs(args: readonly string[]): number {
  const start = performance.now();
  execFileSync(process.execPath, [...args], { stdio: ['ignore', 'ignore', 'ignore'], cwd: ROOT });
  return performance.now() - start;
}

/** Pages of one process, and a compile with and without them beside an empty Node process. */
export async function run(): Promise<readonly Table[]> {
  const plan = examplePlan('one-gecko.yaml');
  const cold = await onceMs(async () => page(plan));
  const warm = await rounds(() => page(plan));
  const sheet = await rounds(() => handover(plan), 5);
  const memory = await heapAfterPages(plan);
  const [early = 0, later = 0] = memory;
  const folder = mkdtempSync(join(tmpdir(), 'bench-pages-'));
  const compile = (more: readonly string[]): number =>
    median(
      Array.from({ length: 5 }, () => {
        rmSync(join(folder, 'out'), { recursive: true, force: true });
        return processMs([
          'dist/dewdial.js',
          'compile',
          'examples/one-gecko.yaml',
          '--out',
          join(folder, 'out'),
          '--today',
          '2027-01-01',
          ...more,
        ]);
      }),
    );
  const empty = median(Array.from({ length: 5 }, () => processMs(['-e', '0'])));
  const [withPages, without] = [compile([]), compile(['--no-pdf'])];
  rmSync(folder, { recursive: true, force: true });
  return [
    {
      name: 'Printed pages in one process',
      rows: [
        ['the page for the door, first', cold.toFixed(0), 'ms'],
        ['the page for the door, warm', median(warm).toFixed(1), 'ms'],
        ['a sheet for a sitter, warm', median(sheet).toFixed(1), 'ms'],
        [`heap after 10 pages and after ${PAGES}`, memory.map((mb) => mb.toFixed(0)).join(' and '), 'MB'],
      ],
      targets: [
        atMost('the page for the door, warm', median(warm), 60, 'ms'),
        {
          what: `memory over ${PAGES} pages in one process`,
          measured: `${shown(later)} MB after, ${shown(early)} MB after 10`,
          target: 'flat',
          share: null,
          isMet: later - early < 1,
        },
      ],
    },
    {
      name: 'The same page by a general layout',
      rows: [],
      beside: [
        ...(await besideGeneralLayout('one gecko, four weeks', plan, FOUR_WEEKS)),
        ...(await besideGeneralLayout('three enclosures, one week', examplePlan('reading-room.yaml'), ONE_WEEK)),
      ],
    },
    {
      name: 'A compile with and without PDF',
      rows: [
        ['node -e 0', empty.toFixed(0), 'ms'],
        ['without', without.toFixed(0), 'ms'],
        ['with', withPages.toFixed(0), 'ms'],
        ['what PDF adds, in empty processes', ((withPages - without) / empty).toFixed(1), 'x'],
      ],
    },
  ];
}

async function page(plan: Plan): Promise<number> {
  const fonts = fontSet();
  const document = careDocument(plan, FOUR_WEEKS, measureOf(fonts), new Log());
  return document ? (await paintPdf(document, fonts)).length : 0;
}

async function handover(plan: Plan): Promise<number> {
  const fonts = fontSet();
  const wish = { sitter: 'sitter', from: '2027-01-04', to: '2027-01-10', largePrint: false };
  return (await paintPdf(handoverDocument(plan, wish, measureOf(fonts), new Log()), fonts)).length;
}

/** Heap in MB after 10 and after 100 pages, what can be freed freed where the process may. */
async function heapAfterPages(plan: Plan): Promise<readonly number[]> {
  const free = (globalThis as { readonly gc?: () => void }).gc;
  const at: number[] = [];
  for (let count = 1; count <= PAGES; count++) {
    await page(plan);
    if (count !== 10 && count !== PAGES) continue;
    free?.();
    at.push(process.memoryUsage().heapUsed / 2 ** 20);
  }
  return at;
}
