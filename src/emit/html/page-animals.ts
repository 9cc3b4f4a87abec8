/** The animals: what each needs, what its air is expected to do, and where the numbers come from. */
import { spanWords } from '../../basics/span-words.ts';
import { dayChart } from '../../layout/day-chart.ts';
import { adviceWords } from '../../plan/phrases/advice-words.ts';
import { plainDate } from '../../plan/phrases/date-words.ts';
import { watchWords } from '../../plan/phrases/watch-words.ts';
import type { IsoDate, MistCondition, MistPlan, Plan, PlanEnclosure } from '../../plan/plan.ts';
import { watchFor } from '../../plan/watch-for.ts';
import type { Words } from '../../plan/words/words.ts';
import { html, list, type Markup, NOTHING } from './markup.ts';
import { drawsWithin, fileLink, wideChart } from './page-drawings.ts';
import type { PageLook } from './page-look.ts';
import { numbersOf, uvWords } from './page-numbers.ts';

/** Returns the section of all enclosures, in the plan's order. */
export function animalsSection(plan: Plan, look: PageLook, told: Words): Markup {
  if (plan.enclosures.length === 0) return NOTHING;
  const same = firstWithSameNumbers(plan);
  return html`<section aria-labelledby="animals"><h2 id="animals">${told.web.animals}</h2>
${plan.enclosures.map((enclosure) => oneAnimal(plan, enclosure, same.get(enclosure.id) ?? enclosure, look, told))}
</section>`;
}

/** The enclosure whose numbers, with who said them, are the same, by id; itself where it is the first. */
function firstWithSameNumbers({ enclosures }: Plan): ReadonlyMap<string, PlanEnclosure> {
  const first = new Map<string, PlanEnclosure>();
  return new Map(
    enclosures.map((enclosure) => {
      const key = JSON.stringify([enclosure.targets, enclosure.stages.map(({ stage }) => stage)]);
      const found = first.get(key) ?? enclosure;
      first.set(key, found);
      return [enclosure.id, found];
    }),
  );
}

function oneAnimal(plan: Plan, enclosure: PlanEnclosure, same: PlanEnclosure, look: PageLook, told: Words): Markup {
  const { web, shelf } = told;
  const { today } = look;
  const watch = watchFor({ enclosures: [enclosure] }, today).map((each) => watchWords(each, plan.units, told));
  const needs = watch.flatMap(({ states, normal }) => [...states, ...normal]);
  const misting = plan.misting.find((mist) => mist.enclosure === enclosure.id);
  return html`<h3 id="${enclosure.id}-needs">${web.animal(enclosure.name, enclosure.speciesName)} <i lang="la">${enclosure.scientific}</i></h3>
${list([...needs.map(shelf.capital), ...uvWords(enclosure, told)])}
${misting ? airOf(plan, misting, today, told) : NOTHING}
${misting ? dayOf(plan, misting, look, told) : NOTHING}
${same === enclosure ? numbersOf(enclosure, plan.units, told) : html`<p><a href="#${same.id}-needs">${web.numbersAs(same.name)}</a></p>`}
`;
}

function airOf(plan: Plan, mist: MistPlan, today: IsoDate, told: Words): Markup {
  const { sets } = mist;
  const set = sets.find(({ from, to }) => from <= today && today <= to) ?? sets[0];
  const condition = set?.conditions.find(({ from, to }) => from <= today && today <= to) ?? set?.conditions[0];
  if (!condition) return NOTHING;
  const { web, shelf } = told;
  return html`<h4>${web.predicted(plainDate(condition.from, shelf), plainDate(condition.to, shelf))}</h4>
${list([airWords(plan, condition, told), ...adviceWords(plan, mist)])}`;
}

function dayOf(plan: Plan, misting: MistPlan, look: PageLook, told: Words): Markup {
  const { enclosure } = misting;
  if (!drawsWithin(plan)) return fileLink([`charts/${enclosure}-air.svg`, `charts/${enclosure}.svg`], look, told);
  const drawing = dayChart(plan, misting, look.today);
  const name = plan.enclosures.find(({ id }) => id === enclosure)?.name ?? enclosure;
  return drawing ? wideChart(drawing, `${enclosure}-day-`, told.web.dayScroll(name)) : NOTHING;
}

function airWords({ units }: Plan, { predicted }: MistCondition, { web, shelf }: Words): string {
  const { dayHumidity, nightHumidity, dryOutHours, waterMlPerDay } = predicted;
  const water =
    units === 'us'
      ? web.ounces(String(Math.round(waterMlPerDay / ML_PER_FLUID_OUNCE)))
      : web.millilitres(String(Math.round(waterMlPerDay)));
  const parts = [
    web.humidityIs(percent(dayHumidity), percent(nightHumidity)),
    web.driesOut(spanWords(Math.round(dryOutHours * 60))),
    web.waterIs(water),
  ];
  return shelf.capital(shelf.also(parts));
}

const ML_PER_FLUID_OUNCE = 29.5735;

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
