/** What can be printed, and how a phone subscribes. */
import type { Plan } from '../../plan/plan.ts';
import type { Words } from '../../plan/words/words.ts';
import { html, list, type Markup, NOTHING, trusted } from './markup.ts';
import type { FeedLink, PageLook, QrLink, ServedLook } from './page-look.ts';

/** Returns the section of papers and feeds. */
export function papersSection(plan: Plan, { files, served }: PageLook, told: Words): Markup {
  const { web } = told;
  const papers = files.filter((path) => !path.includes('/') && !path.endsWith('.ics'));
  return html`<section aria-labelledby="papers"><h2 id="papers">${web.papers}</h2>
${papers.length === 0 ? NOTHING : html`<h3>${web.toPrint}</h3>${links(papers.map((path) => html`<a href="${path}">${web.files[path] ?? path}</a>`))}`}
${served ? servedFeeds(served, files, told) : html`<h3>${web.toSubscribe}</h3>${storedFeeds(plan, files, told)}`}
</section>`;
}

function links(items: readonly Markup[]): Markup {
  return html`<ul class="links">${items.map((item) => html`<li>${item}</li>`)}</ul>`;
}

/** Not on paper: the addresses hold the token. */
function servedFeeds({ feeds, page }: ServedLook, files: readonly string[], told: Words): Markup {
  const { web } = told;
  return html`<div class="screen"><h3>${web.toSubscribe}</h3>
<p>${web.subscribeServed}</p>
${page === null ? html`<p>${web.loopbackOnly}</p>` : NOTHING}
${feeds.map((feed) => oneFeed(feed, files, told))}
${page === null ? NOTHING : html`<h4>${web.pageQr}</h4><p><a href="${page.address}">${page.address}</a></p>${qr(page, told)}`}
</div>`;
}

function oneFeed({ person, file, webcal, plain }: FeedLink, files: readonly string[], told: Words): Markup {
  const { web } = told;
  const imported = file.replace(/\.ics$/, '-import.ics');
  return html`<h4>${web.calendarOf(person)}</h4>
${links([
  html`<a href="${webcal.address}">${web.subscribe(person)}</a>`,
  html`<a href="${file}">${plain}</a> <span class="soft">${web.plainLink}</span>`,
  ...(files.includes(imported)
    ? [html`<a href="${imported}" download>${imported}</a> <span class="soft">${web.importOnce}</span>`]
    : []),
])}
${qr(webcal, told)}`;
}

function qr({ svg, address }: QrLink, { web }: Words): Markup {
  if (svg === null) return NOTHING;
  return html`<figure class="qr" role="img" aria-label="${web.qrOf(address)}">${trusted(svg)}</figure>`;
}

function storedFeeds({ people }: Plan, files: readonly string[], { web }: Words): Markup {
  const feeds = files.filter((path) => path.endsWith('.ics'));
  const named = (path: string): string => people.find(({ id }) => path === `calendar/${id}.ics`)?.id ?? '';
  const items = feeds.map((path) => {
    const person = named(path);
    return html`<a href="${path}" download>${path}</a> <span class="soft">${person === '' ? web.importOnce : web.calendarOf(person)}</span>`;
  });
  return html`<p>${web.subscribeFile}</p>${items.length === 0 ? NOTHING : links(items)}`;
}

/** Returns the section of what the plan warns of, in the language of messages; nothing where it warns of nothing. */
export function warningsSection({ warnings, language }: Plan, { web, shelf }: Words): Markup {
  if (warnings.length === 0) return NOTHING;
  const foreign = language === 'en' ? NOTHING : trusted(' lang="en"');
  const lines = warnings.map(
    ({ message, file, line }) =>
      html`<span${foreign}>${shelf.capital(message)}</span> ${file === null || line === null ? NOTHING : html`<span class="soft">(${file}:${line})</span>`}`,
  );
  return html`<section aria-labelledby="warnings"><h2 id="warnings">${web.cannotMeet}</h2>${list(lines)}</section>`;
}

/** Returns the section of cautions with who says so. */
export function cautionsSection({ cautions }: Plan, { web }: Words): Markup {
  if (cautions.length === 0) return NOTHING;
  const lines = cautions.map(({ text, source }) => html`${text} <span class="soft">${web.said(source)}</span>`);
  return html`<section aria-labelledby="cautions"><h2 id="cautions">${web.cautions}</h2>${list(lines)}</section>`;
}
