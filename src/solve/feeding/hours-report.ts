/** Says which feeds lie outside the animal's hours, on which dates, and what would make them fit. */
import { type EpochDay, epochDay, isoDateOf } from '../../basics/calendar-day.ts';
import { clockTimeOf, DAY_MINUTES, minuteOf, wrapMinute } from '../../basics/minute-of-day.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { Feed } from '../../plan/plan.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import type { EnclosureHours } from './enclosure-hours.ts';
import { type FeedingHours, nearestShift, shiftsThatFit } from './feeding-hours.ts';

interface HourCheck {
  readonly day: EpochDay;
  readonly time: string;
  readonly hours: FeedingHours;
  readonly shifts: readonly [number, number];
}

/** Hours of people are said to the quarter of an hour where that fits; ours. */
const ROUND_MINUTES = 15;

/** Reports `feed-outside-hours` and hours that were taken or too few. */
export function reportHours(
  care: Care,
  enclosure: CareEnclosure,
  enclosureHours: EnclosureHours,
  feeds: readonly Feed[],
  log: Log,
): void {
  reportTimes(care, enclosure, feeds, log);
  const checks = feeds.flatMap((feed): HourCheck[] => {
    const day = epochDay(feed.date);
    const hours = enclosureHours.on(day);
    return hours ? [{ day, time: feed.time, hours, shifts: shiftsThatFit(hours, minuteOf(feed.time)) }] : [];
  });
  const outside = checks.filter(({ shifts: [least, most] }) => least > 0 || most < 0);
  if (outside.length === 0) return;
  const common = commonHours(checks);
  log.report(
    'feed-outside-hours',
    {
      enclosure: enclosure.id,
      times: [...new Set(outside.map(({ time }) => time))].toSorted(),
      outside: outside.length,
      feeds: checks.length,
      dates: runsOf(outside, checks),
      setting: settingThatFits(care, enclosure, enclosureHours, checks),
      between: common && words(common),
      feedsAt: common && hoursWith(care, common),
    },
    care.placeOfTarget(enclosure.id, 'feeding') ?? care.placeOf(enclosure.path),
  );
}

function reportTimes(care: Care, enclosure: CareEnclosure, feeds: readonly Feed[], log: Log): void {
  const feeder = care.people.find(({ feedsAtMinutes }) => feedsAtMinutes.length > 0);
  const place = care.placeOf(['people']);
  const person = feeds[0]?.by ?? 'keeper';
  if (feeds.length > 0 && !feeder) log.report('feeding-hours-taken', { enclosure: enclosure.id, person }, place);
  const byDay = new Map<string, number>();
  for (const { date, food } of feeds) byDay.set(`${date} ${food}`, (byDay.get(`${date} ${food}`) ?? 0) + 1);
  const times = Math.max(0, ...byDay.values());
  const given = feeder?.feedsAtMinutes.length ?? times;
  if (feeder && times > given)
    log.report('feeds-at-too-few', { enclosure: enclosure.id, person: feeder.id, times, given }, place);
}

function words({ fromMinute, toMinute }: FeedingHours): string {
  const [from, to] = [clockTimeOf(wrapMinute(Math.ceil(fromMinute))), clockTimeOf(wrapMinute(Math.floor(toMinute)))];
  return from === to ? `at ${from}` : `between ${from} and ${to}`;
}

/** The hours of the person who feeds with one more that fits on every date; null where nobody says any or nothing else is fed at them. */
function hoursWith({ people, enclosures }: Care, { fromMinute, toMinute }: FeedingHours): readonly string[] | null {
  const given = people.find(({ feedsAtMinutes }) => feedsAtMinutes.length > 0)?.feedsAtMinutes;
  if (!given || enclosures.filter(({ feeders }) => feeders.length > 0).length < 2) return null;
  const middle = Math.round((fromMinute + toMinute) / 2 / ROUND_MINUTES) * ROUND_MINUTES;
  const isInside = fromMinute <= middle && middle <= toMinute;
  const minutes = new Set([...given, wrapMinute(isInside ? middle : Math.ceil(fromMinute))]);
  return [...minutes].toSorted((a, b) => a - b).map(clockTimeOf);
}

