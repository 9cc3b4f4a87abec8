/** Says what of the rotations had to give way, was taken for granted, or hangs on a veterinarian. */
import { isoDateOf } from '../../basics/calendar-day.ts';
import type { Place } from '../../diagnostics/diagnostic.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { Care, CareEnclosure, Feeder, Stage } from '../../resolve/care.ts';
import { refusedDustings } from './complete-diet.ts';
import type { EnclosureRotation, RotationPart } from './enclosure-rotation.ts';
import { contentsOf, contentWord, daysApart } from './powders.ts';
import { PLAIN } from './rates.ts';
import type { HandedFeed } from './sitter-dustings.ts';

interface Scope {
  readonly care: Care;
  readonly enclosure: CareEnclosure;
  readonly log: Log;
}

/** Reports everything about one enclosure's rotations except hours and absences. */
export function reportRotation(
  care: Care,
  enclosure: CareEnclosure,
  rotated: EnclosureRotation,
  handed: readonly HandedFeed[],
  log: Log,
): void {
  const scope = { care, enclosure, log };
  for (const part of rotated.parts) {
    reportOrder(scope, part);
    reportCounts(scope, part);
  }
  reportStages(scope, rotated.parts);
  reportFeeders(scope, rotated.parts);
  reportStandIns(scope, handed);
  reportStates(scope);
  reportPreDosed(scope, handed);
}

function targetPlace({ care, enclosure }: Scope, path: string): Place | null {
  return care.placeOfTarget(enclosure.id, path) ?? care.placeOf(enclosure.path);
}

function reportOrder(scope: Scope, { stageName: stage, stage: { apart }, food, rotated }: RotationPart): void {
  const { enclosure, log } = scope;
  const place = targetPlace(scope, `stages.${stage}.dusting`);
  for (const { asked, id, times } of rotated.rateCuts)
    log.report('dustings-exceed-feeds', { enclosure: enclosure.id, stage, asked, powder: id, times }, place);
  for (const { id, ...cut } of rotated.orders?.cut ?? []) {
    const powders = rotated.orders?.rates.map(({ id: each }) => each).filter((each) => each !== PLAIN) ?? [];
    const days = Math.max(0, ...powders.map((other) => daysApart(enclosure, apart, id, other)));
    const values = { enclosure: enclosure.id, stage, powder: id, ...cut, weeks: rotated.cycleWeeks, days };
    log.report('apart-cannot-hold', values, targetPlace(scope, `stages.${stage}.apart`));
  }
  const gap = rotated.orders?.gap ?? null;
  if (gap !== null) {
    const by = Math.round(gap * 100) / 100;
    log.report('order-not-proven', { enclosure: enclosure.id, food, by }, place);
  }
  if (
    rotated.orders &&
    rotated.cycleWeeks === null &&
    rotated.feeds.length > 0 &&
    rotated.state.order.feeders.length > 1
  )
    log.report(
      'order-runs-once',
      { enclosure: enclosure.id, food, stage },
      targetPlace(scope, `stages.${stage}.feeds`),
    );
}

const COUNT_WARNED_ABOVE = 1.5;

function reportCounts(
  { care, enclosure, log }: Scope,
  { stageName: stage, stage: { feeds }, food }: RotationPart,
): void {
  const pieces = Math.max(
    0,
    ...feeds.flatMap((rule) => (rule.food === food && rule.pieces !== null ? [rule.pieces] : [])),
  );
  if (pieces === 0) return;
  for (const feeder of enclosure.feeders) {
    if (feeder.food !== food || feeder.count === null || feeder.count <= COUNT_WARNED_ABOVE * pieces) continue;
    const values = { feeder: feeder.id, count: feeder.count, pieces, stage };
    log.report('count-above-profile', values, care.placeOf([...feeder.path, 'count']));
  }
}

