import { describe, expect, it } from 'vitest';
import { paintSvg } from '../../../src/emit/paint-svg.ts';
import { type FitPicture, fitChart } from '../../../src/layout/fit-chart.ts';
import { words } from '../../../src/plan/words/words.ts';

const curve = (low: number) =>
  Array.from({ length: 4 * 144 }, (_, i) => ({ x: 0.4 + 10 * i, y: low + 0.2 * Math.sin(i / 23) }));
const picture: FitPicture = {
  name: 'Fern',
  readings: curve(0.5),
  fitted: curve(0.51),
  estimated: curve(0.95),
  mists: [600, 2040, 5000],
  lit: [[480, 1140]],
  dates: ['5 Jan', '6 Jan', '7 Jan', '8 Jan', '9 Jan'],
  words: words('en').fit.picture,
};

describe('the picture of a fit', () => {
  const drawing = fitChart(picture);
  const texts = drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));

  it('labels every day of the log, the first too', () => {
    for (const date of picture.dates.slice(0, 4)) expect(texts).toContain(date);
  });

  it('marks each mist once above, and those of the last two days below', () => {
    const marks = drawing.shapes.filter((shape) => shape.kind === 'line' && Math.abs(shape.y1 - shape.y2) === 3);
    expect(marks).toHaveLength(picture.mists.length + 1 + 1);
  });

  it('keeps every dot and line inside its frame, what lies beyond on its edge', () => {
    for (const shape of drawing.shapes) {
      if (shape.kind === 'circle') expect(shape.y >= 16 && shape.y <= 142).toBe(true);
      if (shape.kind === 'path')
        for (const step of shape.steps) if (step.to !== 'close') expect(step.y >= 16 && step.y <= 126.001).toBe(true);
    }
  });

  it('says what it shows to whoever cannot see it', () => {
    expect(paintSvg(drawing)).toContain('<desc id="d">Relative humidity in Fern: 576 readings of the gauge');
  });
});
