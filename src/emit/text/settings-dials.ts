/** The dials on the sheet: what each is, what hangs on it, what to set now, and every change to come. */
import { settingOn } from '../../plan/dial-day.ts';
import { lampName, loadName } from '../../plan/phrases/load-words.ts';
import { joinedOverMidnight, pinsToChange, pinsToSet, windowsInWords } from '../../plan/phrases/pin-words.ts';
import { spansThatRead } from '../../plan/phrases/spans-that-read.ts';
import type { DialPlan, DialSetting, Plan } from '../../plan/plan.ts';
import { pumpsBesideLamps } from '../../plan/pumps-beside-lamps.ts';
import { words } from '../../plan/words/words.ts';
import {
  dateWords,
  deviceOf,
  minuteWords,
  type Section,
  type ShelfWords,
  sheetDate,
  weekdayDateWords,
} from './settings-section.ts';

/** Returns a section a timer, in the plan's order, one of what hangs on live sockets and one of what is not planned. */
export function dialSections(plan: Plan): readonly Section[] {
  const shelf = words(plan.language).shelf;
  const dials = plan.lighting.map((dial) => ({ heading: dial.device, lines: dialLines(plan, dial, shelf) }));
  const left = plan.notPlanned.map(({ lamp, why }) => shelf.leftOut(loadName(plan, `lamp:${lamp}`), shelf.why(why)));
  return [
    ...dials,
    { heading: shelf.liveHeading, lines: liveLines(plan, shelf) },
    { heading: shelf.notPlanned, lines: left },
  ];
}

/** What hangs on no timer, so that it is not sought on one. */
function liveLines(plan: Plan, shelf: ShelfWords): readonly string[] {
  return plan.enclosures.flatMap(({ id, live }) =>
    (live ?? [])
      .filter(({ lamp }) => plan.notPlanned.every((left) => left.lamp !== `${id}/${lamp}`))
      .map(({ lamp, powerW, isRegulated }) =>
        shelf.live(shelf.capital(lampName(plan, { enclosure: id, lamp })), powerW, isRegulated),
      ),
  );
}

function dialLines(plan: Plan, dial: DialPlan, shelf: ShelfWords): readonly string[] {
  const about = aboutLines(plan, dial, shelf);
  if (dial.settings.length > 0)
    return [
      ...about,
      '',
      ...nowLines(plan, dial, shelf),
      '',
      ...changeLines(plan, dial, shelf),
      ...(dial.lamps.length === 0 ? [] : ['', ...errorLines(plan, dial, shelf)]),
    ];
  const refused = plan.notPlanned.find(({ device }) => device === dial.device);
  if (refused) return [...about, shelf.noSetting(shelf.why(refused.why))];
  return [...about, dial.drives.length === 0 ? shelf.noLoads : shelf.noLamps];
}

function aboutLines(plan: Plan, dial: DialPlan, shelf: ShelfWords): readonly string[] {
  const step = minuteWords(dial.stepMinutes, shelf);
  const kind = dial.pins === null ? shelf.timer : dial.turnsInDays === 7 ? shelf.weekDial(step) : shelf.dial(step);
  const where = deviceOf(plan, dial.device)?.where ?? null;
  return [
    [kind, ...pinSense(dial, shelf), shelf.clock[dial.clock]].join(' '),
    ...(where === null ? [] : [shelf.where(where)]),
    ...(dial.drives.length === 0 ? [] : [shelf.drives(shelf.list(drivenWords(plan, dial, shelf)))]),
    ...(pumpsBesideLamps(plan, dial).length === 0 ? [] : [shelf.pumpOut(shelf.list(pumpsBesideLamps(plan, dial)))]),
    ...loadLines(plan, dial, shelf),
    ...(dial.lamps.length === 0 ? [] : [shelf.cable]),
  ];
}

function pinSense({ pins }: DialPlan, shelf: ShelfWords): readonly string[] {
  if (pins === null) return [];
  return [pins === 'down-is-on' ? shelf.pinsDown : shelf.pinsUp];
}

function drivenWords(plan: Plan, dial: DialPlan, shelf: ShelfWords): readonly string[] {
  const out = pumpsBesideLamps(plan, dial);
  return dial.drives.flatMap((name) => {
    const called = loadName(plan, name);
    const lamp = dial.lamps.find((each) => `lamp:${each.enclosure}/${each.lamp}` === name);
    if (lamp) return [shelf.lampWatts(called, lamp.powerW)];
    return out.some((id) => name === `device:${id}`) ? [] : [called];
  });
}

