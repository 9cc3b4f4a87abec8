/** Warnings about the site and its clocks: a place that cannot keep them, tables of zones that part, and wall-time timers where the clocks change at midnight. */
import { civilOf, isoDateOf } from '../basics/calendar-day.ts';
import { DAY_MINUTES } from '../basics/minute-of-day.ts';
import { misplacement } from '../basics/place-in-zone.ts';
import { type ZoneDisagreement, zoneDisagreements } from '../basics/second-zone-table.ts';
import type { UtcOffsets } from '../basics/utc-offsets.ts';
import { zoneOffsets } from '../basics/zone.ts';
import type { Log } from '../diagnostics/log.ts';
import { wallChanges } from '../plan/clock-changes.ts';
import type { Care } from '../resolve/care.ts';

/** Reports `longitude-off-zone`, `latitude-off-zone`, `stale-zone-table` (a note where the tables part for a week or less) and `clocks-change-at-midnight`. */
export function warnOfClocks(care: Pick<Care, 'site' | 'plan' | 'devices' | 'placeOf'>, log: Log): void {
  const offsets = zoneOffsets(care.site.timezone, care.plan.from, care.plan.days);
  warnOfPlace(care, log);
  warnOfStaleTable(care, offsets, log);
  warnOfMidnightChange(care, offsets, log);
}

function warnOfPlace({ site, plan, placeOf }: Pick<Care, 'site' | 'plan' | 'placeOf'>, log: Log): void {
  const { timezone: zone, latitude, longitude } = site;
  const found = misplacement(zone, civilOf(plan.from).year, site);
  if (found?.kind === 'east-west')
    log.report('longitude-off-zone', { zone, longitude, hours: found.hours }, placeOf(['site', 'longitude']));
  if (found?.kind === 'north-south')
    log.report('latitude-off-zone', { zone, latitude, summer: found.summer }, placeOf(['site', 'latitude']));
}

function warnOfStaleTable({ plan, placeOf }: Pick<Care, 'plan' | 'placeOf'>, offsets: UtcOffsets, log: Log): void {
  const all = zoneDisagreements(offsets, plan.from, plan.days);
  const lasting = all.filter(({ brief }) => !brief);
  const told = lasting.length > 0 ? lasting : all;
  const [first] = told;
  if (first === undefined) return;
  const values = { zone: offsets.zone, ...wordsOf(first), spans: told.length };
  log.report('stale-zone-table', values, placeOf(['site', 'timezone']), lasting.length > 0 ? 'warning' : 'note');
}

function wordsOf({ fromUtcMinute, toUtcMinute, runtimeMinutes, secondMinutes }: ZoneDisagreement) {
  return {
    from: isoDateOf(Math.floor((fromUtcMinute + runtimeMinutes) / DAY_MINUTES)),
    to: isoDateOf(Math.floor((toUtcMinute - 1 + runtimeMinutes) / DAY_MINUTES)),
    ours: utcWords(runtimeMinutes),
    second: utcWords(secondMinutes),
  };
}

function utcWords(minutes: number): string {
  const size = Math.abs(minutes);
  const hours = `${Math.floor(size / 60)}${size % 60 === 0 ? '' : `:${String(size % 60).padStart(2, '0')}`}`;
  return minutes < 0 ? `UTC-${hours}` : `UTC+${hours}`;
}

function warnOfMidnightChange(
  { plan, devices, placeOf }: Pick<Care, 'plan' | 'devices' | 'placeOf'>,
  offsets: UtcOffsets,
  log: Log,
): void {
  const change = wallChanges(offsets, plan.from, plan.from + plan.days - 1).find(({ atMidnight }) => atMidnight);
  if (change === undefined) return;
  for (const device of devices) {
    if (!('clock' in device) || device.clock !== 'wall') continue;
    const { date, from, to } = change;
    const place = placeOf([...device.path, 'clock']);
    log.report('clocks-change-at-midnight', { timer: device.id, zone: offsets.zone, date, from, to }, place);
  }
}
