/** Mist entries beside the timer, tanks and bowls. */

import { epochDay } from '../../basics/calendar-day.ts';
import { dateInWords } from '../../plan/phrases/date-words.ts';
import type { IsoDate, MistPlan, MistSet, Plan, PlanDevice, UnitSystem } from '../../plan/plan.ts';
import { runLength } from '../../plan/words/run-length.ts';
import type { Words } from '../../plan/words/words.ts';
import { html, list, type Markup, NOTHING } from './markup.ts';

/** Returns the section of what is keyed into each mist timer; nothing where nothing is misted. */
export function waterSection(plan: Plan, today: IsoDate, told: Words): Markup {
  const timers = [...new Set(plan.misting.flatMap(({ device, pump }) => (pump === null ? [] : [device ?? pump])))];
  const tanks = plan.hardware.filter(({ tank }) => tank !== undefined);
  if (timers.length === 0) return tanksSection(plan, tanks, today, told);
  return html`<section aria-labelledby="water"><h2 id="water">${told.web.water}</h2>
${timers.map((timer) => oneTimer(plan, timer, today, told))}
</section>
${tanksSection(plan, tanks, today, told)}`;
}

function oneTimer(plan: Plan, timer: string, today: IsoDate, told: Words): Markup {
  const misting = plan.misting.filter(({ device, pump }) => (device ?? pump) === timer);
  const [first] = misting;
  if (!first) return NOTHING;
  const names = misting.map(({ enclosure }) => nameOf(plan, enclosure));
  const now = first.sets.find(({ from, to }) => from <= today && today <= to) ?? null;
  const next = first.sets.find(({ from }) => from > today) ?? null;
  const isByHand = timer === 'by-hand';
  const listed = told.shelf.list(names);
  return html`<h3>${isByHand ? told.web.byHand : timer}</h3>
<p>${isByHand ? told.web.mistedByHand(listed) : `${told.web.misted(listed)} ${told.shelf.clock[first.clock]}`}</p>
${now ? entriesOf(now, told) : html`<p>${told.web.noMist}</p>`}
${next ? nextEntries(next, today, told) : NOTHING}`;
}

function nameOf({ enclosures }: Plan, id: string): string {
  return enclosures.find((each) => each.id === id)?.name ?? id;
}

function entriesOf({ entries, interval }: MistSet, { web }: Words): Markup {
  if (interval) return html`<p>${web.interval(interval.onSeconds, interval.offSeconds)}</p>`;
  if (entries.length === 0) return html`<p>${web.noMist}</p>`;
  const items = entries.map(({ at, seconds }) => html`<li><b>${at}</b>${runLength(seconds)}</li>`);
  return html`<ol class="clock">${items}</ol>`;
}

function nextEntries(next: MistSet, today: IsoDate, told: Words): Markup {
  const inDays = epochDay(next.from) - epochDay(today);
  return html`<p>${told.web.next(dateInWords(next.from, told), inDays)}. ${told.web.entriesThen}:</p>
${entriesOf(next, told)}`;
}

function tanksSection(plan: Plan, tanks: readonly PlanDevice[], today: IsoDate, told: Words): Markup {
  const lines = tanks.flatMap((device) => tankLine(plan, device, today, told));
  if (lines.length === 0) return NOTHING;
  return html`<section aria-labelledby="tank"><h2 id="tank">${told.web.tank}</h2>${list(lines)}</section>`;
}

function tankLine(plan: Plan, { id, tank }: PlanDevice, today: IsoDate, told: Words): readonly string[] {
  if (!tank) return [];
  const { web } = told;
  const volume = (ml: number): string => volumeWords(ml, plan.units, told);
  const lasts = plan.misting.filter(({ pump }) => pump === id).flatMap((mist) => tankDays(mist, today))[0];
  return [
    [
      web.tankOf(id, volume(tank.holdsMl), volume(tank.reserveMl)),
      ...(lasts === undefined ? [] : [web.tankLasts(lasts)]),
      web.refill(tank.refillEveryDays),
    ].join('; '),
  ];
}

function tankDays({ sets }: MistPlan, today: IsoDate): readonly number[] {
  const conditions = sets.flatMap((set) => set.conditions).filter(({ from, to }) => from <= today && today <= to);
  return conditions.flatMap(({ predicted }) => (predicted.tankDays === null ? [] : [Math.floor(predicted.tankDays)]));
}

const ML_PER_GALLON = 3785.41;

function volumeWords(ml: number, units: UnitSystem, { web }: Words): string {
  return units === 'us'
    ? web.gallons(web.number((ml / ML_PER_GALLON).toFixed(1)))
    : web.litres(web.number(String(Number((ml / 1000).toFixed(1)))));
}
