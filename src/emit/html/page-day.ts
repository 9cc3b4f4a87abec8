/** Today and the coming week: machines and people by the clock. */

import { clockTimeOf, DAY_MINUTES, minuteOf } from '../../basics/minute-of-day.ts';
import { type DayView, datesFrom, dayView } from '../../plan/day-view.ts';
import type { PersonDay } from '../../plan/people-day.ts';
import { dateInWords } from '../../plan/phrases/date-words.ts';
import { feedWords, gutLoadWords } from '../../plan/phrases/feed-words.ts';
import { noticeWords } from '../../plan/phrases/notice-words.ts';
import type { IsoDate, Plan } from '../../plan/plan.ts';
import { runLength } from '../../plan/words/run-length.ts';
import type { Words } from '../../plan/words/words.ts';
import { html, list, type Markup, NOTHING } from './markup.ts';

const DAYS = 7;

interface Timed {
  readonly at: string;
  readonly what: string;
}

/** Returns the section of today: what the machines do and what people do. */
export function todaySection(plan: Plan, today: IsoDate, told: Words): Markup {
  const view = dayView(plan, today, null);
  const machines = machineTimes(view, told);
  return html`<section aria-labelledby="today"><h2 id="today">${told.web.today}: ${dateInWords(today, told)}</h2>
${notices(view, told)}
<h3>${told.web.people}</h3>
${peopleOf(view, told)}
<h3>${told.web.machines}</h3>
${machines.length === 0 ? html`<p>${told.web.noMachines}</p>` : clockList(machines)}
</section>`;
}

/** Returns the section of the seven days after today. */
export function weekSection(plan: Plan, today: IsoDate, told: Words): Markup {
  const [before, ...days] = datesFrom(today, DAYS + 1).map((date) => dayView(plan, date, null));
  if (!before) return NOTHING;
  const shown = days.map((view, index) => dayOfWeek(view, days[index - 1] ?? before, told));
  return html`<section aria-labelledby="week"><h2 id="week">${told.web.week}</h2>
${shown}
</section>`;
}

function dayOfWeek(view: DayView, before: DayView, told: Words): Markup {
  const times = machineTimes(view, told);
  const isSame = JSON.stringify(times) === JSON.stringify(machineTimes(before, told));
  const machines = isSame ? html`<p class="soft">${told.today.machinesAsBefore}.</p>` : clockList(times);
  return html`<h3>${dateInWords(view.date, told)}</h3>
${notices(view, told)}
${peopleOf(view, told)}
${times.length === 0 ? NOTHING : machines}
`;
}

/** Absences, changed clocks and dials to be set. */
function notices(view: DayView, told: Words): Markup {
  return list([...noticeWords(view, told), ...dialWords(view, told)]);
}

function dialWords({ lights }: DayView, told: Words): readonly string[] {
  return lights.filter(({ changesToday }) => changesToday).map(({ device }) => `${told.web.setToday}: ${device}`);
}

function machineTimes({ switches, mists }: DayView, told: Words): readonly Timed[] {
  const { today, shelf } = told;
  return [
    ...switches.map(({ at, goes, device, driven }) => ({
      at,
      what: today.lightGoes(device, today.goes[goes], shelf.list(driven)),
    })),
    ...mists.map(({ at, pump, names, seconds }) => ({
      at,
      what: today.mists(pump, shelf.list(names), runLength(seconds)),
    })),
  ].toSorted((a, b) => minuteOf(a.at) - minuteOf(b.at));
}

function peopleOf({ people, date }: DayView, told: Words): Markup {
  if (people.length === 0) return html`<p>${told.today.nobody}.</p>`;
  return html`${people.map((person) => onePerson(person, date, told))}`;
}

function onePerson(person: PersonDay, date: IsoDate, told: Words): Markup {
  const { today } = told;
  const timed = [
    ...person.feeds.map((feed) => ({ at: feed.feed.time, what: feedWords(feed, told) })),
    ...person.mists.map(({ at, name, seconds }) => ({ at, what: today.mistByHand(name, runLength(seconds)) })),
  ].toSorted((a, b) => minuteOf(a.at) - minuteOf(b.at));
  const bought = person.shopping.map(({ amount, feeder }) => `${amount} × ${feeder}`);
  const anyTime = [
    ...person.chores.map(({ names, title }) => today.chore(told.shelf.list(names), title)),
    ...person.gutLoads.map((load) => gutLoadWords(load, date, told)),
    ...(bought.length > 0 ? [today.buy(told.shelf.list(bought))] : []),
  ];
  return html`<h4>${today.person(person.person, person.minutes)}</h4>
${clockList(timed)}${list(anyTime)}`;
}

function clockList(times: readonly Timed[]): Markup {
  if (times.length === 0) return NOTHING;
  return html`<ol class="clock">${times.map(({ at, what }) => html`<li><b>${shownTime(at)}</b>${what}</li>`)}</ol>`;
}

/** The end of a day is the beginning of the next. */
function shownTime(at: string): string {
  return minuteOf(at) === DAY_MINUTES ? clockTimeOf(0) : at;
}