/** Of a timer that is refused without the part that lasts: hours that are not planned are no hours. */
function loadLines(plan: Plan, { device, settings }: DialPlan, shelf: ShelfWords): readonly string[] {
  const load = plan.loads.find((each) => each.device === device);
  if (!load || load.peakW === 0) return [];
  const { peakW, continuousW, ratingW } = load;
  if (settings.length === 0 && plan.notPlanned.some((left) => left.device === device))
    return [ratingW === null ? shelf.peak(peakW) : shelf.peakRated(peakW, ratingW)];
  return [ratingW === null ? shelf.load(peakW, continuousW) : shelf.loadRated(peakW, continuousW, ratingW)];
}

function nowLines(plan: Plan, dial: DialPlan, shelf: ShelfWords): readonly string[] {
  const date = sheetDate(plan);
  const setting = settingOn(dial, date) ?? dial.settings[0];
  if (!setting) return [];
  return [
    shelf.now(weekdayDateWords(date, shelf)),
    ...setLines(dial, setting, shelf).map(indented),
    ...wallLines(dial, setting, date, shelf).map(indented),
  ];
}

function indented(line: string): string {
  return `  ${line}`;
}

function setLines(dial: DialPlan, setting: DialSetting, shelf: ShelfWords): readonly string[] {
  if (dial.pins === null) return [entryLine(setting, shelf)];
  const reads = windowsInWords(setting.windows, shelf);
  const isPartDay = setting.slots.length > 0 && reads !== shelf.onAllDay;
  return [...pinsToSet(dial, setting.slots, shelf), isPartDay ? shelf.goes(reads) : shelf.isThen(reads)];
}

function entryLine({ windows }: DialSetting, shelf: ShelfWords): string {
  if (windows.length === 0) return shelf.isThen(shelf.offAllDay);
  return shelf.keyIn(shelf.also(joinedOverMidnight(windows).map(({ on, off }) => shelf.window(on, off))));
}

/** Wall time where the clock on the wall is not the dial's, from the sheet's date on. */
function wallLines(dial: DialPlan, setting: DialSetting, from: string, shelf: ShelfWords): readonly string[] {
  const own = windowsInWords(setting.windows, shelf);
  if (dial.clock !== 'standard') return [];
  return spansThatRead(setting.wall, from, ({ windows }) => windowsInWords(windows, shelf))
    .filter(({ reads }) => reads !== own)
    .map((span) => shelf.wallThen(span.reads, dateWords(span.from, shelf), dateWords(span.to, shelf)));
}

function changeLines(plan: Plan, dial: DialPlan, shelf: ShelfWords): readonly string[] {
  const date = sheetDate(plan);
  const lines = dial.settings.flatMap((setting, index) => {
    const before = dial.settings[index - 1];
    return before && setting.from > date ? oneChange(dial, before, setting, shelf) : [];
  });
  return lines.length === 0 ? [shelf.noChanges] : [shelf.changes, ...lines.map(indented)];
}

function oneChange(dial: DialPlan, before: DialSetting, setting: DialSetting, shelf: ShelfWords): readonly string[] {
  const date = shelf.capital(weekdayDateWords(setting.from, shelf));
  if (dial.pins === null) return [`${shelf.sentence(date)} ${entryLine(setting, shelf)}`];
  const moves = pinsToChange(dial, before.slots, setting.slots, shelf);
  const reads = windowsInWords(setting.windows, shelf);
  return [
    `${date}: ${shelf.sentence(moves)} ${shelf.isThen(reads)}`,
    ...wallLines(dial, setting, setting.from, shelf).map(indented),
  ];
}

function errorLines(plan: Plan, dial: DialPlan, shelf: ShelfWords): readonly string[] {
  const misses = dial.lamps.filter(
    ({ targetMinutes, worstErrorMinutes }) => targetMinutes.length > 0 && worstErrorMinutes > dial.worstErrorMinutes,
  );
  return [
    Math.round(dial.worstErrorMinutes) === 0
      ? shelf.exact
      : shelf.worst(minuteWords(dial.worstErrorMinutes, shelf), minuteWords(dial.meanErrorMinutes, shelf)),
    ...misses.map((lamp) => shelf.lampMisses(lampName(plan, lamp), minuteWords(lamp.worstErrorMinutes, shelf))),
    ...dial.lamps
      .filter(({ replaceOn }) => replaceOn.length > 0)
      .map((lamp) =>
        shelf.replace(lampName(plan, lamp), shelf.list(lamp.replaceOn.map((date) => dateWords(date, shelf)))),
      ),
  ];
}
