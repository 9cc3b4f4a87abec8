/** The page of a household: self-contained, without script, one column in the order of the shelf. */
import { dateInWords } from '../../plan/phrases/date-words.ts';
import type { Plan } from '../../plan/plan.ts';
import { type Words, words } from '../../plan/words/words.ts';
import { html, type Markup, NOTHING, trusted } from './markup.ts';
import { animalsSection } from './page-animals.ts';
import { todaySection, weekSection } from './page-day.ts';
import { dialsSection } from './page-dials.ts';
import { limitsSection } from './page-limits.ts';
import type { PageLook } from './page-look.ts';
import { cautionsSection, papersSection, warningsSection } from './page-papers.ts';
import { waterSection } from './page-water.ts';
import { STYLE, STYLE_HASH } from './style.ts';

/** What the page itself asks of a browser; a server says the same, and more, in its headers. */
const POLICY = `default-src 'none'; style-src '${STYLE_HASH}'; img-src 'self' data:; form-action 'self'; base-uri 'none'`;

/** Returns the page as it reads on `look.today`. */
export function pageHtml(plan: Plan, look: PageLook): string {
  const told = words(plan.language);
  const { web } = told;
  const title = web.title(plan.name);
  const { html: page } = html`<!doctype html>
<html lang="${plan.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${trusted(POLICY)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<meta name="robots" content="noindex">
<link rel="icon" href="data:,">
<title>${title}</title>
<style>${trusted(STYLE)}</style>
</head>
<body>
<a class="skip" href="#today">${web.skip}</a>
<header>
<h1>${plan.name}</h1>
${problem(plan, look, told)}
<p>${web.asOf(dateInWords(look.today, told))}${outside(plan, look, told)}</p>
${contents(plan, told)}
</header>
<main>
${limitsSection(plan, look.today, told)}
${todaySection(plan, look.today, told)}
${weekSection(plan, look.today, told)}
${dialsSection(plan, look, told)}
${waterSection(plan, look.today, told)}
${cautionsSection(plan, told)}
${animalsSection(plan, look, told)}
${papersSection(plan, look, told)}
${warningsSection(plan, told)}
</main>
<footer><p class="soft">${web.footer(dateInWords(plan.made, told), plan.revision, plan.tool)} ${web.replaceAfter(dateInWords(plan.to, told))}</p></footer>
</body>
</html>
`;
  return page;
}

function problem(plan: Plan, { served }: PageLook, told: Words): Markup {
  if (served === null || served.problem === null) return NOTHING;
  return html`<div class="alarm" role="alert"><p><strong>${told.web.cannotUse}.</strong> ${told.web.lastGood(dateInWords(plan.made, told))}</p>
<pre>${lines(served.problem)}</pre></div>`;
}

function lines(text: string): readonly Markup[] {
  return text.split('\n').map(
    (line) => html`${line}
`,
  );
}

function outside(plan: Plan, { today }: PageLook, told: Words): string {
  if (plan.from <= today && today <= plan.to) return '';
  return ` ${told.web.outside(dateInWords(plan.from, told), dateInWords(plan.to, told))}`;
}

function contents(plan: Plan, { web }: Words): Markup {
  const hasDials = plan.lighting.some(({ settings }) => settings.length > 0) || plan.notPlanned.length > 0;
  const parts: readonly (readonly [id: string, title: string, stands: boolean])[] = [
    ['act', web.actIf, true],
    ['today', web.today, true],
    ['week', web.week, true],
    ['dials', web.dials, hasDials],
    ['water', web.water, plan.misting.some(({ pump }) => pump !== null)],
    ['cautions', web.cautions, plan.cautions.length > 0],
    ['animals', web.animals, plan.enclosures.length > 0],
    ['papers', web.papers, true],
    ['warnings', web.cannotMeet, plan.warnings.length > 0],
  ];
  const items = parts
    .filter(([, , stands]) => stands)
    .map(([id, title]) => html`<li><a href="#${id}">${title}</a></li>`);
  return html`<nav aria-label="${web.onThisPage}"><ul>${items}</ul></nav>`;
}
