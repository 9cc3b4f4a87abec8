import { describe, expect, it } from 'vitest';
import { fontSet, measureOf } from '../../../src/emit/pdf/fonts.ts';
import type { PaperDocument } from '../../../src/layout/page.ts';
import type { Shape, TextShape } from '../../../src/layout/shapes.ts';
import { pageFaults } from './page-faults.ts';

const measure = measureOf(fontSet());

function said(...shapes: readonly Shape[]): PaperDocument {
  const size = { widthMm: 210, heightMm: 297 };
  return {
    title: '',
    subject: '',
    language: 'en',
    made: '2027-01-01',
    pages: [{ size, parts: [{ tag: 'P', shapes }] }],
  };
}

function text(over: Partial<TextShape> = {}): TextShape {
  return {
    kind: 'text',
    x: 20,
    y: 30,
    text: 'Feed Fern',
    sizePt: 12,
    weight: 'regular',
    anchor: 'start',
    role: 'job',
    ...over,
  };
}

const ink = { widthMm: 0.2, shade: 'ink' } as const;

describe('each fault of a page is found when it is planted', () => {
  it('and a page without any has none', () => {
    expect(pageFaults(said(text(), text({ y: 36 })), measure)).toEqual([]);
  });

  it.each([
    ['text over the left margin', said(text({ x: 9 })), 'leaves the margins'],
    ['text over the right margin', said(text({ x: 190, text: 'a long line of text' })), 'leaves the margins'],
    ['text at the foot', said(text({ y: 287 })), 'leaves the margins'],
    ['two texts on each other', said(text(), text({ y: 32 })), 'overlaps'],
    ['a size below its floor', said(text({ sizePt: 11.9 })), 'asks for 12'],
    ['a role that no page knows', said(text({ role: 'tick' })), 'no role'],
    [
      'a rule through the letters',
      said(text(), { kind: 'line', x1: 25, y1: 20, x2: 25, y2: 40, stroke: ink }),
      'runs through',
    ],
    [
      'a frame through the letters',
      said(text(), { kind: 'rect', x: 10, y: 10, width: 15, height: 40, stroke: ink }),
      'runs through',
    ],
    ['ink at the edge', said({ kind: 'line', x1: 3, y1: 20, x2: 30, y2: 20, stroke: ink }), 'outer 4 mm'],
  ])('%s', (_what, document, words) => {
    expect(pageFaults(document, measure).join()).toContain(words);
  });
});
