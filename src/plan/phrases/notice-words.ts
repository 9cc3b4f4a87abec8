/** What is out of the ordinary on a day: nobody at home, clocks that change. */
import { spanWords } from '../../basics/span-words.ts';
import type { DayView } from '../day-view.ts';
import type { Words } from '../words/words.ts';
import { dateInWords } from './date-words.ts';

/** Returns whether the household is away and who comes, then what the clocks do; nothing on an ordinary day. */
export function noticeWords(view: DayView, told: Words): readonly string[] {
  return [...absenceWords(view, told), ...clockChangeWords(view, told)];
}

function absenceWords({ absence, date }: DayView, told: Words): readonly string[] {
  if (!absence) return [];
  const { to, sitter, comesToday, comesNext } = absence;
  const comes =
    sitter === '' || (!comesToday && comesNext === null)
      ? told.today.nobodyComes
      : comesToday
        ? told.today.sitterComes(sitter)
        : told.today.sitterComesNext(sitter, dateInWords(comesNext ?? date, told));
  return [`${told.today.away(dateInWords(to, told))}; ${comes}`];
}

function clockChangeWords({ clockChange }: DayView, { today, shelf }: Words): readonly string[] {
  if (!clockChange) return [];
  const by = spanWords(clockChange.minutes);
  const line = clockChange.direction === 'forward' ? today.clocksForward(by) : today.clocksBack(by);
  return [clockChange.leave.length > 0 ? `${line}; ${today.leave(shelf.list(clockChange.leave))}` : line];
}
