import { drawings } from '../../src/emit/svg/drawings.ts';
import { examplePlan } from './compiled-example.ts';
import { atMost, median, onceMs, type Table } from './figures.ts';

const ROUNDS = 25;

/** All drawings of the example: the rings of its dials, the year of each dial, the day of each enclosure. */
export async function run(): Promise<readonly Table[]> {
  const plan = examplePlan('reading-room.yaml');
  const firstMs = await onceMs(() => drawings(plan));
  const files = drawings(plan);
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round++) times.push(await onceMs(() => drawings(plan)));
  const bytes = files.reduce((sum, { content }) => sum + Buffer.byteLength(content), 0);
  return [
    {
      name: 'Pictures of the example',
      rows: [
        ['drawings', files.length, ''],
        ['bytes', bytes, ''],
        ['first in a process', firstMs.toFixed(1), 'ms'],
        ['median of the next', median(times).toFixed(1), 'ms'],
      ],
      targets: [atMost(`the ${files.length} pictures of the example, first in a process`, firstMs, 50, 'ms')],
    },
  ];
}
