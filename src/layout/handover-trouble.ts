/** What a sitter does when the power fails, a pump stops, food runs out, an animal is gone or hurt: with the numbers of the household. */

import { plainLine } from '../basics/plain-line.ts';
import type { Plan } from '../plan/plan.ts';
import { siteOffsets } from '../plan/site-offsets.ts';
import { type WatchFor, watchFor } from '../plan/watch-for.ts';
import { runLength } from '../plan/words/run-length.ts';
import { words as allWords } from '../plan/words/words.ts';
import { nameOf } from './care-rows.ts';
import { type HandoverMatter, pumpsOf } from './handover-matter.ts';
import { temperature, volume } from './printed-values.ts';
import { shortName } from './short-name.ts';

/** By hand, where no plan says how long: ours. */
const SPRAY_SECONDS = 60;

/** Returns each animal's limits in the cold and the heat. */
export function cutNumbers({ plan, span, said }: HandoverMatter): readonly string[] {
  return watchFor(plan, span.from).flatMap(({ name, neverBelowC, neverAboveC }) => {
    if (neverBelowC === null && neverAboveC === null) return [];
    const below = neverBelowC === null ? '' : said.cutBelow(temperature(neverBelowC, plan.units));
    const above = neverAboveC === null ? '' : said.cutAbove(temperature(neverAboveC, plan.units));
    return [said.cutNumbers(shortName(name), below, above)];
  });
}

/** Returns the acts in their order. */
export function cutSteps({ plan, said, words }: HandoverMatter): readonly string[] {
  const pumps = pumpsOf(plan);
  const sprayed = plan.misting
    .filter(({ pump }) => pump !== null)
    .map((mist) => said.cutSteps.sprayOf(nameOf(plan, mist.enclosure), runLength(spraySeconds(mist))));
  const { cutSteps: steps } = said;
  return [
    steps.note,
    ...(pumps.length === 0 ? [] : [steps.flicker(words.list(pumps))]),
    steps.wrap,
    plan.units === 'us' ? steps.bottlesUs : steps.bottles,
    steps.never,
    ...(sprayed.length === 0 ? [] : [steps.spray(words.list(sprayed))]),
    steps.move,
    steps.summer,
    steps.call,
  ];
}

function spraySeconds({ targets }: Plan['misting'][number]): number {
  const drink = targets.drink?.seconds ?? targets.cadence?.seconds[0] ?? SPRAY_SECONDS;
  return Math.min(drink, SPRAY_SECONDS);
}

/** Returns what is done when the power comes back: each timer by what it lost, the pump last. */
export function backSteps(matter: HandoverMatter): readonly string[] {
  const { plan, said, words } = matter;
  const timers = plan.hardware.flatMap(({ id, kind, clock, keepsTime }): readonly string[] => {
    const name = plainLine(id);
    if (kind === 'pin-dial')
      return [
        clock === 'standard' && hasSummerTime(plan) ? said.backDialStandard(name, summerBy(plan)) : said.backDial(name),
      ];
    if (kind === 'programmable-timer') return [keepsTime === true ? said.backKeeps(name) : said.backSet(name)];
    if (kind === 'repeat-cycle-timer') return [said.backCycle(name, plugInAt(plan, id))];
    return [];
  });
  const pumps = pumpsOf(plan);
  return [...timers, said.backHeat, ...(pumps.length === 0 ? [] : [said.backPump(words.list(pumps))])].map((line) =>
    /[.?]$/.test(line) ? line : `${line}.`,
  );
}

function hasSummerTime(plan: Plan): boolean {
  const { spans, standardOffsetMinutes } = siteOffsets(plan);
  return spans.some(({ offsetMinutes }) => offsetMinutes !== standardOffsetMinutes);
}

function summerBy(plan: Plan): string {
  const { spans, standardOffsetMinutes } = siteOffsets(plan);
  const most = Math.max(...spans.map(({ offsetMinutes }) => offsetMinutes - standardOffsetMinutes));
  return allWords(plan.language).shelf.span(Math.floor(most / 60), most % 60);
}

function plugInAt(plan: Plan, timer: string): string {
  const set = plan.misting.find(({ device }) => device === timer)?.sets[0];
  return set?.interval?.plugInAt ?? '';
}

/** Returns what is done in every other trouble. */
export function troubleLines(matter: HandoverMatter): readonly string[] {
  const { plan, said, words, span } = matter;
  const watches = watchFor(plan, span.from);
  return [
    ...pumpsOf(plan).flatMap((pump) => pumpLines(pump, matter)),
    ...(plan.feeding.length === 0
      ? []
      : [said.noFeeders(words.list(watches.map((watch) => withoutFood(watch, matter))))]),
    said.escape,
    said.injury,
    said.bitten,
    said.wet,
  ];
}

function pumpLines(pump: string, { plan, said, words }: HandoverMatter): readonly string[] {
  const own = plan.misting.filter((mist) => mist.pump !== null && plainLine(mist.pump) === pump);
  const sprayed = own.map((mist) => said.cutSteps.sprayOf(nameOf(plan, mist.enclosure), runLength(spraySeconds(mist))));
  const tank = plan.hardware.find(({ id }) => plainLine(id) === pump)?.tank;
  return [
    said.pumpFails(pump, words.list(sprayed)),
    ...(tank === undefined ? [] : [said.tankEmpty(pump, volume(tank.reserveMl, plan.units, words))]),
  ];
}

function withoutFood({ enclosure, name, mayGoWithoutDays }: WatchFor, { plan, said, words }: HandoverMatter): string {
  const standIn = plan.feeding.find((feed) => feed.enclosure === enclosure && feed.standIn)?.feeder ?? '';
  const days = mayGoWithoutDays === null ? '' : words.mayGoWithout(mayGoWithoutDays);
  return said.noFeederOf(shortName(name), plainLine(standIn), days);
}
