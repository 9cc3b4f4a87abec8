/**
 * Cards to hang beside the dials: one a dial, a quarter of a sheet each (A6 on A4), with the rings of all its settings and the days on
 * which they begin. A dial with more settings than a card holds goes on on the next.
 */

import { clockTimeOf } from '../basics/minute-of-day.ts';
import { plainLine } from '../basics/plain-line.ts';
import { joinedWindows } from '../plan/dial-day.ts';
import type { DialPlan, DialSetting, Plan } from '../plan/plan.ts';
import { words as allWords } from '../plan/words/words.ts';
import { type Block, beside, type Setting, space, stack, TICK_MM, textBlock } from './block.ts';
import { planDigest } from './care-page.ts';
import { changeText, pinsText, senseText } from './dial-block.ts';
import { ringShapes } from './dial-ring.ts';
import { artifact, type Page, type PaperDocument, type Part } from './page.ts';
import { PAPERS, sizePtOf } from './page-style.ts';
import type { PageWords } from './page-words.ts';
import { dayAndDate, fullDate } from './printed-values.ts';
import type { Shape } from './shapes.ts';
import { shortName } from './short-name.ts';
import type { TextMeasure } from './text-measure.ts';

const EDGE_MM = 6;
const COLUMNS = 3;
const MOST_ROWS = 3;
const RING = { radius: 7.2, pinMm: 2.6 } as const;

interface Card {
  readonly dial: DialPlan;
  readonly settings: readonly DialSetting[];
  readonly index: number;
  readonly count: number;
}

/** Returns the cards, four to a sheet; null where the plan has no dial with settings. */
export function shelfCards(plan: Plan, measure: TextMeasure): PaperDocument | null {
  const words = allWords(plan.language).page;
  const paper = PAPERS[plan.paper];
  const setting: Setting = { style: { paper, scale: 1, density: 'close' }, measure };
  const cards = plan.lighting.flatMap((dial) => cardsOf(dial, plan, words, setting));
  if (cards.length === 0) return null;
  const pages = Array.from({ length: Math.ceil(cards.length / 4) }, (_, sheet) =>
    sheetOf(cards.slice(sheet * 4, sheet * 4 + 4), plan, words, setting),
  );
  return {
    title: `${plainLine(plan.name)}: ${words.cardSubject}`,
    subject: words.cardSubject,
    language: plan.language,
    made: plan.made,
    pages,
  };
}

/** As many rows of settings to a card as it has room for; a setting that lies in the past is left out. */
function cardsOf(dial: DialPlan, plan: Plan, words: PageWords, setting: Setting): readonly Card[] {
  const settings = dial.settings.filter(({ past }) => past !== true);
  const { widthMm, heightMm } = setting.style.paper;
  const room = heightMm / 2 - 2 * EDGE_MM;
  const shared = (perCard: number): readonly Card[] => {
    const count = Math.ceil(settings.length / perCard);
    return Array.from({ length: count }, (_, index) => ({
      dial,
      settings: settings.slice(index * perCard, index * perCard + perCard),
      index,
      count,
    }));
  };
  for (let rows = MOST_ROWS; rows > 1; rows--) {
    const cards = shared(rows * COLUMNS);
    const heights = cards.map((card) => cardBlock(card, plan, words, widthMm / 2 - 2 * EDGE_MM, setting).heightMm);
    if (heights.every((height) => height <= room)) return cards;
  }
  return shared(COLUMNS);
}

function sheetOf(cards: readonly Card[], plan: Plan, words: PageWords, setting: Setting): Page {
  const { paper } = setting.style;
  const [width, height] = [paper.widthMm / 2, paper.heightMm / 2];
  const cut = { widthMm: 0.15, shade: 'ink', dashMm: [1, 2] } as const;
  const cuts: Part = artifact(
    { kind: 'line', x1: width, y1: 5, x2: width, y2: paper.heightMm - 5, stroke: cut },
    { kind: 'line', x1: 5, y1: height, x2: paper.widthMm - 5, y2: height, stroke: cut },
  );
  const parts = cards.flatMap((card, index) => {
    const block = cardBlock(card, plan, words, width - 2 * EDGE_MM, setting);
    return block.at((index % 2) * width + EDGE_MM, Math.floor(index / 2) * height + EDGE_MM);
  });
  return { size: paper, parts: [cuts, ...parts] };
}

