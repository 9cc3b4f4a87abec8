import { wording } from '../diagnostic.ts';

export const delivery = {
  'title-cut': wording<{ readonly task: string; readonly length: number; readonly most: number }>(
    'falls short',
    'warning',
    ({ task, length, most }) => `the calendar title of ${task} has ${length} characters; ${most} are written`,
    () => 'give it a shorter title',
  ),
  'event-all-day': wording<{
    readonly task: string;
    readonly time: string;
    readonly from: string;
    readonly to: string;
  }>(
    'note',
    'note',
    ({ task, time, from, to }) =>
      `${task} at ${time} touches ${from} to ${to}, where clocks change and calendar programs disagree; it stands as all day, with ${time} in its title`,
    ({ from, to }) => `choose a time that ends before ${from} or begins after ${to}`,
  ),
  'more-events': wording<{ readonly events: number; readonly atLeast: number }>(
    'note',
    'note',
    ({ events, atLeast }) =>
      `the calendar has ${events} recurring events; fewer than ${atLeast} cannot hold the same dates`,
    () => '',
  ),
};
