import { describe, expect, it } from 'vitest';
import { labelRows } from '../../../src/layout/label-rows.ts';

const at = (...places: readonly number[]) => places.map((xMm) => ({ xMm, text: '24 Oct' }));

describe('labels above a chart', () => {
  it('stand side by side where they fit', () => {
    expect(labelRows(at(0, 12, 24), 7.5, 2)).toEqual([0, 0, 0]);
  });

  it('rise a row where they would touch, and come down again', () => {
    expect(labelRows(at(0, 6, 12, 18), 7.5, 2)).toEqual([0, 1, 0, 1]);
    expect(labelRows(at(0, 6, 30), 7.5, 2)).toEqual([0, 1, 0]);
  });

  it('take the row whose last label is farthest where none has room', () => {
    expect(labelRows(at(0, 3, 6), 7.5, 2)).toEqual([0, 1, 0]);
  });
});
