/**
 * The sheet for a sitter, in the order of a hand-over: whom to call and the limits first, then what runs by itself, what to do at a
 * visit, the days, what is normal, what to do when something fails, whom to tell and how, where things are, signatures.
 */

import type { IsoDate } from '../basics/civil.ts';
import { plainLine } from '../basics/plain-line.ts';
import type { Log } from '../diagnostics/log.ts';
import type { Plan } from '../plan/plan.ts';
import { watchFor } from '../plan/watch-for.ts';
import { type Block, beside, framed, listBlock, type Setting, stack, textBlock } from './block.ts';
import { planDigest } from './care-page.ts';
import { reportContacts } from './contacts-report.ts';
import { emergencyItems } from './emergency-block.ts';
import { type FlowItem, flowPages } from './flow.ts';
import { machineLines } from './handover-machines.ts';
import { type HandoverMatter, handoverMatter } from './handover-matter.ts';
import { backSteps, cutNumbers, cutSteps, troubleLines } from './handover-trouble.ts';
import { dayItems, numbered, visitSteps } from './handover-visit.ts';
import { reportLetters } from './letters-report.ts';
import type { PaperDocument } from './page.ts';
import { LARGE_PRINT, PAPERS, type TextRole } from './page-style.ts';
import { dayAndDate, degreeSign, fullDate } from './printed-values.ts';
import { reportCuts, shortName, shortText } from './short-name.ts';
import type { TextMeasure } from './text-measure.ts';
import type { Run } from './wrap-text.ts';

const GAP_MM = 2;

/** Cautions that a sitter needs; the others are for whoever builds and wires. */
const FOR_A_SITTER = [
  'verify-with-vet',
  'salmonella',
  'people-at-risk',
  'out-of-kitchens',
  'unplug-first',
  'hot-lamps',
  'uv-lamps',
  'vitamins',
  'standing-water',
  'no-glass-in-sun',
];

export interface HandoverWish {
  readonly sitter: string;
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly largePrint: boolean;
}

/** Returns the sheet; reports contacts that are missing and letters that cannot be printed. */
export function handoverDocument(plan: Plan, wish: HandoverWish, measure: TextMeasure, log: Log): PaperDocument {
  const setting: Setting = {
    style: { paper: PAPERS[plan.paper], scale: wish.largePrint ? LARGE_PRINT : 1, density: 'roomy' },
    measure,
  };
  const matter = handoverMatter(plan, wish.sitter, wish.from, wish.to, setting);
  const { said, words, widthMm } = matter;
  reportContacts(plan.contacts, log);
  reportCuts(plan, log);
  const flowed = flowPages(
    itemsOf(matter),
    {
      head: textBlock(
        said.runningHead(shortName(plan.name), dayAndDate(wish.from, words), fullDate(wish.to, words)),
        { role: 'heading', widthMm },
        setting,
      ),
      footOf: (page, count) => footOf(page, count, matter),
      gapMm: GAP_MM,
    },
    setting,
  );
  if (!flowed.fits) throw new Error(`a part of the sheet is ${flowed.overMm} mm taller than a page`);
  const document: PaperDocument = {
    title: said.title(shortName(plan.name)),
    subject: said.subject,
    language: plan.language,
    made: plan.made,
    pages: flowed.pages,
  };
  reportLetters(document, measure, log);
  return document;
}

function footOf(page: number, count: number, { plan, span, said, words, widthMm, setting }: HandoverMatter): Block {
  const text = `${said.page(page, count)} · ${words.footer(fullDate(plan.made, words), planDigest(plan), fullDate(span.to, words))}`;
  return textBlock(text, { role: 'footer', widthMm }, setting);
}

function itemsOf(matter: HandoverMatter): readonly FlowItem[] {
  const { plan, span, scope, said, words, widthMm, setting, sitter, visits } = matter;
  const text = (runs: readonly Run[] | string, role: TextRole = 'text'): Block =>
    textBlock(runs, { role, widthMm, ...(role === 'title' ? { tag: 'H1' as const } : {}) }, setting);
  const head = (title: string): FlowItem => ({
    block: textBlock(title, { role: 'heading', widthMm, tag: 'H2' }, setting),
    keepWithNext: true,
  });
  const bullets = (lines: readonly string[]): readonly FlowItem[] =>
    lines.map((line) => ({ block: bullet(line, matter) }));
  return [
    { block: text(said.title(shortName(plan.name)), 'title'), keepWithNext: true },
    {
      block: text([
        said.forWhom(plainLine(sitter), fullDate(span.from, words), fullDate(span.to, words)),
        ' ',
        visits.length === span.days.length ? '' : said.comes(words.list(visits.map((date) => dayAndDate(date, words)))),
      ]),
    },
    ...emergencyItems(plan, span.from, scope, words, widthMm, setting),
    head(said.who),
    ...bullets(animalLines(matter)),
    head(said.machines),
    ...bullets(machineLines(matter)),
    head(said.visit),
    { block: framed(numbered(visitSteps(matter), 'job', widthMm - 4, setting), widthMm, 2, 0.4) },
    ...dayItems(matter),
    head(said.normal),
    ...bullets(said.normalLines),
    head(said.cut),
    { block: text(cutNumbers(matter).map((line): Run => ({ text: `${line} `, weight: 'bold' }))), keepWithNext: true },
    { block: numbered(cutSteps(matter), 'text', widthMm, setting) },
    head(said.back),
    { block: numbered(backSteps(matter), 'text', widthMm, setting) },
    head(said.trouble),
    ...bullets(troubleLines(matter)),
    { block: framed(phoneBlock(matter), widthMm, 2, 0.4) },
    head(said.where),
    ...bullets(whereLines(matter)),
    { block: blanksBlock(matter) },
    head(said.hygiene),
    ...bullets(cautionLines(matter)),
    { block: signBlock(matter) },
  ];
}

