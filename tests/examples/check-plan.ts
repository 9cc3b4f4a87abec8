/**
 * Checks a plan from `plan.json` and the household file alone, by arithmetic of its own: no function of the program is used, dates go
 * through `Date.UTC`, wall time through `Intl`. Returns what does not hold, in words; nothing where all does.
 */
import type { DialPlan, DialSetting, Plan, Window } from '../../src/plan/plan.ts';

/** What the household file asks of its dials; null: not said. */
export interface DialRules {
  readonly changeOn: readonly string[] | null;
  readonly settingsAtMost: number | null;
  readonly toleranceMinutes: number | null;
  readonly atLeastBetweenDays: number;
  readonly jumpAtMostMinutes: number | null;
}

const DAY_MS = 86_400_000;
const WEEKDAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];
const MONDAY_FIRST = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

export function faultsOfPlan(plan: Plan, rules: DialRules): readonly string[] {
  const dates = datesOf(plan);
  return [
    ...faultsOfSpan(plan, dates),
    ...faultsOfOffsets(plan),
    ...plan.lighting.flatMap((dial) =>
      [
        ...faultsOfSettings(dial, plan),
        ...faultsOfErrors(dial, dates),
        ...faultsOfChanges(dial, rules),
        ...faultsOfWall(dial, plan),
        ...faultsOfTradeoff(dial),
      ].map((fault) => `${dial.device}: ${fault}`),
    ),
    ...faultsOfInsets(plan, dates),
    ...faultsOfLoads(plan),
    ...faultsOfPeople(plan),
    ...faultsOfMists(plan),
  ];
}

function ms(date: string): number {
  const [year, month, day] = date.split('-').map(Number);
  return Date.UTC(year ?? 0, (month ?? 1) - 1, day ?? 1);
}

function next(date: string): string {
  return new Date(ms(date) + DAY_MS).toISOString().slice(0, 10);
}

function datesOf({ from, to }: { readonly from: string; readonly to: string }): readonly string[] {
  const dates: string[] = [];
  for (let date = from; date <= to; date = next(date)) dates.push(date);
  return dates;
}

function minutes(time: string): number {
  const [hour, minute] = time.split(':').map(Number);
  return (hour ?? 0) * 60 + (minute ?? 0);
}

/** Minutes a day of a setting's windows; on a 7-day dial those of each weekday must be the same. */
function litMinutes(windows: readonly Window[], turnsInDays: number): number {
  return windows.reduce((sum, { on, off }) => sum + minutes(off) - minutes(on), 0) / turnsInDays;
}

function faultsOfSpan(plan: Plan, dates: readonly string[]): readonly string[] {
  const isPlanned = (dial: DialPlan): boolean => dial.targetMinutes.length > 0;
  const lists = [
    ['site.sunMinutes', plan.site.sunMinutes],
    ...plan.lighting
      .filter(isPlanned)
      .flatMap((dial) => [
        [`${dial.device} targetHighMinutes`, dial.targetHighMinutes] as const,
        [`${dial.device} targetLowMinutes`, dial.targetLowMinutes] as const,
        [`${dial.device} targetMinutes`, dial.targetMinutes] as const,
        ...dial.lamps
          .filter(({ targetMinutes }) => targetMinutes.length > 0)
          .map(({ enclosure, lamp, targetMinutes }) => [`${enclosure}/${lamp}`, targetMinutes] as const),
      ]),
  ] as const;
  return lists
    .filter(([, list]) => list.length !== dates.length)
    .map(([name, list]) => `${name} has ${list.length} values for ${dates.length} days`);
}

/** The offset of a zone at an instant, read from what `Intl` prints. */
function offsetMinutes(zone: string, instantMs: number): number {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
  }).formatToParts(instantMs);
  const of = (type: string): number => Number(parts.find((part) => part.type === type)?.value);
  return (Date.UTC(of('year'), of('month') - 1, of('day'), of('hour'), of('minute')) - instantMs) / 60_000;
}

function faultsOfOffsets({ site, timezone, from }: Plan): readonly string[] {
  const year = Number(from.slice(0, 4));
  const standard = Math.min(
    offsetMinutes(timezone, Date.UTC(year, 0, 1)),
    offsetMinutes(timezone, Date.UTC(year, 6, 1)),
  );
  return [
    ...(standard === site.standardOffsetMinutes ? [] : [`the standard offset is ${standard} min`]),
    ...site.offsets
      .filter(({ fromUtc, minutes: stated }) => offsetMinutes(timezone, Date.parse(fromUtc)) !== stated)
      .map(({ fromUtc }) => `the offset from ${fromUtc} on is another`),
  ];
}

