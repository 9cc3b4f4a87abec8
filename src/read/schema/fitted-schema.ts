/** What a gauge log told of the air of each enclosure, as it stands beside the household file. */
import { type Field, named, optional, record } from '../field.ts';
import type { FittedTree, ReadFittedAir, ReadInterval } from '../fitted-tree.ts';
import { bareNumber, count, date, id, percent, quantity, text } from '../values.ts';
import { format } from './format.ts';

export const fitted: Field<FittedTree> = record(
  { format: format(), fitted: named(id('fern'), air()) },
  { fitted: 'by the id of the enclosure' },
);

function air(): Field<ReadFittedAir> {
  return record(
    {
      readings: text('fern.csv'),
      from: date,
      to: date,
      count: count(1, 100_000_000, '1934'),
      residual: percent('2.9 %'),
      shape: text('5d41402abc4b2a76b9719d911017c592'),
      log: text('7d793037a0760186574b0282f2f435e7'),
      changes_per_hour: optional(
        interval(bareNumber({ above: 0, most: 1000, words: 'more than 0 and at most 1000' }, '7')),
      ),
      base_evaporation: optional(
        interval(quantity('flow', { least: 0, most: 100_000, words: '0 g/h or more' }, '6 g/h')),
      ),
      transfer: optional(interval(quantity('speed', { above: 0, most: 1000, words: 'more than 0 m/h' }))),
    },
    {
      readings: 'the log that it was fitted to',
      residual: 'spread of the readings about the model',
      shape: 'stands for size, mesh, planting and floor as they were',
      log: "stands for the log's bytes",
      changes_per_hour: 'air changes an hour',
      base_evaporation: 'from plants, soil and dish',
      transfer: 'how fast a wet surface gives its water off',
    },
  );
}

/** The best value between the ends of its 95 % interval. */
function interval(value: Field<number>): Field<ReadInterval> {
  return record({ best: value, low: value, high: value });
}
