/**
 * Sizes against what is known of reading.
 * Legge GE, Bigelow CA (2011) Does print size matter for reading? J. Vision 11(5):8: an x-height of 0.2 degrees of visual angle is the
 * least for fluent reading (memory). RNIB Clear Print: 12 pt at least, large print 16 pt at least (memory).
 */
import { describe, expect, it } from 'vitest';
import { fontSet, measureOf } from '../../../src/emit/pdf/fonts.ts';
import { floorOf, LARGE_PRINT, ROLES, sizePtOf } from '../../../src/layout/page-style.ts';

const LEAST_DEGREES = 0.2;
const CLEAR_PRINT_PT = 12;
const LARGE_PRINT_PT = 16;
const MM_PER_PT = 25.4 / 72;
const measure = measureOf(fontSet());

function degrees(sizePt: number, distanceCm: number): number {
  const xHeightMm = measure.xHeightEm * sizePt * MM_PER_PT;
  return (2 * Math.atan(xHeightMm / 2 / (distanceCm * 10)) * 180) / Math.PI;
}

describe('the size of each role', () => {
  it.each(ROLES.map((role) => [role] as const))('%s can be read from where it is read', (role) => {
    const { sizePt, distanceCm } = floorOf(role);
    expect(degrees(sizePt, distanceCm)).toBeGreaterThanOrEqual(LEAST_DEGREES);
  });

  it('fails where it is a tenth smaller, so that the check tells sizes apart', () => {
    expect(degrees(floorOf('text').sizePt * 0.9, 60)).toBeLessThan(LEAST_DEGREES);
  });

  it('has jobs and headings at Clear Print, and all that is done at large print where that is asked for', () => {
    for (const role of ['job', 'heading', 'emergency', 'title'] as const)
      expect(floorOf(role).sizePt).toBeGreaterThanOrEqual(CLEAR_PRINT_PT);
    for (const role of ['job', 'heading', 'emergency', 'title', 'text'] as const)
      expect(sizePtOf(role, { scale: LARGE_PRINT })).toBeGreaterThanOrEqual(LARGE_PRINT_PT);
  });

  it('has only what tells when a page is stale, and what hangs beside a timer, below 9 pt', () => {
    expect(ROLES.filter((role) => floorOf(role).sizePt < 9)).toEqual(['dial-numeral', 'card', 'footer']);
  });
});