function bullet(line: string, { widthMm, setting }: HandoverMatter): Block {
  const markMm = 4 * setting.style.scale;
  const block = textBlock(line, { role: 'text', widthMm: widthMm - markMm }, setting);
  return listBlock([{ mark: '•', block }], markMm, 'text', setting);
}

function animalLines({ plan, said, words, span }: HandoverMatter): readonly string[] {
  return watchFor(plan, span.from).flatMap(({ enclosure, name, mayGoWithoutDays, spans }) => {
    const animal = plan.enclosures.find(({ id }) => id === enclosure);
    if (!animal) return [];
    return [
      [
        said.animal(shortName(name), plainLine(animal.speciesName), animal.animals),
        said.activity[animal.activity],
        ...(mayGoWithoutDays === null ? [] : [said.mayGoWithout(words.mayGoWithout(mayGoWithoutDays))]),
        ...spans.map(({ kind, to }) => `${words.resting(words.spans[kind] ?? kind, dayAndDate(to, words))}.`),
        said.noHandling,
      ].join(' '),
    ];
  });
}

/** What is said on the phone, with blanks: who, what is normal, what is seen, the values, what was done, what is asked. */
function phoneBlock({ plan, said, words, widthMm, setting, scope }: HandoverMatter): Block {
  const { phoneLines: lines } = said;
  const inner = widthMm - 4;
  const blank = (widthOfBlank: number): Run => ({ draw: 'blank', widthMm: widthOfBlank });
  const sign = degreeSign(plan.units);
  const names = words.list(scope.enclosures.map(({ name }) => shortName(name)));
  const rows: readonly (readonly Run[])[] = [
    [`${lines.me} `, blank(40), ` ${lines.lookAfter(names)} `, blank(40)],
    [`${lines.normal} `, blank(120)],
    [`${lines.now} `, blank(95), ` ${lines.since} `, blank(20)],
    [
      `${lines.values} `,
      blank(16),
      ` ${sign}, ${lines.cool} `,
      blank(16),
      ` ${sign}, ${lines.humidity} `,
      blank(16),
      ' %',
    ],
    [`${lines.done} `, blank(120)],
    [`${lines.ask} `, blank(20)],
  ];
  return stack(
    [
      textBlock(said.phone, { role: 'heading', widthMm: inner, tag: 'H2' }, setting),
      ...rows.map((row) => textBlock(row, { role: 'job', widthMm: inner }, setting)),
      textBlock(said.phoneEnd, { role: 'text', widthMm: inner, weight: 'bold' }, setting),
    ],
    1.6,
  );
}

function whereLines({ plan, said, words }: HandoverMatter): readonly string[] {
  const lines = [
    ...plan.enclosures.flatMap(({ name, where }) => {
      const places = Object.entries(where).map(
        ([thing, place]) => `${said.whereThings[thing] ?? plainLine(thing)} ${shortText(place)}`,
      );
      return places.length === 0 ? [] : [said.whereOf(shortName(name), words.list(places))];
    }),
    ...plan.hardware.flatMap(({ id, where }) =>
      where === null ? [] : [said.whereOf(plainLine(id), plainLine(where))],
    ),
    ...(plan.contacts.note === undefined ? [] : [shortText(plan.contacts.note)]),
  ];
  return lines;
}

/** Things that every household has and no file names. */
function blanksBlock({ said, widthMm, setting }: HandoverMatter): Block {
  const runs = said.whereBlank.flatMap((thing): readonly Run[] => [`${thing} `, { draw: 'blank', widthMm: 22 }, '  ']);
  return textBlock(runs, { role: 'text', widthMm }, setting);
}

function cautionLines({ plan }: HandoverMatter): readonly string[] {
  return plan.cautions.filter(({ id }) => FOR_A_SITTER.includes(id)).map(({ text }) => plainLine(text));
}

function signBlock({ said, words, span, widthMm, setting }: HandoverMatter): Block {
  const half = (widthMm - 6) / 2;
  const line = (who: string): Block =>
    textBlock(
      [`${who} `, { draw: 'blank', widthMm: half - 38 * setting.style.scale }],
      { role: 'text', widthMm: half },
      setting,
    );
  return stack(
    [
      textBlock(said.sign, { role: 'heading', widthMm, tag: 'H2' }, setting),
      beside([
        { block: line(said.signKeeper), leftMm: 0 },
        { block: line(said.signSitter), leftMm: half + 6 },
      ]),
      textBlock(said.replace(fullDate(span.to, words)), { role: 'text', widthMm, weight: 'bold' }, setting),
    ],
    3,
  );
}
