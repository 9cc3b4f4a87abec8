/** Prints a digest of the calendars of a few households: run under several process time zones, it must print the same. */
import { createHash } from 'node:crypto';
import { emitIcs } from '../../src/emit/ics/ics.ts';
import { generatedPlan } from './calendar-plan.ts';

for (const seed of [1, 2, 4]) {
  const plan = generatedPlan(seed);
  const text = plan.people.map(({ id }) => emitIcs(plan, id, 'import')).join('');
  const digest = createHash('sha256').update(JSON.stringify(plan.events)).update(text).digest('hex');
  console.log(
    `${process.argv[2] === 'zone' ? `${new Date(2027, 6, 1).getTimezoneOffset()} ` : ''}${plan.id} ${text.length} ${digest}`,
  );
}
