import { createHash } from 'node:crypto';
import PDFDocument from 'pdfkit';
import { afterEach, describe, expect, it } from 'vitest';
import { Log } from '../../../../src/diagnostics/log.ts';
import { fontSet, measureOf } from '../../../../src/emit/pdf/fonts.ts';
import { paintPdf } from '../../../../src/emit/pdf/paint-pdf.ts';
import { careDocument, NO_WISH } from '../../../../src/layout/care-document.ts';
import type { PaperDocument } from '../../../../src/layout/page.ts';
import { compiledHousehold } from '../../../compiled-household.ts';
import { householdText } from '../../../generated/page-household.ts';

const fonts = fontSet();
const zone = process.env.TZ;

function document(): PaperDocument {
  const { plan } = compiledHousehold(
    householdText({
      paper: 'a4',
      language: 'en',
      enclosures: 1,
      chores: 2,
      names: ['Salt & Pepper <3'],
      contacts: true,
      seed: 3,
    }),
  );
  const made = plan && careDocument(plan, NO_WISH, measureOf(fonts), new Log());
  if (!made) throw new Error('the page does not fit');
  return made;
}

function digest(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

afterEach(() => {
  if (zone === undefined) delete process.env.TZ;
  else process.env.TZ = zone;
});

describe('a painted page', () => {
  it('has the same bytes twice and in four time zones', async () => {
    const paper = document();
    const digests: string[] = [];
    for (const each of ['UTC', 'America/Los_Angeles', 'Asia/Kathmandu', 'Pacific/Apia', 'UTC']) {
      process.env.TZ = each;
      digests.push(digest(await paintPdf(paper, fonts)));
    }
    expect(new Set(digests).size).toBe(1);
  });

  it('has other bytes where one word differs', async () => {
    const paper = document();
    const other = { ...paper, title: `${paper.title}.` };
    expect(digest(await paintPdf(other, fonts))).not.toBe(digest(await paintPdf(paper, fonts)));
  });

  it('escapes its title in the metadata packet alone', async () => {
    const text = Buffer.from(await paintPdf(document(), fonts)).toString('latin1');
    const packet = /<\?xpacket begin[\s\S]*?<\?xpacket end/.exec(text)?.[0] ?? '';
    expect(packet).toContain('Salt &amp; Pepper &lt;3');
    expect(packet).not.toContain('Salt & Pepper');
    expect(text.replace(packet, '')).toContain('Salt & Pepper <3');
  });

  it('measures a line as the pen sets it', async () => {
    const measure = measureOf(fonts);
    const pen = new PDFDocument({ autoFirstPage: false, font: fonts.regular[0] as unknown as string });
    for (const said of ['AV Type fi 22–28 °C', 'Feed Fern 10:00', 'Señor Ñandú', '']) {
      const ours = measure.widthMm(said, 12, 'regular');
      expect(ours).toBeCloseTo((pen.fontSize(12).widthOfString(said) / 72) * 25.4, 9);
      expect(measure.widthMm(said, 24, 'regular')).toBeCloseTo(2 * ours, 9);
    }
  });

  it('names characters that no font has, and none of those that it has', () => {
    const measure = measureOf(fonts);
    expect(measure.missing('Señor Größe Дракон Κήπος 22 °C – Việt')).toEqual([]);
    expect(measure.missing('緑 and 🦎')).toEqual(['緑', '🦎']);
  });
});