function faultsOfSettings(dial: DialPlan, plan: Plan): readonly string[] {
  const { settings } = dial;
  if (settings.length === 0) return [];
  const faults: string[] = [];
  if (settings[0]?.from !== plan.from) faults.push('the first setting does not begin with the plan');
  if (settings.at(-1)?.to !== plan.to) faults.push('the last setting does not end with the plan');
  settings.forEach((setting, i) => {
    const after = settings[i + 1];
    if (setting.from > setting.to) faults.push(`the setting of ${setting.from} ends before it begins`);
    if (after && after.from !== next(setting.to)) faults.push(`a gap or an overlap after ${setting.to}`);
    if (after && after.slots.join() === setting.slots.join()) faults.push(`${after.from} changes nothing`);
    if (dial.pins !== null && setting.slots.join() !== slotsOf(setting, dial).join())
      faults.push(`the slots of ${setting.from} are not its windows`);
    for (const { on, off } of setting.windows) {
      if (minutes(on) >= minutes(off)) faults.push(`${on} to ${off} is no window`);
      if ([on, off].some((edge) => minutes(edge) % dial.stepMinutes !== 0))
        faults.push(`${on} to ${off} does not lie on steps of ${dial.stepMinutes} min`);
    }
  });
  return faults;
}

function slotsOf({ windows }: DialSetting, { stepMinutes, turnsInDays }: DialPlan): readonly number[] {
  const slots: number[] = [];
  for (let minute = 0; minute < 1440 * turnsInDays; minute += stepMinutes) {
    const weekday = MONDAY_FIRST[Math.floor(minute / 1440)];
    const isOn = windows.some(
      ({ day, on, off }) =>
        (day === undefined || day === weekday) && minutes(on) <= minute % 1440 && minute % 1440 < minutes(off),
    );
    if (isOn) slots.push(minute / stepMinutes);
  }
  return slots;
}

function faultsOfErrors(dial: DialPlan, dates: readonly string[]): readonly string[] {
  const daylight = dial.lamps.filter(({ uses }) => uses.some((use) => use === 'daylight' || use === 'plants'));
  const faults: string[] = [];
  dates.forEach((date, i) => {
    const targets = daylight.map(({ targetMinutes }) => targetMinutes[i] ?? Number.NaN);
    if (targets.length === 0) return;
    if (dial.targetHighMinutes[i] !== Math.max(...targets) || dial.targetLowMinutes[i] !== Math.min(...targets))
      faults.push(`the envelope of ${date} is not that of its lamps`);
    const mean = ((dial.targetHighMinutes[i] ?? 0) + (dial.targetLowMinutes[i] ?? 0)) / 2;
    if (Math.abs((dial.targetMinutes[i] ?? 0) - mean) > 1e-6) faults.push(`the mean target of ${date} is not the mean`);
  });
  if (daylight.length === 0 || dial.settings.length === 0) return faults.slice(0, 3);
  const errorOn = (date: string): number => {
    const at = (ms(date) - ms(dates[0] ?? date)) / DAY_MS;
    const setting = dial.settings.find(({ from, to }) => from <= date && date <= to);
    const length = litMinutes(setting?.windows ?? [], dial.turnsInDays);
    return Math.max(
      Math.abs(length - (dial.targetHighMinutes[at] ?? 0)),
      Math.abs(length - (dial.targetLowMinutes[at] ?? 0)),
    );
  };
  const compare = (
    name: string,
    span: readonly string[],
    stated: { readonly worstErrorMinutes: number; readonly meanErrorMinutes: number },
  ) => {
    const errors = span.map(errorOn);
    const worst = Math.max(...errors);
    const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
    if (Math.abs(worst - stated.worstErrorMinutes) > 1e-6)
      faults.push(`${name}: the worst error is ${worst}, not ${stated.worstErrorMinutes}`);
    if (Math.abs(mean - stated.meanErrorMinutes) > 0.006)
      faults.push(`${name}: the mean error is ${mean}, not ${stated.meanErrorMinutes}`);
  };
  compare('all', dates, dial);
  for (const setting of dial.settings) compare(setting.from, datesOf(setting), setting);
  return faults;
}