function reportStages(scope: Scope, parts: readonly RotationPart[]): void {
  const { enclosure, log } = scope;
  for (const stageName of new Set(parts.map((part) => part.stageName))) {
    const here = parts.filter((part) => part.stageName === stageName);
    const stage = here[0]?.stage;
    if (!stage || stage.dusting.length === 0) continue;
    const powders = stage.dusting.map(({ id }) => id);
    const place = targetPlace(scope, `stages.${stageName}.dusting`);
    if (!here.some(({ dusted }) => dusted))
      log.report('nothing-takes-dust', { enclosure: enclosure.id, stage: stageName, powders }, place);
    reportVitamins(scope, stageName, stage, place);
  }
}

function reportVitamins({ care, enclosure, log }: Scope, stageName: string, stage: Stage, place: Place | null): void {
  for (const { id: powder } of refusedDustings(enclosure, stage)) {
    const supplement = enclosure.supplements.find(({ id }) => id === powder);
    const said = supplement?.said ?? false;
    const contents = contentsOf(enclosure, powder).map(contentWord).join(' and ');
    const values = { enclosure: enclosure.id, stage: stageName, powder, contents, said };
    log.report('vitamins-on-complete-diet', values, said && supplement ? care.placeOf(supplement.path) : place);
  }
}

function reportFeeders({ care, enclosure, log }: Scope, parts: readonly RotationPart[]): void {
  const foods = [...new Set(parts.map(({ food }) => food))];
  const named = (food: string): readonly Feeder[] => enclosure.feeders.filter((feeder) => feeder.food === food);
  for (const food of foods)
    if (food !== 'greens' && named(food).length === 0)
      log.report('feeders-unnamed', { enclosure: enclosure.id, food }, care.placeOf([...enclosure.path, 'feeders']));
  if (foods.length === 0) return;
  for (const feeder of enclosure.feeders.filter(({ food }) => !foods.includes(food))) {
    const values = { enclosure: enclosure.id, feeder: feeder.id, food: feeder.food, foods: foods.join(' and ') };
    log.report('feeders-unused', values, care.placeOf(feeder.path));
  }
}

function reportStandIns({ care, enclosure, log }: Scope, handed: readonly HandedFeed[]): void {
  for (const { from, to, feeder, path } of care.shortages) {
    const feeds = handed.filter(
      (feed) => feed.unserved && feed.feeder === feeder && feed.day >= from && feed.day <= to,
    );
    if (feeds.length === 0) continue;
    const values = { enclosure: enclosure.id, feeder, from: isoDateOf(from), to: isoDateOf(to), feeds: feeds.length };
    log.report('nothing-stands-in', values, care.placeOf(path));
  }
  for (const feeder of enclosure.feeders) {
    const lost = handed.filter((feed) => feed.feeder === feeder.id && feed.lostDusting !== null);
    if (lost.length === 0) continue;
    const powders = [...new Set(lost.flatMap(({ lostDusting }) => lostDusting ?? []))].toSorted();
    const values = { enclosure: enclosure.id, feeder: feeder.id, powders, feeds: lost.length };
    log.report('stand-in-undusted', values, care.placeOf(feeder.path));
  }
}

function reportStates({ care, enclosure, log }: Scope): void {
  const last = care.plan.from + care.plan.days - 1;
  for (const { is: state, from, to, vet, path } of enclosure.states) {
    if (to < care.plan.from || from > last) continue;
    const values = { enclosure: enclosure.id, state, from: isoDateOf(from), to: isoDateOf(to) };
    if ((state === 'quarantine' || state === 'ill') && vet === null)
      log.report('dusting-paused', values, care.placeOf(path));
    else if (state !== 'shedding') log.report('state-asks-vet', { ...values, vet }, care.placeOf(path));
  }
}

function reportPreDosed({ care, enclosure, log }: Scope, handed: readonly HandedFeed[]): void {
  const feeds = handed.filter(({ preDosed }) => preDosed);
  for (const powder of [...new Set(feeds.flatMap(({ dusting }) => dusting ?? []))].toSorted()) {
    const dates = feeds.filter(({ dusting }) => dusting === powder).map(({ day }) => isoDateOf(day));
    log.report('powder-for-sitter', { enclosure: enclosure.id, powder, dates }, care.placeOf(['away']));
  }
}
