/**
 * Generated households on A4 and Letter, in English and Spanish: one page without a fault, or a refusal that names what fits, and what it
 * names does fit. All 200, or every 16th.
 */
import { describe, expect, it } from 'vitest';
import { Log } from '../../../src/diagnostics/log.ts';
import { fontSet, measureOf } from '../../../src/emit/pdf/fonts.ts';
import { type CareWish, careDocument, NO_WISH } from '../../../src/layout/care-document.ts';
import { handoverDocument } from '../../../src/layout/handover-pages.ts';
import { shelfCards } from '../../../src/layout/shelf-cards.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { compiledOnce, planIn } from '../../compiled-household.ts';
import { householdText, type PageHousehold } from '../../generated/page-household.ts';
import { Choices } from '../../generated/random.ts';
import { TRIES_ALL } from '../../tries.ts';
import { pageFaults } from './page-faults.ts';

const HOUSEHOLDS = 200;
const SHARE = 16;
const measure = measureOf(fontSet());

const NAMES: readonly (readonly string[])[] = [
  ['Fern', 'Moss', 'Ochre'],
  ['Señor Ñandú', 'Größe', 'Ångström'],
  ['緑の部屋', '树蛙'],
  ['سرخس', 'שרך'],
  ['🦎 Gecko 🌿', '👩‍🔬 Lab'],
  ['n'.repeat(200), 'A name of many words that goes on and on '.repeat(5).trim()],
  ['<b>&amp;</b> "quoted"', '\u202eturned\u202c'],
  ['Дракон', 'Κήπος'],
];

function household(index: number): PageHousehold {
  const choices = new Choices(1000 + index);
  return {
    paper: 'a4',
    language: 'en',
    enclosures: choices.oneOf([1, 1, 1, 2, 3, 4, 9]),
    chores: choices.oneOf([0, 0, 3, 8, 30]),
    names: choices.oneOf(NAMES),
    contacts: choices.chance(0.7),
    seed: index,
  };
}

function planOf(wish: PageHousehold): Plan {
  return planIn(compiledOnce(householdText(wish)));
}

/** What the remedies of a refusal ask for. */
function wishesOf(instead: string): readonly CareWish[] {
  return instead
    .split(', or ')
    .filter((each) => each.includes('--'))
    .map((each) => ({
      ...NO_WISH,
      weeks: Number(/--weeks (\d)/.exec(each)?.[1] ?? 0) || 4,
      perEnclosure: each.includes('--per enclosure'),
      largePrint: each.includes('--large-print'),
    }));
}

const wanted = Array.from({ length: HOUSEHOLDS }, (_, index) => index).filter(
  (index) => TRIES_ALL || index % SHARE === 0,
);

const counted = { pages: 0, refused: 0, fewer: 0 };

describe.each(wanted.map((index) => [index] as const))('household %i', (index) => {
  const plans = (['en', 'es'] as const).flatMap((language): readonly Plan[] => {
    const plan = planOf({ ...household(index), language });
    return [plan, { ...plan, paper: 'letter' }];
  });

  it('has one page without a fault, or a refusal that names what fits', () => {
    for (const plan of plans) {
      const log = new Log();
      const document = careDocument(plan, NO_WISH, measure, log);
      if (document) {
        counted.pages += 1;
        counted.fewer += log.sorted().some(({ code }) => code === 'page-fewer-weeks') ? 1 : 0;
        expect(document.pages).toHaveLength(1);
        expect(pageFaults(document, measure)).toEqual([]);
        continue;
      }
      counted.refused += 1;
      const refusal = log.sorted().find(({ code }) => code === 'page-too-long');
      const wishes = wishesOf(refusal?.instead ?? '');
      expect(wishes.length).toBeGreaterThan(0);
      for (const wish of wishes) {
        const fits = careDocument(plan, wish, measure, new Log());
        expect(fits, JSON.stringify(wish)).not.toBeNull();
        if (fits) expect(pageFaults(fits, measure, wish.largePrint ? 1.5 : 1)).toEqual([]);
      }
    }
  });

  it('has a sheet and cards without a fault', () => {
    for (const plan of plans) {
      const wish = { sitter: 'sitter', from: '2027-01-11', to: '2027-01-17', largePrint: false };
      expect(pageFaults(handoverDocument(plan, wish, measure, new Log()), measure)).toEqual([]);
      const cards = shelfCards(plan, measure);
      if (cards) expect(pageFaults(cards, measure, 1, 5)).toEqual([]);
    }
  });
});

describe('all of them together', () => {
  it('are counted', () => {
    console.info(
      `${counted.pages} pages (${counted.fewer} with fewer than four weeks), ${counted.refused} refusals, of ${wanted.length} households`,
    );
    expect(counted.pages + counted.refused).toBe(wanted.length * 4);
    expect(counted.pages).toBeGreaterThan(0);
  });
});
