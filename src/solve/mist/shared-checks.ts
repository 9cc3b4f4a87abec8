/** What a pump's enclosures must agree in, and what keeps an animal off a shared pump. */
import { isoDateOf } from '../../basics/calendar-day.ts';
import { spanWords } from '../../basics/span-words.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { Care } from '../../resolve/care.ts';
import type { MistUnit } from './mist-unit.ts';

/** Reports enclosures of one pump that differ in rhythm, and those in quarantine or ill. */
export function reportShared(care: Care, { pump, members }: MistUnit, log: Log): void {
  if (!pump || members.length < 2) return;
  const favours = members.map(({ enclosure }) => favourOf(enclosure));
  const [first, ...others] = members;
  const other = others.find((_, index) => favours[index + 1] !== favours[0]);
  if (first && other)
    log.report(
      'favour-differs',
      {
        pump: pump.id,
        first: first.enclosure.id,
        favour: favours[0] ?? '',
        other: other.enclosure.id,
        otherFavour: favourOf(other.enclosure),
      },
      care.placeOf([...other.enclosure.path, 'mist']),
    );
  for (const { enclosure } of members)
    for (const { is, from, to, path } of enclosure.states)
      if ((is === 'quarantine' || is === 'ill') && to >= care.plan.from && from < care.plan.from + care.plan.days)
        log.report(
          'shared-while-ill',
          { pump: pump.id, enclosure: enclosure.id, state: is, from: isoDateOf(from), to: isoDateOf(to) },
          care.placeOf(path),
        );
}

function favourOf({ targets, activity }: MistUnit['members'][number]['enclosure']): string {
  const { misting } = targets;
  const said = misting && misting !== 'none' ? misting.favour : null;
  return said ?? (activity === 'diurnal' ? 'dawn-and-dusk' : 'dusk');
}

/** Returns whether a pump's rest leaves no room for a run a day, and reports it. */
export function restsTooLong(care: Care, { id, path, restSeconds }: NonNullable<MistUnit['pump']>, log: Log): boolean {
  if (restSeconds < 86_400) return false;
  log.report('rest-outlasts-day', { pump: id, rest: spanWords(restSeconds / 60) }, care.placeOf([...path, 'rest']));
  return true;
}
