/** The printed pages, read by real programs: qpdf, poppler, Ghostscript, MuPDF, xmllint, tesseract (Debian packages). */
import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { ledgerOf } from '../../../src/layout/ledger.ts';
import { dialsOn, OneBitPicture, slotsInPicture } from './dial-pixels.ts';
import { folder, measure, type Printed, printed } from './documents.ts';
import { PdfObjects, structureFaults, unmarkedPainting } from './tagged-structure.ts';

let all: readonly Printed[] = [];

beforeAll(async () => {
  all = await printed();
});

function run(
  command: string,
  args: readonly string[],
  input?: string,
): { readonly out: string; readonly err: string; readonly code: number } {
  const { stdout, stderr, status } = spawnSync(command, [...args], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    ...(input === undefined ? {} : { input }),
  });
  return { out: stdout, err: stderr, code: status ?? -1 };
}

function objectsOf(path: string): PdfObjects {
  return new PdfObjects(run('qpdf', ['--json=2', '--json-stream-data=none', path]).out);
}

function contentOf(path: string): string {
  return run('mutool', ['draw', '-F', 'txt', path]).out;
}

describe('every document', () => {
  it('is made', () => {
    expect(all.length).toBeGreaterThan(10);
    expect(new Set(all.map(({ kind }) => kind))).toEqual(new Set(['page', 'cards', 'sheet']));
  });

  it('passes qpdf --check', () => {
    for (const { name, path } of all) {
      const { out, code } = run('qpdf', ['--check', path]);
      expect(code, `${name}: ${out}`).toBe(0);
      expect(out).toContain('No syntax or stream encoding errors');
    }
  });

  it('has as many pages as were laid out, on the paper of its plan', () => {
    for (const { name, path, paper, plan } of all) {
      const info = run('pdfinfo', [path]).out;
      expect(Number(/^Pages:\s+(\d+)/m.exec(info)?.[1]), name).toBe(paper.pages.length);
      expect(info).toContain(plan.paper === 'a4' ? '595.276 x 841.89 pts (A4)' : '612 x 792 pts (letter)');
      expect(info).toMatch(/^Tagged:\s+yes$/m);
    }
  });

  it('has one page where it is the page for the door', () => {
    for (const { paper } of all.filter(({ kind }) => kind === 'page')) expect(paper.pages).toHaveLength(1);
  });

  it('has all fonts embedded, with their characters', () => {
    for (const { name, path } of all) {
      const rows = run('pdffonts', [path])
        .out.split('\n')
        .slice(2)
        .filter((row) => row !== '');
      expect(rows.length, name).toBeGreaterThan(0);
      for (const row of rows) expect(row, name).toMatch(/\syes\s+yes\s+yes\s+\d+\s+\d+$/);
    }
  });

  it('is drawn by Ghostscript that stops on warnings', () => {
    for (const { name, path } of all) {
      const args = ['-q', '-dNOPAUSE', '-dBATCH', '-dPDFSTOPONERROR', '-dPDFSTOPONWARNING', '-sDEVICE=nullpage', path];
      const { out, err, code } = run('gs', args);
      expect(code, `${name}: ${out}${err}`).toBe(0);
    }
  });

  it('is drawn by MuPDF without a word', () => {
    for (const { name, path } of all) {
      const { err, code } = run('mutool', ['draw', '-q', '-r', '50', '-o', `${folder}/m-%d.png`, path]);
      const said = err.split('\n').filter((line) => line !== '' && line !== 'warning: ICC support is not available');
      expect([code, ...said], name).toEqual([0]);
    }
  });

  it('has metadata that is well-formed XML', () => {
    for (const { name, path } of all) {
      const text = readFileSync(path).toString('latin1');
      const packet = /<\?xpacket begin[\s\S]*?<\?xpacket end="w"\?>/.exec(text)?.[0] ?? '';
      const xml = Buffer.from(packet, 'latin1').toString('utf8');
      const { err, code } = run('xmllint', ['--noout', '-'], xml);
      expect([code, err], name).toEqual([0, '']);
    }
  });

  it('would fail xmllint with a title that is not escaped', () => {
    expect(run('xmllint', ['--noout', '-'], '<a>Salt & Pepper</a>').code).not.toBe(0);
  });

  it('holds the words of its ledger, in its order, each where the ledger has it', () => {
    for (const { name, path, paper } of all) {
      const boxes = wordBoxes(path);
      const ledger = ledgerOf(paper, measure);
      const wanted = ledger.flatMap(({ text }) => text.split(/\s+/).filter((word) => word !== ''));
      const raw = run('pdftotext', ['-raw', '-nopgbrk', path, '-'])
        .out.split(/\s+/)
        .filter((word) => word !== '');
      expect([...boxes.map(({ word }) => word)].sort().join(' '), name).toBe([...wanted].sort().join(' '));
      expect(sharedInOrder(raw, wanted), name).toBeGreaterThan(0.9);
      for (const { page, text, box, sizePt } of ledger) {
        const spaces = text.length - text.trimStart().length;
        const left = box.left + spaces * measure.widthMm(' ', sizePt, 'regular');
        const [first] = text.split(/\s+/).filter((word) => word !== '');
        if (first === undefined) continue;
        const near = boxes.some(
          (each) =>
            each.page === page &&
            each.word === first &&
            Math.abs(each.leftMm - left) < 0.6 &&
            Math.abs(each.topMm - box.top) < 1.5,
        );
        expect(near, `${name}: ${text}`).toBe(true);
      }
    }
  });
});