function cardBlock(card: Card, plan: Plan, words: PageWords, widthMm: number, setting: Setting): Block {
  const { dial, settings } = card;
  const text = (said: string, role: 'heading' | 'card'): Block =>
    textBlock(said, { role, widthMm, ...(role === 'heading' ? { tag: 'H2' as const } : {}) }, setting);
  const columnMm = widthMm / COLUMNS;
  const cells = settings.map((each) => settingCell(each, card, words, columnMm - 2, setting));
  const rows = Array.from({ length: Math.ceil(cells.length / COLUMNS) }, (_, row) =>
    beside(
      cells
        .slice(row * COLUMNS, row * COLUMNS + COLUMNS)
        .map((block, column) => ({ block, leftMm: column * columnMm })),
    ),
  );
  return stack(
    [
      text(plainLine(dial.device), 'heading'),
      text(
        [
          words.cardDrives(drivesText(dial, plan, words)),
          words.cardStep(dial.stepMinutes),
          `${senseText(dial, words)}.`,
          ...(dial.turnsInDays === 7 ? [words.cardEveryDay] : []),
        ].join(' '),
        'card',
      ),
      ...rows,
      text(
        [
          ...(card.count > 1 ? [`${words.cardOf(card.index + 1, card.count)}.`] : []),
          words.footer(fullDate(plan.made, words), planDigest(plan), fullDate(plan.to, words)),
        ].join(' '),
        'card',
      ),
    ],
    1.2,
  );
}

function drivesText({ lamps, drives }: DialPlan, plan: Plan, words: PageWords): string {
  const named = lamps.map(({ enclosure, lamp }) => {
    const name = plan.enclosures.find(({ id }) => id === enclosure)?.name ?? enclosure;
    return shortName(`${name} ${lamp}`);
  });
  return words.list(named.length > 0 ? named : drives.map((each) => plainLine(each.replace(/^[a-z]+:/, ''))));
}

/** Its first day with a box to tick, its ring, its times, what is moved since the one before. */
function settingCell(each: DialSetting, card: Card, words: PageWords, widthMm: number, setting: Setting): Block {
  const { dial } = card;
  const all = dial.settings;
  const before = all[all.indexOf(each) - 1] ?? null;
  const line = (said: string, weight: 'bold' | 'regular'): Block =>
    textBlock([{ text: said, weight }], { role: 'card', widthMm }, setting);
  return stack(
    [
      textBlock(
        [{ draw: 'box', widthMm: TICK_MM }, ' ', { text: dayAndDate(each.from, words), weight: 'bold' }],
        { role: 'switch-time', widthMm, tag: 'H3' },
        setting,
      ),
      ringBlock(dial, each, words, widthMm, setting),
      line(timesText(each, words), 'bold'),
      ...pinsText(dial, each, words.cardPins).map((said) => line(said, 'regular')),
      before === null ? space(0) : line(words.cardChange(changeText(dial, before, each, words)), 'regular'),
    ],
    0.3,
  );
}

function timesText({ windows }: DialSetting, words: PageWords): string {
  const joined = joinedWindows(windows);
  if (joined.length === 0) return words.dialOff;
  return joined
    .map(({ onMinute, offMinute }) =>
      onMinute === 0 && offMinute === 1440
        ? words.dialAllDay
        : words.dialOn(clockTimeOf(onMinute), clockTimeOf(offMinute % 1440)),
    )
    .join('; ');
}

function ringBlock(dial: DialPlan, each: DialSetting, words: PageWords, widthMm: number, { style }: Setting): Block {
  const perDay = 1440 / dial.stepMinutes;
  const on = new Set(each.slots.filter((slot) => slot < perDay));
  const reach = RING.radius + RING.pinMm;
  const heightMm = 2 * reach + 0.8;
  return {
    heightMm,
    at: (left, top) => {
      const shapes: readonly Shape[] = ringShapes(
        { stepMinutes: dial.stepMinutes, on, comesOn: new Set(), goesOff: new Set() },
        {
          centreX: left + widthMm / 2,
          centreY: top + reach + 0.4,
          ...RING,
          small: { numeralEvery: 6, numeralPt: sizePtOf('dial-numeral', style), timePt: null },
        },
      );
      return [
        {
          tag: 'Figure',
          alt: words.dialAlt(plainLine(dial.device), timesText(each, words)),
          box: { left, top, width: widthMm, height: heightMm },
          shapes: [{ kind: 'group', mark: { dial: dial.device, setting: each.from }, shapes }],
        },
      ];
    },
  };
}