function faultsOfChanges(
  { settings, lamps, worstErrorMinutes, turnsInDays }: DialPlan,
  rules: DialRules,
): readonly string[] {
  const faults: string[] = [];
  settings.forEach((setting, i) => {
    const before = settings[i - 1];
    if (!before) return;
    const weekday = WEEKDAYS[new Date(ms(setting.from)).getUTCDay()] ?? '';
    if (rules.changeOn && !rules.changeOn.includes(weekday)) faults.push(`${setting.from} is a ${weekday}`);
    if ((ms(setting.from) - ms(before.from)) / DAY_MS < rules.atLeastBetweenDays)
      faults.push(`${setting.from} follows ${before.from} too soon`);
    const jump = Math.abs(litMinutes(setting.windows, turnsInDays) - litMinutes(before.windows, turnsInDays));
    if (rules.jumpAtMostMinutes !== null && jump > rules.jumpAtMostMinutes)
      faults.push(`${setting.from} jumps by ${jump} min`);
  });
  const isDaylight = lamps.some(({ uses }) => uses.some((use) => use === 'daylight' || use === 'plants'));
  const most = rules.settingsAtMost ?? (rules.toleranceMinutes === null ? 8 : null);
  if (most !== null && settings.length > most) faults.push(`${settings.length} settings, at most ${most} asked`);
  if (isDaylight && most === null && rules.toleranceMinutes !== null && worstErrorMinutes > rules.toleranceMinutes)
    faults.push(`the worst error of ${worstErrorMinutes} min is beyond the tolerance`);
  return faults;
}

/** Edges of the day: a window that passes midnight is written as two, whose ends at midnight are none. */
function edgesOf(windows: readonly Window[]): { readonly ons: readonly number[]; readonly offs: readonly number[] } {
  const ons = windows.map(({ on }) => minutes(on));
  const offs = windows.map(({ off }) => minutes(off));
  const isThrough = ons.includes(0) && offs.includes(1440);
  return { ons: ons.filter((on) => !isThrough || on !== 0), offs: offs.filter((off) => !isThrough || off !== 1440) };
}

function faultsOfWall(dial: DialPlan, { timezone, site }: Plan): readonly string[] {
  const faults: string[] = [];
  for (const setting of dial.settings) {
    const spans = setting.wall;
    if (spans[0]?.from !== setting.from || spans.at(-1)?.to !== setting.to)
      faults.push(`the wall spans of ${setting.from} do not cover it`);
    spans.forEach((span, i) => {
      const after = spans[i + 1];
      if (after && after.from !== next(span.to)) faults.push(`the wall spans of ${setting.from} have a gap`);
    });
    if (dial.turnsInDays === 7) continue;
    for (const date of datesOf(setting)) {
      const span = spans.find(({ from, to }) => from <= date && date <= to);
      const noons = [ms(date) - DAY_MS / 2, ms(date) + DAY_MS * 1.5];
      const offsets = noons.map((noon) => offsetMinutes(timezone, noon));
      if (offsets[0] !== offsets[1]) continue;
      const shift = dial.clock === 'standard' ? (offsets[0] ?? 0) - site.standardOffsetMinutes : 0;
      const shifted = (edges: readonly number[]) =>
        edges
          .map((edge) => (edge + shift + 1440) % 1440)
          .toSorted((a, b) => a - b)
          .join();
      const fold = (edges: readonly number[]) =>
        edges
          .map((edge) => edge % 1440)
          .toSorted((a, b) => a - b)
          .join();
      const [own, wall] = [edgesOf(setting.windows), edgesOf(span?.windows ?? [])];
      if (shifted(own.ons) !== fold(wall.ons) || shifted(own.offs) !== fold(wall.offs))
        faults.push(`by the wall clock ${date} is not what the dial shows`);
    }
  }
  return faults;
}

function faultsOfTradeoff({ tradeoff, settings, worstErrorMinutes }: DialPlan): readonly string[] {
  const faults: string[] = [];
  tradeoff.forEach((row, i) => {
    const before = tradeoff[i - 1];
    if (before && row.settings !== before.settings + 1)
      faults.push(`row ${i + 1} of the trade-off is of ${row.settings} settings`);
    if (before && row.worstErrorMinutes > before.worstErrorMinutes)
      faults.push(`${row.settings} settings are worse than fewer`);
  });
  const reached = tradeoff.find((row) => row.settings === settings.length);
  if (reached && !settings.some(({ past }) => past) && worstErrorMinutes < reached.worstErrorMinutes)
    faults.push('the plan is better than its own trade-off');
  return faults;
}

