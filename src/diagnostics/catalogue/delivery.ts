import { wording } from '../diagnostic.ts';

export const delivery = {
  'title-cut': wording<{ readonly task: string; readonly length: number; readonly most: number }>(
    'falls short',
    'warning',
    ({ task, length, most }) => `the calendar title of ${task} has ${length} characters; ${most} are written`,
    () => 'give it a shorter title',
  ),
  'event-all-day': wording<{ readonly task: string; readonly time: string }>(
    'note',
    'note',
    ({ task, time }) =>
      `${task} at ${time} falls into the hours in which clocks change, where calendar programs disagree; it stands as all day, with ${time} in its title`,
    () => 'choose a time before 00:50 or from 03:00 on',
  ),
  'more-events': wording<{ readonly events: number; readonly atLeast: number }>(
    'note',
    'note',
    ({ events, atLeast }) =>
      `the calendar has ${events} recurring events; fewer than ${atLeast} cannot hold the same dates`,
    () => '',
  ),
};
