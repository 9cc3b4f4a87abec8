/** Dates and spans in order. */
import { isoDateOf } from '../basics/calendar-day.ts';
import type { Findings, RawPart } from './raw-file.ts';
import { checkTargets } from './target-checks.ts';

/** Finds dates and spans that run backwards, rests that are too short, and targets whose ends are swapped. */
export function checkDates(root: RawPart, findings: Findings): void {
  for (const span of [...root.at('away').items, ...root.at('shortage').items]) inOrder(span, findings);
  for (const enclosure of root.at('enclosures').items) {
    for (const state of enclosure.at('states').items) inOrder(state, findings);
    ascending(
      enclosure.at('stage').items.map((stage) => stage.at('from')),
      findings,
    );
    checkRest(enclosure.at('rest'), findings);
    checkTargets(enclosure.at('targets'), findings);
    checkTargets(enclosure.at('rest').at('targets'), findings);
  }
}

function inOrder(span: RawPart, findings: Findings): void {
  const [from, to] = [span.at('from').date, span.at('to').date];
  if (from === null || to === null || from <= to) return;
  findings.say('span-order', { from: isoDateOf(from), to: isoDateOf(to) }, span.at('to').path);
}

function ascending(dates: readonly RawPart[], findings: Findings): void {
  dates.forEach((part, index) => {
    const [date, before] = [part.date, dates[index - 1]?.date ?? null];
    if (date === null || before === null || date > before) return;
    findings.say('dates-out-of-order', { date: isoDateOf(date), before: isoDateOf(before) }, part.path);
  });
}

const WEEK_SECONDS = 604_800;

function checkRest(rest: RawPart, findings: Findings): void {
  const weeks = rest.at('weeks').number;
  const rampWeeks = (rest.at('ramp').quantity('time') ?? 0) / WEEK_SECONDS;
  if (weeks === null || 2 * rampWeeks <= weeks) return;
  findings.say('rest-too-short', { weeks, rampWeeks: String(Math.round(rampWeeks * 10) / 10) }, rest.at('ramp').path);
}