/** A dial of insets alone lies inside the daylight of each of its enclosures. */
function faultsOfInsets(plan: Plan, dates: readonly string[]): readonly string[] {
  const isDay = (uses: readonly string[]): boolean => uses.includes('daylight') || uses.includes('plants');
  const faults: string[] = [];
  for (const dial of plan.lighting) {
    if (dial.settings.length === 0 || dial.turnsInDays === 7 || dial.lamps.some(({ uses }) => isDay(uses))) continue;
    const lit = dial.lamps.filter(({ targetMinutes }) => targetMinutes.length > 0);
    for (const { enclosure } of lit) {
      const day = plan.lighting.find(({ lamps }) =>
        lamps.some((lamp) => lamp.enclosure === enclosure && lamp.uses.includes('daylight')),
      );
      if (!day || day.clock !== dial.clock || day.turnsInDays === 7) continue;
      for (const date of dates) {
        const inner = dial.settings.find(({ from, to }) => from <= date && date <= to)?.windows ?? [];
        const outer = day.settings.find(({ from, to }) => from <= date && date <= to)?.windows ?? [];
        const isInside = inner.every(({ on, off }) =>
          outer.some((window) => minutes(window.on) <= minutes(on) && minutes(off) <= minutes(window.off)),
        );
        if (!isInside) faults.push(`${dial.device}: outside the day of ${enclosure} on ${date}`);
      }
    }
  }
  return faults;
}

function faultsOfLoads({ loads, lighting, notPlanned }: Plan): readonly string[] {
  return loads.flatMap(({ device, peakW, continuousW, ratingW }) => {
    const dial = lighting.find((each) => each.device === device);
    const watts = (dial?.lamps ?? []).reduce((sum, { powerW }) => sum + powerW, 0);
    const isOver = ratingW !== null && peakW > ratingW;
    return [
      ...(continuousW > peakW ? [`${device}: more runs for hours than runs at all`] : []),
      ...(isOver && (dial?.settings.length ?? 0) > 0 ? [`${device}: overloaded, and still set`] : []),
      ...(isOver && !notPlanned.some((lamp) => lamp.device === device)
        ? [`${device}: overloaded, nothing left out`]
        : []),
      ...(!isOver && watts > peakW ? [`${device}: its lamps draw ${watts} W, its load says ${peakW} W`] : []),
    ];
  });
}

function faultsOfPeople({ feeding, chores, events, enclosures, from, to, stock }: Plan): readonly string[] {
  const within = (date: string): boolean => from <= date && date <= to;
  const known = new Set(enclosures.map(({ id }) => id));
  const uids = events.map(({ uid }) => uid);
  return [
    ...feeding
      .filter(({ date, enclosure }) => !within(date) || !known.has(enclosure))
      .map(({ date }) => `a feed on ${date}`),
    ...chores.flatMap(({ id, dates }) =>
      dates.every((date, i) => within(date) && (i === 0 || (dates[i - 1] ?? '') < date)) ? [] : [`the dates of ${id}`],
    ),
    ...stock.filter(({ date, amount }) => !within(date) || amount <= 0).map(({ date }) => `an order on ${date}`),
    ...(new Set(uids).size === uids.length ? [] : ['two events have one identity']),
  ];
}

function faultsOfMists({ misting, from, to }: Plan): readonly string[] {
  return misting.flatMap(({ enclosure, sets, limits }) => {
    const faults: string[] = [];
    if (sets.length > 0 && (sets[0]?.from !== from || sets.at(-1)?.to !== to))
      faults.push('the sets do not cover the plan');
    sets.forEach((set, i) => {
      const after = sets[i + 1];
      if (after && after.from !== next(set.to)) faults.push(`a gap or an overlap after ${set.to}`);
      const covered = set.conditions.flatMap((condition) => datesOf(condition));
      if (covered.join() !== datesOf(set).join()) faults.push(`the conditions of ${set.from} do not cover it`);
      const worst = Math.max(0, ...set.conditions.map(({ shortfall }) => shortfall));
      if (Math.abs(worst - set.shortfall) > 1e-9)
        faults.push(`the shortfall of ${set.from} is not its conditions' worst`);
      if (limits && set.entries.length > limits.entries)
        faults.push(`${set.entries.length} entries of ${limits.entries}`);
      if (
        limits &&
        set.entries.some(({ seconds }) => seconds < limits.shortestSeconds || seconds > limits.longestSeconds)
      )
        faults.push(`a mist of ${set.from} is too short or too long`);
    });
    return faults.map((fault) => `mists of ${enclosure}: ${fault}`);
  });
}