interface WordBox {
  readonly page: number;
  readonly word: string;
  readonly leftMm: number;
  readonly topMm: number;
}

function wordBoxes(path: string): readonly WordBox[] {
  const text = run('pdftotext', ['-bbox', path, '-']).out;
  return text
    .split('<page ')
    .slice(1)
    .flatMap((part, page) =>
      [...part.matchAll(/<word xMin="([\d.]+)" yMin="([\d.]+)"[^>]*>([^<]*)<\/word>/g)].map(([, x, y, word]) => ({
        page,
        word: unescaped(word ?? ''),
        leftMm: (Number(x) / 72) * 25.4,
        topMm: (Number(y) / 72) * 25.4,
      })),
    );
}

function unescaped(text: string): string {
  return text
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&apos;|&#39;/g, "'")
    .replace(/&amp;/g, '&');
}

/** The share of words that stand in the same order: the length of the longest common run of both, by a moving window. */
function sharedInOrder(read: readonly string[], wanted: readonly string[]): number {
  let at = 0;
  let found = 0;
  for (const word of wanted) {
    const next = read.indexOf(word, at);
    if (next < 0 || next > at + 40) continue;
    found += 1;
    at = next + 1;
  }
  return found / wanted.length;
}

describe('the tagged structure', () => {
  it('has no fault that can be found', () => {
    for (const { name, path, plan } of all)
      expect([name, ...structureFaults(objectsOf(path), plan.language)]).toEqual([name]);
  });

  it('leaves nothing painted outside of a tag or an artifact', () => {
    for (const { name, path, paper } of all)
      for (let page = 1; page <= paper.pages.length; page++) {
        const content = pageContent(path, page);
        expect(content).toContain('BDC');
        expect(unmarkedPainting(content), name).toEqual([]);
      }
  });

  it.each([
    ['the mark', '"/Marked": true', '"/Marked": false', 'not marked'],
    ['the language', '"/Lang": "u:en"', '"/Lang": "u:fr"', 'language'],
    ['the shown title', '"/DisplayDocTitle": true', '"/DisplayDocTitle": false', 'not shown'],
    ['a tag', '"/S": "/P"', '"/S": "/Quote"', 'tagged "Quote"'],
    ['a row outside its table', '"/S": "/Table"', '"/S": "/Sect"', 'stands in a Sect'],
    ['a figure without words', '"/Alt": "u:Ring', '"/Other": "u:Ring', 'cannot see'],
    ['a figure without a box', '"/BBox"', '"/Box"', 'no box'],
    ['a heading without scope', '"/Scope"', '"/Scape"', 'no scope'],
    ['an embedded font', '"/FontFile2"', '"/FontFileX"', 'not embedded'],
    ['the characters of a font', '"/ToUnicode"', '"/ToNothing"', 'nothing of its characters'],
    ['the structure', '"/StructTreeRoot"', '"/NoTree"', 'no structure'],
  ])('is found broken: %s', (_what, from, to, words) => {
    const { path } = all.find(({ kind, plan }) => kind === 'page' && plan.language === 'en') ?? { path: '' };
    const text = run('qpdf', ['--json=2', '--json-stream-data=none', path]).out;
    const broken = text.replaceAll(
      new RegExp(from.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(': ', ':\\s*'), 'g'),
      to,
    );
    expect(broken).not.toBe(text);
    expect(structureFaults(new PdfObjects(broken), 'en').join('; ')).toContain(words);
  });

  it('finds painting outside of any mark', () => {
    expect(unmarkedPainting('/P <</MCID 0>> BDC\n0 0 m 1 1 l\nS\nEMC\n0 0 m 1 1 l\nS')).toEqual(['S']);
  });
});

