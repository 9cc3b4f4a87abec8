/** New settings of the pin dials: the title says what to push and to lift. */
import { epochDay } from '../../basics/calendar-day.ts';
import { dialTasks } from '../../plan/dial-day.ts';
import type { DialPlan } from '../../plan/plan.ts';
import { ALL_DAY, type CalendarParts, type CalendarWords, type EventSeed } from './event-seed.ts';
import type { Roster } from './on-duty.ts';
import { pinWords, settingWords } from './pin-words.ts';

/** Returns the events of every change of a dial, for whoever has the chore of it. */
export function dialSeeds(parts: CalendarParts, words: CalendarWords, roster: Roster): readonly EventSeed[] {
  return parts.lighting.flatMap((dial) => dialChanges(dial, words, roster));
}

function dialChanges(dial: DialPlan, words: CalendarWords, roster: Roster): readonly EventSeed[] {
  return dialTasks(dial).map(({ date, before, setting }) => {
    const { day, who } = roster.turnOf('re-pin', dial.device, epochDay(date));
    return {
      ...ALL_DAY,
      days: [day],
      title: words.setDevice(dial.device, pinWords(dial, before?.slots ?? null, setting.slots, words)),
      description: [
        settingWords(dial.device, setting, words),
        words.dialClock[dial.clock],
        ...roster.titlesOn('change-sheet', day),
      ],
      category: 'lighting',
      for: who,
      kind: 'lighting',
      task: `dial/${dial.device}`,
    };
  });
}
