/** What a state of the animal asks of a person: watched when new, ill or in quarantine, the shed checked, the laying place looked after. */
import type { AnimalState, CareEnclosure } from '../../resolve/care.ts';
import { LAYING_CHECK_DAYS } from './default-set.ts';
import type { Job } from './job.ts';
import { isOff, type JobContext, jobOf } from './job-context.ts';

/** Returns the jobs of an enclosure's states; how they are treated is the veterinarian's to say. */
export function stateJobs(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  return [
    ...noteHealth(context, enclosure),
    ...shedChecks(context, enclosure),
    ...layingChecks(context, enclosure),
  ].filter(({ kind }) => !isOff(enclosure, kind));
}

function spansOf({ states }: CareEnclosure, kinds: readonly AnimalState['is'][]) {
  return states.filter(({ is }) => kinds.includes(is)).map(({ from, to }) => ({ from, to }));
}

function noteHealth(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  const { words } = context;
  const apart = spansOf(enclosure, ['quarantine', 'ill']);
  const fresh = spansOf(enclosure, ['new']);
  const job = (name: string, title: string, during: Job['during']) =>
    jobOf(
      context,
      { id: `${enclosure.id}/${name}`, kind: 'note-health', title, enclosure: enclosure.id },
      { rhythm: { kind: 'days', every: 1 }, minutes: 2, during, source: 'practice' },
    );
  return [
    ...(fresh.length > 0 ? [job('note-health', words.noteHealth, fresh)] : []),
    ...(apart.length > 0 ? [job('note-health-last', words.noteHealthLast, apart)] : []),
  ];
}

function shedChecks(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  const ends = spansOf(enclosure, ['shedding']).map(({ to }) => to);
  if (ends.length === 0) return [];
  return [
    jobOf(
      context,
      { id: `${enclosure.id}/shed-check`, kind: 'shed-check', title: context.words.shedCheck, enclosure: enclosure.id },
      { rhythm: { kind: 'dates', dates: ends }, minutes: 3, whenAway: 'after', source: 'practice' },
    ),
  ];
}

function layingChecks(context: JobContext, enclosure: CareEnclosure): readonly Job[] {
  const during = spansOf(enclosure, ['gravid']);
  if (during.length === 0) return [];
  return [
    jobOf(
      context,
      {
        id: `${enclosure.id}/laying-place`,
        kind: 'laying-place',
        title: context.words.layingPlace,
        enclosure: enclosure.id,
      },
      { rhythm: { kind: 'days', every: LAYING_CHECK_DAYS }, minutes: 2, during, source: 'practice' },
    ),
  ];
}
