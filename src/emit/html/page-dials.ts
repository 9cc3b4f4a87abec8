/** The dials in the order of the shelf: as each should stand now beside its next change, then its year. */
import { epochDay } from '../../basics/calendar-day.ts';
import { screenRing } from '../../layout/screen-ring.ts';
import { yearChart } from '../../layout/year-chart.ts';
import { settingOn } from '../../plan/dial-day.ts';
import { dateInWords, plainDate } from '../../plan/phrases/date-words.ts';
import { loadName } from '../../plan/phrases/load-words.ts';
import { joinedOverMidnight, pinsToChange, pinsToSet, windowsInWords } from '../../plan/phrases/pin-words.ts';
import { spansThatRead } from '../../plan/phrases/spans-that-read.ts';
import type { DialPlan, DialSetting, IsoDate, Plan } from '../../plan/plan.ts';
import { pumpsBesideLamps } from '../../plan/pumps-beside-lamps.ts';
import type { Words } from '../../plan/words/words.ts';
import { html, list, type Markup, NOTHING } from './markup.ts';
import { drawn, drawsWithin, fileLink, wideChart } from './page-drawings.ts';
import type { PageLook } from './page-look.ts';

/** Returns the section of all timers that drive lamps; nothing where there is none. */
export function dialsSection(plan: Plan, look: PageLook, told: Words): Markup {
  const dials = plan.lighting.filter(({ settings }) => settings.length > 0);
  const left = plan.notPlanned.map(({ lamp, why }) =>
    told.shelf.leftOut(loadName(plan, `lamp:${lamp}`), told.shelf.why(why)),
  );
  if (dials.length + left.length === 0) return NOTHING;
  return html`<section aria-labelledby="dials"><h2 id="dials">${told.web.dials}</h2>
${dials.map((dial) => oneDial(plan, dial, look, told))}
${left.length === 0 ? NOTHING : html`<h3>${told.web.notPlanned}</h3>${list(left)}`}
</section>`;
}

function oneDial(plan: Plan, dial: DialPlan, look: PageLook, told: Words): Markup {
  const { today } = look;
  const isDrawn = dial.pins !== null && drawsWithin(plan);
  const stands = settingOn(dial, today) ?? dial.settings[0];
  if (!stands) return NOTHING;
  const next = dial.settings.find(({ from }) => from > stands.from && from > today) ?? null;
  return html`<h3>${dial.device}</h3>
<p>${aboutDial(plan, dial, told).join(' ')}</p>
<div class="rings">
${nowFigure(dial, stands, today, isDrawn, told)}
${next ? nextFigure(dial, stands, next, today, isDrawn, told) : html`<p>${told.shelf.noChanges}</p>`}
</div>
${yearOf(plan, dial, look, told)}
`;
}

function aboutDial(plan: Plan, dial: DialPlan, { shelf }: Words): readonly string[] {
  const step = shelf.span(0, dial.stepMinutes);
  const kind = dial.pins === null ? shelf.timer : dial.turnsInDays === 7 ? shelf.weekDial(step) : shelf.dial(step);
  const where = plan.hardware.find(({ id }) => id === dial.device)?.where ?? null;
  const out = pumpsBesideLamps(plan, dial);
  const driven = dial.drives.filter((name) => !out.some((id) => name === `device:${id}`));
  return [
    kind,
    ...(dial.pins === null ? [] : [dial.pins === 'down-is-on' ? shelf.pinsDown : shelf.pinsUp]),
    shelf.clock[dial.clock],
    ...(where === null ? [] : [shelf.where(where)]),
    ...(dial.drives.length === 0 ? [] : [shelf.drives(shelf.list(driven.map((load) => loadName(plan, load))))]),
    ...(out.length === 0 ? [] : [shelf.pumpOut(shelf.list(out))]),
  ];
}

function nowFigure(dial: DialPlan, stands: DialSetting, today: IsoDate, isDrawn: boolean, told: Words): Markup {
  const { web, shelf } = told;
  const windows = windowsInWords(stands.windows, shelf);
  const said = { title: web.stands(dial.device), description: web.ringNow(windows) };
  return html`<figure><figcaption>${web.now}: ${windows}</figcaption>
${isDrawn ? drawn(screenRing(dial, stands, null, said), `${dial.device}-now-`) : NOTHING}
${list(dial.pins === null ? [entries(stands, told)] : [...pinsToSet(dial, stands.slots, shelf), ...wallWords(dial, stands, today, told)])}</figure>`;
}

function nextFigure(
  dial: DialPlan,
  stands: DialSetting,
  next: DialSetting,
  today: IsoDate,
  isDrawn: boolean,
  told: Words,
): Markup {
  const { web, shelf } = told;
  const date = dateInWords(next.from, told);
  const windows = windowsInWords(next.windows, shelf);
  const moves = shelf.capital(pinsToChange(dial, stands.slots, next.slots, shelf));
  const said = { title: web.changes(dial.device, date), description: web.ringNext(windows, moves) };
  return html`<figure><figcaption>${web.next(date, epochDay(next.from) - epochDay(today))}: ${windows}</figcaption>
${isDrawn ? drawn(screenRing(dial, next, stands, said), `${dial.device}-next-`) : NOTHING}
${list(dial.pins === null ? [entries(next, told)] : [shelf.sentence(moves), ...wallWords(dial, next, today, told)])}</figure>`;
}

function entries({ windows }: DialSetting, { shelf }: Words): string {
  if (windows.length === 0) return shelf.isThen(shelf.offAllDay);
  return shelf.keyIn(shelf.also(joinedOverMidnight(windows).map(({ on, off }) => shelf.window(on, off))));
}

/** Wall time where the clock on the wall is not the dial's, from a date on. */
function wallWords(
  { clock }: DialPlan,
  { windows, wall }: DialSetting,
  date: IsoDate,
  { shelf }: Words,
): readonly string[] {
  if (clock !== 'standard') return [];
  const own = windowsInWords(windows, shelf);
  return spansThatRead(wall, date, (span) => windowsInWords(span.windows, shelf))
    .filter(({ reads }) => reads !== own)
    .map(({ from, to, reads }) => shelf.wallThen(reads, plainDate(from, shelf), plainDate(to, shelf)));
}

function yearOf(plan: Plan, dial: DialPlan, look: PageLook, told: Words): Markup {
  const { web, shelf } = told;
  const minutes = (value: number): string => shelf.span(Math.floor(Math.round(value) / 60), Math.round(value) % 60);
  const settings = dial.settings.map(({ from, to, windows, worstErrorMinutes }) =>
    web.setting(
      plainDate(from, shelf),
      plainDate(to, shelf),
      windowsInWords(windows, shelf),
      minutes(worstErrorMinutes),
    ),
  );
  const label = web.yearScroll(dial.device);
  const hasChart = dial.targetMinutes.length > 0;
  return html`<h4>${web.year}</h4>
${hasChart && drawsWithin(plan) ? wideChart(yearChart(plan, dial, told.pictures), `${dial.device}-year-`, label) : NOTHING}
${drawsWithin(plan) ? NOTHING : [fileLink([`dials/${dial.device}.svg`], look, told), fileLink([`charts/${dial.device}.svg`], look, told)]}
${hasChart ? html`<p>${shelf.worst(minutes(dial.worstErrorMinutes), minutes(dial.meanErrorMinutes))}</p>` : NOTHING}
<details><summary>${web.yearSettings}</summary>${list(settings)}</details>`;
}
