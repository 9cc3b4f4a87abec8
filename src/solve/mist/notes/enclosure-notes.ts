/** What there is to know about the water of one enclosure besides its shortfalls: cautions, the water bill, the hard months, the covering. */
import { civilOf, isoDateOf } from '../../../basics/calendar-day.ts';
import { clockTimeOf } from '../../../basics/minute-of-day.ts';
import { spanWords } from '../../../basics/span-words.ts';
import type { MistAdvice } from '../../../plan/plan.ts';
import { words } from '../../../plan/words/words.ts';
import type { Care, CareEnclosure } from '../../../resolve/care.ts';
import { monthWords, temperatureWords } from '../../light/temperature-check.ts';
import { isHotLamp } from '../day/forbidden-starts.ts';
import { tankWaterG } from '../day/hard-limits.ts';
import type { MistUnit, UnitMember, UnitSpan } from '../mist-unit.ts';
import { isSameDay, type MemberSet, type SetDay } from '../sets/member-sets.ts';
import { UnitSolver } from '../sets/unit-solver.ts';
import type { LeversByWay } from './levers-by-way.ts';
import { missesOf, monthsOf, ROUNDING_SHORTFALL } from './missed-targets.ts';
import { told, warned } from './water-notes.ts';
import { entriesWords, percentWords, volumeWords, waterWords } from './water-quantities.ts';

/** Leaves that are dry for less than this at a stretch never really are; ours. */
const LEAST_DRY_MINUTES = 60;
const SMALLEST_M3 = 0.005;
const LARGEST_M3 = 20;
const FREEZING_C = 0;

/** Returns warnings that hang on the enclosure alone, whatever was planned. */
export function enclosureWarnings(care: Care, unit: MistUnit, { enclosure, air }: UnitMember, days: readonly SetDay[]) {
  const { id } = enclosure;
  const notes: MistAdvice[] = [];
  const volume = air.body.volumeM3;
  if (volume < SMALLEST_M3 || volume > LARGEST_M3) {
    const side = volume < SMALLEST_M3 ? 'small' : 'large';
    notes.push(warned('enclosure-size-odd', { enclosure: id, volume: volumeWords(volume), side }, 'size'));
  }
  notes.push(
    ...frostNotes(care, enclosure, days),
    ...waterlessNotes(unit, enclosure),
    ...wetNotes(unit, enclosure, days),
  );
  return notes;
}

function frostNotes(care: Care, { id }: CareEnclosure, days: readonly SetDay[]): readonly MistAdvice[] {
  const cold = days.filter(({ span }) => Math.min(span.dayC, span.nightC) <= FREEZING_C);
  if (cold.length === 0) return [];
  const least = Math.min(...cold.map(({ span }) => Math.min(span.dayC, span.nightC)));
  const values = { enclosure: id, temperature: temperatureWords(least, care.units), months: months(cold) };
  return [warned('water-freezes', values, 'room')];
}

function months(days: readonly SetDay[]): string {
  return monthWords([...new Set(days.flatMap(({ span }) => monthsOf(span.fromDay, span.toDay)))]);
}

/** An animal that drinks from mists or is to be misted is never left without. */
function waterlessNotes(unit: MistUnit, enclosure: CareEnclosure): readonly MistAdvice[] {
  const { water, misting } = enclosure.targets;
  const drinks = water.drink !== null && water.drink.mists > 0;
  if (unit.means === 'none') {
    const isMisted = misting !== null && misting !== 'none';
    if (!drinks && !isMisted) return [];
    const what = drinks ? 'is to drink from mists' : 'is to be misted';
    return [warned('no-water-planned', { enclosure: enclosure.id, what }, 'mist')];
  }
  if (unit.pump?.kind !== 'fogger' || !drinks) return [];
  return [warned('fog-is-no-drink', { enclosure: enclosure.id, pump: unit.pump.id }, 'mist')];
}

function wetNotes(unit: MistUnit, enclosure: CareEnclosure, days: readonly SetDay[]): readonly MistAdvice[] {
  if (unit.means === 'none' || enclosure.targets.water.dryOut) return [];
  const wet = days.filter(({ day, runs }) => runs.length > 0 && day.figures.dryOutMinutes < LEAST_DRY_MINUTES);
  if (wet.length === 0) return [];
  const most = Math.max(...wet.map(({ day }) => day.figures.dryOutMinutes));
  return [warned('leaves-stay-wet', { enclosure: enclosure.id, hours: spanWords(most), months: months(wet) }, 'open')];
}

