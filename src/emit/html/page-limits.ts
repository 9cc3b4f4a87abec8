/** When to act and whom to call: each animal's limits and the telephone numbers, first on the page as on the door. */
import { dayView } from '../../plan/day-view.ts';
import { watchWords } from '../../plan/phrases/watch-words.ts';
import type { IsoDate, Plan } from '../../plan/plan.ts';
import type { Words } from '../../plan/words/words.ts';
import { html, list, type Markup, NOTHING } from './markup.ts';

/** Returns the section of limits and numbers as they hold on a date. */
export function limitsSection(plan: Plan, today: IsoDate, told: Words): Markup {
  const items = dayView(plan, today, null).watch.map((watch) => {
    const { states, normal, act } = watchWords(watch, plan.units, told);
    return { name: watch.name, lines: [...(act === '' ? [] : [act]), ...normal, ...states] };
  });
  const shown = items.filter(({ lines }) => lines.length > 0);
  return html`<section aria-labelledby="act"><h2 id="act">${told.web.actIf}</h2>
${shown.length === 0 ? html`<p>${told.web.noLimits}</p>` : NOTHING}
${shown.map(({ name, lines }) => html`<h3>${name}</h3>${list(lines.map(told.shelf.capital))}`)}
${contactsOf(plan, told)}
</section>`;
}

function contactsOf({ contacts }: Plan, told: Words): Markup {
  const { keeper, vet, note } = contacts;
  const numbers = [
    ['keeper', keeper],
    ['vet', vet],
  ].flatMap(([who, number]) => (number === undefined ? [] : [contact(told.web.contact[who ?? ''] ?? '', number)]));
  const lines = [...numbers, ...(note === undefined ? [] : [html`${note}`])];
  return lines.length === 0 ? NOTHING : html`<h3>${told.web.call}</h3>${list(lines)}`;
}

/** A telephone number within the text can be dialled. */
function contact(who: string, text: string): Markup {
  const [number] = /\+?\d[\d ().-]{4,}\d/.exec(text) ?? [];
  if (number === undefined) return html`${who}: ${text}`;
  const [before, after] = [text.slice(0, text.indexOf(number)), text.slice(text.indexOf(number) + number.length)];
  return html`${who}: ${before}<a href="tel:${number.replace(/[^+\d]/g, '')}">${number}</a>${after}`;
}
