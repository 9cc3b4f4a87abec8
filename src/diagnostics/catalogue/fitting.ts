/** What there is to say about gauge readings and what is fitted to them. */
import { wording } from '../diagnostic.ts';

export const fitting = {
  'fitted-for-another-shape': wording<{ enclosure: string }>(
    'note',
    'warning',
    ({ enclosure }) =>
      `${enclosure} has another size, mesh, planting or floor than when its air was fitted; the fitted values are left aside`,
    ({ enclosure }) => `log a week as it is now and fit again, or take ${enclosure} out of this file`,
  ),
  'fitted-enclosure-unknown': wording<{ id: string; nearest: string | null }>(
    'note',
    'warning',
    ({ id }) => `no enclosure of the household is called ${id}`,
    ({ id, nearest }) => (nearest === null ? `take ${id} out of this file` : `write ${nearest}, or take it out`),
  ),
};
