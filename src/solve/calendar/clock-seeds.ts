/** Changes of the clocks: what to turn and what to leave alone. */
import { epochDay } from '../../basics/calendar-day.ts';
import { wallChanges } from '../../plan/clock-changes.ts';
import { siteOffsets } from '../../plan/site-offsets.ts';
import { ALL_DAY, type CalendarParts, type CalendarWords, type EventSeed } from './event-seed.ts';
import type { Roster } from './on-duty.ts';

/** Returns one event a clock change within the plan, where there is a timer to turn or to leave alone. */
export function clockSeeds(parts: CalendarParts, words: CalendarWords, roster: Roster): readonly EventSeed[] {
  const turned = parts.hardware.filter(({ clock }) => clock === 'wall').map(({ id }) => id);
  const left = parts.hardware.filter(({ clock }) => clock === 'standard' || clock === 'automatic').map(({ id }) => id);
  if (turned.length + left.length === 0) return [];
  const changes = wallChanges(siteOffsets(parts), epochDay(parts.from), epochDay(parts.to));
  return changes.map(({ date, direction, minutes }) => {
    const { day, who } = roster.turnOf('turn-dial', turned[0] ?? '', epochDay(date));
    const jobs = roster.titlesOn('turn-dial', day);
    return {
      ...ALL_DAY,
      days: [day],
      title: words.inOrder([
        (direction === 'forward' ? words.clocksForward : words.clocksBack)(words.minutes(minutes)),
        ...(turned.length > 0 ? [words.turn(words.list(turned))] : []),
        ...(left.length > 0 ? [words.leave(words.list(left))] : []),
      ]),
      description: [
        ...(jobs.length > 0 || turned.length === 0 ? jobs : [words.turnHow]),
        ...(left.length > 0 ? [words.leaveWhy] : []),
      ],
      category: 'clock',
      for: who,
      kind: 'clock-change',
      task: 'clocks',
    };
  });
}