/** The unpacked content of a page. */
function pageContent(path: string, page: number): string {
  return execFileSync('mutool', ['show', '-b', path, `pages/${page}/Contents`], {
    encoding: 'latin1',
    maxBuffer: 1 << 27,
  });
}

const DIAL_DPI = 600;

/** Returns a one-bit picture of a page. */
function pictureOf(path: string, page: number, dpi: number): OneBitPicture {
  run('pdftoppm', ['-r', String(dpi), '-mono', '-f', String(page), '-singlefile', path, `${folder}/bits`]);
  return new OneBitPicture(readFileSync(`${folder}/bits.pbm`));
}

describe('the pixels', () => {
  it('show the dials of the plan: every pin of every ring', () => {
    let rings = 0;
    for (const { name, path, paper, plan } of all.filter(({ kind }) => kind !== 'sheet'))
      for (const [index, page] of paper.pages.entries()) {
        const drawn = dialsOn(page);
        if (drawn.length === 0) continue;
        const picture = pictureOf(path, index + 1, DIAL_DPI);
        for (const each of drawn) {
          const dial = plan.lighting.find(({ device }) => device === each.dial);
          const setting = dial?.settings.find(({ from }) => from === each.setting);
          const stepMinutes = dial?.stepMinutes ?? 15;
          const wanted = setting?.slots.filter((slot) => slot < 1440 / stepMinutes);
          expect(slotsInPicture(picture, each, stepMinutes, DIAL_DPI), `${name} ${each.dial} ${each.setting}`).toEqual(
            wanted,
          );
          rings += 1;
        }
      }
    console.info(`${rings} rings read off pictures of ${DIAL_DPI} dpi`);
    expect(rings).toBeGreaterThan(20);
  });

  it('leave the outer 4 mm white', () => {
    for (const { name, path, paper } of all)
      for (const index of paper.pages.keys())
        expect(pictureOf(path, index + 1, 100).hasInkWithin(Math.floor((4 / 25.4) * 100)), name).toBe(false);
  });

  it('are found where there is ink at the edge', () => {
    const head = Buffer.from('P4\n16 2\n', 'latin1');
    expect(new OneBitPicture(Buffer.concat([head, Buffer.from([0, 0, 0, 1])])).hasInkWithin(1)).toBe(true);
  });
});

describe('the text', () => {
  it('is read the same by MuPDF', () => {
    for (const { name, path, paper } of all) {
      const read = new Set(contentOf(path).split(/\s+/));
      const wanted = ledgerOf(paper, measure).flatMap(({ text }) => text.split(/\s+/).filter((word) => word !== ''));
      expect(wanted.filter((word) => read.has(word)).length / wanted.length, name).toBeGreaterThan(0.99);
    }
  });

  it('is read off a 150 dpi one-bit picture: 95 % of the words of jobs and of the box for when something is wrong', () => {
    for (const { name, path, paper } of all.filter(({ kind }) => kind === 'page')) {
      run('pdftoppm', ['-r', '150', '-mono', '-singlefile', path, `${folder}/ocr`]);
      const read = run('tesseract', [`${folder}/ocr.pbm`, '-', '-l', 'eng+spa', '--psm', '11']).out;
      const seen = new Set(wordsOf(read));
      const wanted = ledgerOf(paper, measure)
        .filter(({ role }) => role === 'job' || role === 'emergency' || role === 'text')
        .flatMap(({ text }) => wordsOf(text))
        .filter((word) => word.length > 2);
      const share = wanted.filter((word) => seen.has(word)).length / wanted.length;
      console.info(`${name}: ${(share * 100).toFixed(1)} % of ${wanted.length} words`);
      expect(share, `${name}: ${wanted.filter((word) => !seen.has(word)).join(' ')}`).toBeGreaterThanOrEqual(0.95);
    }
  });
});

function wordsOf(text: string): readonly string[] {
  return text.toLowerCase().match(/[\p{L}\d]+/gu) ?? [];
}
