/** The water on the sheet: what to key in for the mists, from when, and what the air will do. One section a pump, one an enclosure without. */

import type { ClockTime } from '../../basics/civil.ts';
import { minuteOf } from '../../basics/minute-of-day.ts';
import { adviceWords } from '../../plan/phrases/advice-words.ts';
import { spansThatRead } from '../../plan/phrases/spans-that-read.ts';
import type { MistEntry, MistPlan, MistSet, Plan } from '../../plan/plan.ts';
import { runLength } from '../../plan/words/run-length.ts';
import { type Words, words } from '../../plan/words/words.ts';
import { dateWords, deviceOf, type Section, sheetDate } from './settings-section.ts';

type WaterWords = Words['water'];

/** Returns the sections in the order of the plan. */
export function waterSections(plan: Plan): readonly Section[] {
  const seen = new Set<string>();
  return plan.misting.flatMap((mist) => {
    const { device, pump } = mist;
    if (device === null) return [aloneSection(plan, mist)];
    const key = `${pump} ${device}`;
    if (seen.has(key)) return [];
    seen.add(key);
    return [
      pumpSection(
        plan,
        plan.misting.filter((each) => each.device === device && each.pump === pump),
      ),
    ];
  });
}

/** Enclosures on one pump share its entries. */
function pumpSection(plan: Plan, mists: readonly MistPlan[]): Section {
  const water = words(plan.language).water;
  const [first] = mists;
  const { device = '', pump = '' } = first ?? {};
  const names = mists.map(({ enclosure }) => nameOf(plan, enclosure)).join(', ');
  return {
    heading: water.heading(names),
    lines: [
      `${water.mistedBy(pump ?? '', device ?? '')} ${water.clock[first?.clock ?? 'wall']}`,
      ...(first ? setLines(plan, first) : []),
      ...mists.flatMap((mist) => airLines(plan, mist, mists.length > 1)),
      water.measure,
    ],
  };
}

function aloneSection(plan: Plan, mist: MistPlan): Section {
  const water = words(plan.language).water;
  const isHand = mist.pump === 'by-hand';
  return {
    heading: water.heading(nameOf(plan, mist.enclosure)),
    lines: [
      isHand ? `${water.mistedByHand} ${water.clock.wall}` : water.notMisted,
      ...(isHand ? setLines(plan, mist) : []),
      ...airLines(plan, mist, false),
    ],
  };
}

function nameOf(plan: Plan, id: string): string {
  return plan.enclosures.find((enclosure) => enclosure.id === id)?.name ?? id;
}

/** The set in force on the sheet's date first, then those to come. */
function setLines(plan: Plan, mist: MistPlan): readonly string[] {
  const shelf = words(plan.language).shelf;
  const water = words(plan.language).water;
  const from = sheetDate(plan);
  return mist.sets
    .filter((set) => set.to >= from)
    .flatMap((set) => [
      '',
      water.setFrom(dateWords(set.from, shelf), dateWords(set.to, shelf)),
      ...whatToDo(plan, mist, set).map((line) => `  ${line}`),
      ...wallLines(plan, mist, set, from).map((line) => `  ${line}`),
    ]);
}

function whatToDo(plan: Plan, mist: MistPlan, set: MistSet): readonly string[] {
  const water = words(plan.language).water;
  const device = mist.device ?? '';
  if (set.interval) {
    const { onSeconds, offSeconds, poweredBy } = set.interval;
    return [
      water.interval(device, runLength(onSeconds), runLength(offSeconds)),
      ...(poweredBy === null ? [] : [water.poweredBy(poweredBy)]),
      water.makes(entryList(set.entries, water, false)),
    ];
  }
  if (set.entries.length === 0) return [mist.pump === 'by-hand' ? water.noHandMists : water.noEntries];
  const dial = plan.lighting.find((each) => each.device === device && each.pins !== null);
  if (dial) return [water.pinsStand(device), water.mistAt(entryList(set.entries, water, true))];
  const onOff = deviceOf(plan, device)?.lines === 'on-and-off';
  const entries = entryList(set.entries, water, onOff);
  return [mist.pump === 'by-hand' ? water.mistAt(entries) : water.keyIn(entries)];
}

/** Wall time where the timer's clock is not the wall's, from the sheet's date on. */
function wallLines(plan: Plan, mist: MistPlan, set: MistSet, from: string): readonly string[] {
  const shelf = words(plan.language).shelf;
  const water = words(plan.language).water;
  if (mist.clock !== 'standard') return [];
  const own = entryList(set.entries, water, false);
  return spansThatRead(set.wall, from, ({ entries }) => entryList(entries, water, false))
    .filter(({ reads }) => reads !== own && reads !== '')
    .map((span) => water.wallThen(span.reads, dateWords(span.from, shelf), dateWords(span.to, shelf)));
}

function entryList(entries: readonly MistEntry[], water: WaterWords, onOff: boolean): string {
  return water.list(
    entries.map(({ at, seconds }) =>
      onOff ? water.onOff(at, offTime(at, seconds)) : water.entry(at, runLength(seconds)),
    ),
  );
}

/** Returns the end of a run, with seconds only where there are any. */
function offTime(at: ClockTime, seconds: number): string {
  const end = (minuteOf(at) * 60 + seconds) % 86_400;
  const two = (value: number) => String(Math.floor(value)).padStart(2, '0');
  const time = `${two(end / 3600)}:${two((end / 60) % 60)}`;
  return end % 60 === 0 ? time : `${time}:${two(end % 60)}`;
}

function hoursWords(minutes: number, water: WaterWords): string {
  return minutes < 120 ? water.minutes(minutes) : water.hours(Math.floor(minutes / 60), minutes % 60);
}

/** What the air does at worst over the sets to come, and what there is to know. */
function airLines(plan: Plan, mist: MistPlan, isNamed: boolean): readonly string[] {
  const water = words(plan.language).water;
  const from = sheetDate(plan);
  const conditions = mist.sets.filter((set) => set.to >= from).flatMap((set) => set.conditions);
  const predicted = conditions.map((condition) => condition.predicted);
  if (predicted.length === 0) return [];
  const share = (value: number) => water.percent(String(Math.round(value * 100)));
  const range = (of: (each: (typeof predicted)[number]) => number) =>
    water.range(share(Math.min(...predicted.map(of))), share(Math.max(...predicted.map(of))));
  const low = share(Math.min(...predicted.map((each) => each.lowHumidity)));
  const high = share(Math.max(...predicted.map((each) => each.highHumidity)));
  const dry = Math.floor(Math.min(...predicted.map((each) => each.dryOutHours)) * 60);
  const isMisted = mist.sets.some(({ entries }) => entries.length > 0);
  const forecast = mist.targets.meanHumidity
    ? water.forecastMean(
        range((each) => each.meanHumidity),
        low,
        high,
      )
    : water.forecast(
        range((each) => each.dayHumidity),
        range((each) => each.nightHumidity),
        low,
        high,
      );
  return [
    '',
    ...(isNamed ? [`${nameOf(plan, mist.enclosure)}:`] : []),
    `${forecast}${isMisted && dry > 0 ? ` ${water.dries(hoursWords(dry, water))}` : ''}`,
    water.forecastNote,
    ...adviceWords(plan, mist).map((line) => `- ${line}`),
  ];
}
