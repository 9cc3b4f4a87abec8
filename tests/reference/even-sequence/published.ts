/**
 * Published and computed values of balanced sequences. `opened`: the source was read; `computed`: two independent programs agree.
 */
/** Least worst prefix deviation and least sum of squares of small demands, as fractions. */
export const PREFIX_SOURCE =
  'product rate variation: Miltenburg J. (1989) Management Science 35:192-207; Steiner G., Yeomans S. (1993) Management Science 39:728-735; Kubiak W. (2003) J. Global Optimization 27:333-347';
export const PREFIX_PROVENANCE = 'statement of the problem opened; optima computed by an exhaustive exact program';
export const PREFIX_OPTIMA: readonly {
  readonly demands: readonly number[];
  readonly worst: readonly [number, number];
  readonly squares: readonly [number, number];
}[] = [
  { demands: [2, 1], worst: [1, 3], squares: [4, 9] },
  { demands: [3, 1], worst: [1, 2], squares: [3, 4] },
  { demands: [3, 2], worst: [2, 5], squares: [4, 5] },
  { demands: [4, 3], worst: [3, 7], squares: [8, 7] },
  { demands: [5, 2], worst: [3, 7], squares: [8, 7] },
  { demands: [6, 1], worst: [3, 7], squares: [8, 7] },
  { demands: [2, 1, 1], worst: [1, 2], squares: [5, 4] },
  { demands: [3, 2, 2], worst: [4, 7], squares: [16, 7] },
  { demands: [5, 1, 1], worst: [4, 7], squares: [16, 7] },
  { demands: [3, 3, 1], worst: [5, 7], squares: [18, 7] },
  { demands: [4, 3, 2], worst: [5, 9], squares: [64, 27] },
  { demands: [10, 3, 1], worst: [5, 7], squares: [61, 14] },
  { demands: [3, 1, 1, 2], worst: [4, 7], squares: [20, 7] },
  { demands: [8, 4, 2, 1], worst: [7, 15], squares: [224, 45] },
];

/** Rhythms with the most even gaps, `x` an onset; equal up to rotation. Gaps are n/k rounded down or up, with n mod k of the longer. */
export const RHYTHM_SOURCE =
  'Toussaint G. (2005) Bridges Banff 47-56; Demaine E. et al. (2009) Computational Geometry 42:429-454';
export const RHYTHM_PROVENANCE = 'E(3,8) and E(5,13) opened; the others computed';
export const RHYTHMS: readonly { readonly onsets: number; readonly places: number; readonly pattern: string }[] = [
  { onsets: 3, places: 8, pattern: 'x..x..x.' },
  { onsets: 5, places: 13, pattern: 'x..x.x..x.x..' },
  { onsets: 4, places: 7, pattern: 'x.x.x.x' },
  { onsets: 5, places: 7, pattern: 'x.xx.xx' },
  { onsets: 5, places: 8, pattern: 'x.xx.xx.' },
  { onsets: 5, places: 9, pattern: 'x.x.x.x.x' },
  { onsets: 4, places: 11, pattern: 'x..x..x..x.' },
  { onsets: 5, places: 12, pattern: 'x..x.x..x.x.' },
  { onsets: 7, places: 12, pattern: 'x.xx.x.xx.x.' },
  { onsets: 4, places: 14, pattern: 'x...x..x...x..' },
  { onsets: 5, places: 14, pattern: 'x..x..x..x..x.' },
  { onsets: 9, places: 14, pattern: 'x.xx.xx.xx.xx.' },
  { onsets: 5, places: 16, pattern: 'x..x..x..x..x...' },
  { onsets: 7, places: 16, pattern: 'x..x.x.x..x.x.x.' },
  { onsets: 6, places: 28, pattern: 'x....x...x....x....x...x....' },
  { onsets: 8, places: 30, pattern: 'x...x..x...x...x...x..x...x...' },
];
