/**
 * Everything the papers, pages and calendars say, by language. English sets the form; a word that another language lacks is a
 * type error. Words only: what is said about a plan is decided where it is said.
 */
import type { Language } from '../plan.ts';
import { calendarEn } from './calendar-en.ts';
import { calendarEs } from './calendar-es.ts';
import { changesEn } from './changes-en.ts';
import { changesEs } from './changes-es.ts';
import { choresEn } from './chores-en.ts';
import { choresEs } from './chores-es.ts';
import { fitEn } from './fit-en.ts';
import { fitEs } from './fit-es.ts';
import { handoverEn } from './handover-en.ts';
import { handoverEs } from './handover-es.ts';
import { pageEn } from './page-en.ts';
import { pageEs } from './page-es.ts';
import { picturesEn } from './pictures-en.ts';
import { picturesEs } from './pictures-es.ts';
import { shelfEn } from './shelf-en.ts';
import { shelfEs } from './shelf-es.ts';
import { todayEn } from './today-en.ts';
import { todayEs } from './today-es.ts';
import { waterEn } from './water-en.ts';
import { waterEs } from './water-es.ts';
import { webEn } from './web-en.ts';
import { webEs } from './web-es.ts';

const en = {
  calendar: calendarEn,
  chores: choresEn,
  changes: changesEn,
  fit: fitEn,
  handover: handoverEn,
  page: pageEn,
  pictures: picturesEn,
  shelf: shelfEn,
  today: todayEn,
  water: waterEn,
  web: webEn,
};

export type Words = typeof en;

const es: Words = {
  calendar: calendarEs,
  chores: choresEs,
  changes: changesEs,
  fit: fitEs,
  handover: handoverEs,
  page: pageEs,
  pictures: picturesEs,
  shelf: shelfEs,
  today: todayEs,
  water: waterEs,
  web: webEs,
};

const byLanguage: Readonly<Record<Language, Words>> = { en, es };

/** Returns the words of a language. */
export function words(language: Language): Words {
  return byLanguage[language];
}