/** Returns what is only told. */
export function enclosureNotes(
  care: Care,
  unit: MistUnit,
  member: UnitMember,
  sets: readonly MemberSet[],
  spans: readonly UnitSpan[],
  levers: LeversByWay,
): readonly MistAdvice[] {
  const days = sets.flatMap((set) => set.days);
  return [
    ...lampNotes(care, unit, member),
    ...cycleNotes(care, unit, member, sets),
    ...coverNotes(care, unit, member, days, levers),
    ...hardMonths(care, unit, member, days, spans),
    ...peakNotes(care, member, days),
    ...billNotes(care, unit, member, days),
  ];
}

function lampNotes(care: Care, unit: MistUnit, { enclosure }: UnitMember): readonly MistAdvice[] {
  const hot = enclosure.lamps.filter(({ kind }) => isHotLamp(kind)).map(({ id }) => id);
  if (unit.means === 'none' || hot.length === 0 || enclosure.nozzles.hitsLamp !== false) return [];
  return [told(care, 'shield-the-lamp', { enclosure: enclosure.id, lamps: hot.join(', ') })];
}

function cycleNotes(
  care: Care,
  { timer, clock }: MistUnit,
  { enclosure }: UnitMember,
  sets: readonly MemberSet[],
): readonly MistAdvice[] {
  if (timer?.kind !== 'repeat-cycle-timer') return [];
  const at = sets[0]?.set.solution.interval?.plugInMinute ?? null;
  return [
    told(care, 'starts-with-power', { enclosure: enclosure.id, timer: timer.id }),
    ...(at === null ? [] : [told(care, 'plug-in-at', { timer: timer.id, at: clockTimeOf(at), clock })]),
  ];
}

/** The least covering that meets all targets, what it costs in water, and when it may come off. */
function coverNotes(
  care: Care,
  unit: MistUnit,
  { enclosure }: UnitMember,
  days: readonly SetDay[],
  levers: LeversByWay,
): readonly MistAdvice[] {
  const cover = levers.dry.find(({ kind, besides }) => kind === 'cover' && besides === null);
  if (!cover) return [];
  const id = enclosure.id;
  const now = unit.machine ? Math.max(0, ...days.map(({ runs }) => waterOf(unit, runs))) : 0;
  const notes = [
    told(care, 'cover-mesh', {
      enclosure: id,
      open: percentWords(cover.value),
      now: percentWords(enclosure.openShare),
      water: waterWords(cover.waterG * 7, care.units),
      nowWater: waterWords(now * 7, care.units),
    }),
  ];
  for (const { fromDay, toDay } of neededRuns(days.map((day) => ({ span: day.span, isNeeded: needsCover(day) })))) {
    if (toDay >= care.plan.from + care.plan.days - 1) continue;
    const [on, off] = [isoDateOf(fromDay), isoDateOf(toDay + 1)];
    notes.push(told(care, 'cover-until', { enclosure: id, on, off, open: percentWords(cover.value) }));
  }
  return notes;
}

/** Days that are too humid want no covering. */
function needsCover(day: SetDay): boolean {
  return day.day.shortfall > ROUNDING_SHORTFALL && !missesOf(day).some(({ isHigh }) => isHigh);
}

/** Joins neighbouring days on which the covering is needed. */
function neededRuns(days: readonly { readonly span: SetDay['span']; readonly isNeeded: boolean }[]) {
  const runs: { fromDay: number; toDay: number }[] = [];
  for (const { span, isNeeded } of days) {
    if (!isNeeded) continue;
    const last = runs.at(-1);
    if (last && last.toDay === span.fromDay - 1) last.toDay = span.toDay;
    else runs.push({ fromDay: span.fromDay, toDay: span.toDay });
  }
  return runs;
}

function waterOf({ machine }: MistUnit, runs: SetDay['runs']): number {
  return machine ? tankWaterG(machine, runs) : 0;
}

