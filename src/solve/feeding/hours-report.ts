/** Says which feeds lie outside the animal's hours, on which dates, and what would make them fit. */
import { type EpochDay, epochDay, isoDateOf } from '../../basics/calendar-day.ts';
import { clockTimeOf, DAY_MINUTES, minuteOf, wrapMinute } from '../../basics/minute-of-day.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { Feed } from '../../plan/plan.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import { type FeedingHours, feedingHours, type LightsOfDay, nearestShift, shiftsThatFit } from './feeding-hours.ts';

interface HourCheck {
  readonly day: EpochDay;
  readonly time: string;
  readonly hours: FeedingHours;
  readonly shifts: readonly [number, number];
}

/** Reports `feed-outside-hours` and hours that were taken or too few. */
export function reportHours(
  care: Care,
  enclosure: CareEnclosure,
  lights: LightsOfDay,
  feeds: readonly Feed[],
  log: Log,
): void {
  reportTimes(care, enclosure, feeds, log);
  const feeding = enclosure.targets.feeding;
  if (!feeding || feeds.length === 0) return;
  const checks = feeds.flatMap((feed): HourCheck[] => {
    const day = epochDay(feed.date);
    const lit = lights(enclosure.id, day);
    if (!lit) return [];
    const hours = feedingHours(feeding, lit);
    return [{ day, time: feed.time, hours, shifts: shiftsThatFit(hours, minuteOf(feed.time)) }];
  });
  const outside = checks.filter(({ shifts: [least, most] }) => least > 0 || most < 0);
  if (outside.length === 0) return;
  const common = commonHours(checks);
  log.report(
    'feed-outside-hours',
    {
      enclosure: enclosure.id,
      times: [...new Set(outside.map(({ time }) => time))].toSorted(),
      hours: words(widestHours(outside)),
      outside: outside.length,
      feeds: checks.length,
      dates: runsOf(outside, checks),
      setting: settingThatFits(care, enclosure, checks),
      between: common && words(common),
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
  return `${clockTimeOf(wrapMinute(Math.ceil(fromMinute)))} to ${clockTimeOf(wrapMinute(Math.floor(toMinute)))}`;
}

function widestHours(checks: readonly HourCheck[]): FeedingHours {
  return {
    fromMinute: Math.min(...checks.map(({ hours }) => hours.fromMinute)),
    toMinute: Math.max(...checks.map(({ hours }) => hours.toMinute)),
  };
}

/** The hours that lie inside those of every date, or null. */
function commonHours(checks: readonly HourCheck[]): FeedingHours | null {
  const fromMinute = Math.max(...checks.map(({ hours }) => hours.fromMinute));
  const toMinute = Math.min(...checks.map(({ hours }) => hours.toMinute));
  return fromMinute <= toMinute && toMinute - fromMinute < DAY_MINUTES ? { fromMinute, toMinute } : null;
}

/** Runs of feeds that are all outside, as dates. */
function runsOf(outside: readonly HourCheck[], checks: readonly HourCheck[]): readonly string[] {
  const days = [...new Set(checks.map(({ day }) => day))].toSorted((a, b) => a - b);
  const bad = new Set(outside.map(({ day }) => day));
  const runs: { from: EpochDay; to: EpochDay }[] = [];
  let open: { from: EpochDay; to: EpochDay } | null = null;
  for (const day of days) {
    if (!bad.has(day)) open = null;
    else if (open) open.to = day;
    else {
      open = { from: day, to: day };
      runs.push(open);
    }
  }
  return runs.map(({ from, to }) => (from === to ? isoDateOf(from) : `${isoDateOf(from)} to ${isoDateOf(to)}`));
}

/** Returns the placement of the day, in the words of the file, that lets every feed fit; null where none does. */
function settingThatFits(care: Care, enclosure: CareEnclosure, checks: readonly HourCheck[]): string | null {
  const { anchor } = enclosure.targets.day;
  const shift = nearestShift(
    checks.map(({ shifts }) => shifts),
    dialStep(care, enclosure),
  );
  if (shift === null || Math.abs(shift) >= DAY_MINUTES / 2) return null;
  return `${anchor.kind.replace('-', '_')}: "${clockTimeOf(wrapMinute(anchor.minute + shift))}"`;
}

/** The step of the dial of the enclosure's daylight; 15 min where none is named. */
function dialStep(care: Care, enclosure: CareEnclosure): number {
  const outlets = enclosure.lamps.filter(({ uses }) => uses.includes('daylight')).map(({ outlet }) => outlet);
  const dials = care.devices.filter((device) => device.kind === 'pin-dial');
  return dials.find(({ id }) => outlets.includes(id))?.stepMinutes ?? dials[0]?.stepMinutes ?? 15;
}
