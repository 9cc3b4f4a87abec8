/** Warnings about the site's clocks: tables of zones that part, and wall-time timers where the clocks change at midnight. */
import { isoDateOf } from '../basics/calendar-day.ts';
import { DAY_MINUTES } from '../basics/minute-of-day.ts';
import { type ZoneDisagreement, zoneDisagreements } from '../basics/second-zone-table.ts';
import type { UtcOffsets } from '../basics/utc-offsets.ts';
import { zoneOffsets } from '../basics/zone.ts';
import type { Log } from '../diagnostics/log.ts';
import { wallChanges } from '../plan/clock-changes.ts';
import type { Care } from '../resolve/care.ts';

/** Reports `stale-zone-table` (a note where the tables part for a week or less) and `clocks-change-at-midnight`. */
export function warnOfClocks(care: Pick<Care, 'site' | 'plan' | 'devices' | 'placeOf'>, log: Log): void {
  const offsets = zoneOffsets(care.site.timezone, care.plan.from, care.plan.days);
  warnOfStaleTable(care, offsets, log);
  warnOfMidnightChange(care, offsets, log);
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