/** How the driest and the coldest time would change the entries; told where the room changes over the year. */
function hardMonths(
  care: Care,
  unit: MistUnit,
  { enclosure }: UnitMember,
  days: readonly SetDay[],
  spans: readonly UnitSpan[],
): readonly MistAdvice[] {
  const [first] = days;
  if (!first || !unit.machine || unit.means === 'repeat-cycle') return [];
  const solver = new UnitSolver(unit, [first.runs]);
  const notes: MistAdvice[] = [];
  const alone = (span: SetDay['span']): string => {
    const own = spans.filter((each) => each.spans.some(({ one }) => one === span.one)).slice(0, 1);
    const [day] = own;
    if (!day) return '';
    const runs = solver.solve([day], { untilMet: true }).entriesOf(day);
    const { noMists, sameMists, someMists } = words(care.language).water;
    if (isSameDay(runs, first.runs)) return sameMists;
    return runs.length === 0 ? noMists : someMists(runs.length, entriesWords(runs));
  };
  const driest = least(days, ({ day }) => day.figures.lowHumidity);
  if (days.some(({ span }) => span.roomHumidity !== first.span.roomHumidity))
    notes.push(
      told(care, 'driest-month', {
        enclosure: enclosure.id,
        month: monthName(care, driest),
        room: percentWords(driest.span.roomHumidity),
        low: percentWords(driest.day.figures.lowHumidity),
        entries: alone(driest.span),
      }),
    );
  const coldest = least(days, ({ span }) => span.nightC);
  if (days.some(({ span }) => span.nightC !== first.span.nightC))
    notes.push(
      told(care, 'coldest-month', {
        enclosure: enclosure.id,
        month: monthName(care, coldest),
        night: temperatureWords(coldest.span.nightC, care.units),
        entries: alone(coldest.span),
      }),
    );
  return notes;
}

function monthName(care: Care, { span }: SetDay): string {
  const { month } = civilOf(Math.floor((span.fromDay + span.toDay) / 2));
  return words(care.language).water.month(month);
}

function least<T>(items: readonly T[], of: (item: T) => number): T {
  const [first, ...rest] = items;
  if (first === undefined) throw new Error('the least of nothing');
  return rest.reduce((best, item) => (of(item) < of(best) ? item : best), first);
}

/** More mists make no more peaks where the air does not fall between them. */
function peakNotes(care: Care, { enclosure }: UnitMember, days: readonly SetDay[]): readonly MistAdvice[] {
  const wanted = enclosure.targets.humidity.peaksPerDay?.[0] ?? 0;
  const short = days.filter(({ day, runs }) => day.figures.peaks < wanted && runs.length > day.figures.peaks);
  const worst = short.toSorted((a, b) => a.day.figures.peaks - b.day.figures.peaks)[0];
  if (!worst) return [];
  const { peak } = enclosure.targets.humidity;
  if (!peak || worst.day.figures.lowHumidity < peak[0] - 0.05) return [];
  const values = { enclosure: enclosure.id, mists: worst.runs.length, peaks: worst.day.figures.peaks };
  return [told(care, 'more-mists-fewer-peaks', values)];
}

function billNotes(
  care: Care,
  unit: MistUnit,
  { enclosure }: UnitMember,
  days: readonly SetDay[],
): readonly MistAdvice[] {
  if (!unit.machine) return [];
  const water = Math.max(0, ...days.map(({ day }) => day.figures.waterG));
  if (water <= 0) return [];
  const tank = unit.pump?.tank ?? null;
  const drawn = Math.max(...days.map(({ runs }) => waterOf(unit, runs)));
  const lasts = tank ? Math.floor((tank.holdsG - tank.reserveG) / Math.max(1, drawn)) : -1;
  const refill = tank ? Math.max(1, Math.min(7, tank.refillEveryDays, lasts)) : 0;
  const runOff = Math.max(0, ...days.map(({ day }) => day.figures.runOffG));
  const { tray } = enclosure;
  const full = tray ? Math.floor(tray.holdsG / Math.max(1, runOff)) : -1;
  const id = enclosure.id;
  return [
    told(care, 'water-bill', {
      enclosure: id,
      water: waterWords(water * 7, care.units),
      tankDays: lasts,
      refillDays: refill,
    }),
    ...(runOff < 1
      ? []
      : [
          told(care, 'run-off', {
            enclosure: id,
            runOff: waterWords(runOff, care.units),
            lasts: full,
            empty: tray?.emptyEveryDays ?? 0,
          }),
        ]),
  ];
}
