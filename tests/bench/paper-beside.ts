/** One page of ours and the same content laid out by pdfmake, each in a process of its own: the first in it, the next ones, bytes, pages. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { Log } from '../../src/diagnostics/log.ts';
import { fontSet, measureOf } from '../../src/emit/pdf/fonts.ts';
import { type CareWish, careDocument } from '../../src/layout/care-document.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { type Beside, shown, times } from './figures.ts';
import { generalLayout } from './general-layout.ts';

interface Made {
  /** From the start of the process to the first page, everything loaded on the way. */
  readonly coldMs: number;
  /** The least of the next. */
  readonly warmMs: number;
  readonly bytes: number;
  readonly pages: number;
}

const PROCESS_RUNS = 3;

/** What both processes do; `page` is what differs. */
const MEASURED = `
const first = await page();
const coldMs = performance.now();
let warmMs = Infinity;
for (let round = 0; round < 20; round++) {
  const start = performance.now();
  await page();
  warmMs = Math.min(warmMs, performance.now() - start);
}
const pages = first.toString('latin1').match(/\\/Type \\/Page\\b/g).length;
console.log(JSON.stringify({ coldMs, warmMs, bytes: first.length, pages }));
`;

const OURS = `
import { readFileSync } from 'node:fs';
import { Log } from './src/diagnostics/log.ts';
import { fontSet, measureOf } from './src/emit/pdf/fonts.ts';
import { paintPdf } from './src/emit/pdf/paint-pdf.ts';
import { careDocument } from './src/layout/care-document.ts';
const { plan, wish } = JSON.parse(readFileSync(process.argv[2], 'utf8'));
const page = async () => {
  const fonts = fontSet();
  return Buffer.from(await paintPdf(careDocument(plan, wish, measureOf(fonts), new Log()), fonts));
};
${MEASURED}`;

const GENERAL = `
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { generalFonts, GENERAL_TABLES } from './tests/bench/general-layout.ts';
const require = createRequire(import.meta.url);
const pdfmake = require('pdfmake');
pdfmake.setUrlAccessPolicy(() => false);
pdfmake.setLocalAccessPolicy(() => true);
pdfmake.setFonts(generalFonts((file) => require.resolve('dejavu-fonts-ttf/ttf/' + file)));
pdfmake.setTableLayouts(GENERAL_TABLES);
const text = readFileSync(process.argv[2], 'utf8');
const page = () => pdfmake.createPdf(JSON.parse(text)).getBuffer();
${MEASURED}`;

/** Returns time, bytes and pages of one page's content, side by side. */
export async function besideGeneralLayout(name: string, plan: Plan, wish: CareWish): Promise<readonly Beside[]> {
  const paper = careDocument(plan, wish, measureOf(fontSet()), new Log());
  if (!paper) throw new Error(`${name}: no page`);
  const ours = await made('ours', OURS, { plan, wish });
  const general = await made('general', GENERAL, generalLayout(paper));
  const row = (what: string, here: string, there: string, ratio: string): Beside => ({
    work: `page for the door, ${name}: ${what}`,
    ours: here,
    other: 'pdfmake, same texts and tables, no drawings, no tags',
    takes: there,
    ratio,
  });
  const ms = (value: number) => `${shown(value)} ms`;
  return [
    row('first in a process', ms(ours.coldMs), ms(general.coldMs), times(general.coldMs, ours.coldMs)),
    row('warm', ms(ours.warmMs), ms(general.warmMs), times(general.warmMs, ours.warmMs)),
    row('size', sizeOf(ours), sizeOf(general), times(general.bytes, ours.bytes, 'as many bytes')),
  ];
}

function sizeOf({ bytes, pages }: Made): string {
  return `${shown(bytes)} bytes, ${pages} ${pages === 1 ? 'page' : 'pages'}`;
}

/** Bundles one side into the build's folder, where packages are found, and runs it; the least of some processes. */
async function made(name: string, contents: string, input: unknown): Promise<Made> {
  const outfile = join('dist/bench', `paper-${name}.mjs`);
  await build({
    stdin: { contents, resolveDir: process.cwd(), loader: 'ts' },
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    outfile,
    logLevel: 'warning',
  });
  const folder = mkdtempSync(join(tmpdir(), 'bench-page-'));
  const file = join(folder, 'input.json');
  writeFileSync(file, JSON.stringify(input));
  const runs = Array.from(
    { length: PROCESS_RUNS },
    () => JSON.parse(execFileSync(process.execPath, [outfile, file], { encoding: 'utf8' })) as Made,
  );
  rmSync(folder, { recursive: true, force: true });
  const least = (pick: (run: Made) => number) => Math.min(...runs.map(pick));
  return {
    coldMs: least(({ coldMs }) => coldMs),
    warmMs: least(({ warmMs }) => warmMs),
    bytes: least(({ bytes }) => bytes),
    pages: least(({ pages }) => pages),
  };
}