/** The hours that lie inside those of every date, or null. */
function commonHours(checks: readonly HourCheck[]): FeedingHours | null {
  const fromMinute = Math.max(...checks.map(({ hours }) => hours.fromMinute));
  const toMinute = Math.min(...checks.map(({ hours }) => hours.toMinute));
  return fromMinute <= toMinute && toMinute - fromMinute < DAY_MINUTES ? { fromMinute, toMinute } : null;
}

/** Runs of feeds that are all outside, as dates with the hours of the first. */
function runsOf(outside: readonly HourCheck[], checks: readonly HourCheck[]): readonly string[] {
  const days = [...new Set(checks.map(({ day }) => day))];
  const bad = new Map(outside.map((check) => [check.day, check]));
  const runs: { from: HourCheck; to: EpochDay }[] = [];
  let open: { from: HourCheck; to: EpochDay } | null = null;
  for (const day of days) {
    const check = bad.get(day);
    if (!check) open = null;
    else if (open) open.to = day;
    else {
      open = { from: check, to: day };
      runs.push(open);
    }
  }
  return runs.map(({ from, to }) => {
    const dates = from.day === to ? isoDateOf(to) : `${isoDateOf(from.day)} to ${isoDateOf(to)}`;
    return `${dates} (${words(from.hours)})`;
  });
}

/** Returns the placement of the day, in the words of the file, that lets every feed fit; null where none does. */
function settingThatFits(
  care: Care,
  enclosure: CareEnclosure,
  hours: EnclosureHours,
  checks: readonly HourCheck[],
): string | null {
  const { anchor } = enclosure.targets.day;
  const step = dialStep(care, enclosure);
  const shift = nearestShift(
    checks.map(({ shifts }) => shifts),
    step,
  );
  if (shift !== null && Math.abs(shift) < DAY_MINUTES / 2)
    return `${anchor.kind.replace('-', '_')}: "${clockTimeOf(wrapMinute(anchor.minute + shift))}"`;
  const edge = anchor.kind === 'lights-off' ? null : lightsOffThatFits(enclosure, hours, checks, step);
  return edge === null ? null : `lights_off: "${clockTimeOf(wrapMinute(edge))}"`;
}

/** Where the hours hang on lights-off alone: the lights-off, held all year, that lets every feed fit, nearest to the first date's. */
function lightsOffThatFits(
  enclosure: CareEnclosure,
  hours: EnclosureHours,
  checks: readonly HourCheck[],
  step: number,
): number | null {
  const feeding = enclosure.targets.feeding;
  const edges = feeding && [feeding.from, feeding.to];
  if (!edges?.every((edge) => 'of' in edge && edge.of.endsWith('lights_off'))) return null;
  const offs = checks.flatMap(({ day, shifts: [least, most] }): (readonly [number, number])[] => {
    const lights = hours.lights(day);
    if (!lights) return [];
    const off = lights.lightsOffWallMinute - lights.wallLessAnimalMinutes;
    return [[off + least, off + most]];
  });
  const [first] = offs;
  if (!first) return null;
  const now = Math.round((first[0] + first[1]) / 2 / step) * step;
  const shift = nearestShift(
    offs.map(([least, most]) => [least - now, most - now] as const),
    step,
  );
  return shift === null ? null : now + shift;
}

/** The step of the dial of the enclosure's daylight; 15 min where none is named. */
function dialStep(care: Care, enclosure: CareEnclosure): number {
  const outlets = enclosure.lamps.filter(({ uses }) => uses.includes('daylight')).map(({ outlet }) => outlet);
  const dials = care.devices.filter((device) => device.kind === 'pin-dial');
  return dials.find(({ id }) => outlets.includes(id))?.stepMinutes ?? dials[0]?.stepMinutes ?? 15;
}
