/**
 * The definition of a zone that stands in a calendar. A zone whose table of yearly rules says the same as the plan's own offsets is
 * written with these rules; any other as one observance a change of the plan.
 */
import { type EpochDay, isoDateOf } from '../../basics/calendar-day.ts';
import { clockTimeOf, DAY_MINUTES } from '../../basics/minute-of-day.ts';
import { secondOffsets, vtimezoneBlock, zoneDisagreements } from '../../basics/second-zone-table.ts';
import type { UtcOffsets } from '../../basics/utc-offsets.ts';

/** Returns a VTIMEZONE, lines ended by CRLF, that gives the plan's offsets on every date between the two, both inclusive. */
export function vtimezone(offsets: UtcOffsets, firstDay: EpochDay, lastDay: EpochDay): string {
  const block = vtimezoneBlock(offsets.zone);
  return block !== null && isRight(offsets, firstDay, lastDay) ? named(block, offsets.zone) : observances(offsets);
}

function isRight(offsets: UtcOffsets, firstDay: EpochDay, lastDay: EpochDay): boolean {
  const days = lastDay - firstDay + 1;
  return secondOffsets(offsets, firstDay, days) !== null && zoneDisagreements(offsets, firstDay, days).length === 0;
}

/** A zone's other names lead to one entry of the table; the calendar keeps the plan's. */
function named(block: string, zone: string): string {
  const lines = block.split(/\r?\n/).filter((line) => line !== '');
  return lines.map((line) => `${line.startsWith('TZID:') ? `TZID:${zone}` : line}\r\n`).join('');
}

function observances({ zone, spans, standardOffsetMinutes }: UtcOffsets): string {
  const blocks = spans.map((span, index) => {
    const before = spans[index - 1]?.offsetMinutes ?? span.offsetMinutes;
    const kind = span.offsetMinutes > standardOffsetMinutes ? 'DAYLIGHT' : 'STANDARD';
    return [
      `BEGIN:${kind}`,
      `TZNAME:${offsetText(span.offsetMinutes)}`,
      `TZOFFSETFROM:${offsetText(before)}`,
      `TZOFFSETTO:${offsetText(span.offsetMinutes)}`,
      `DTSTART:${localText(span.fromUtcMinute + before)}`,
      `END:${kind}`,
    ];
  });
  const lines = ['BEGIN:VTIMEZONE', `TZID:${zone}`, ...blocks.flat(), 'END:VTIMEZONE'];
  return lines.map((line) => `${line}\r\n`).join('');
}

function offsetText(minutes: number): string {
  return `${minutes < 0 ? '-' : '+'}${clockTimeOf(Math.abs(minutes)).replace(':', '')}`;
}

function localText(localMinute: number): string {
  const day = Math.floor(localMinute / DAY_MINUTES);
  return `${isoDateOf(day).replaceAll('-', '')}T${clockTimeOf(localMinute - day * DAY_MINUTES).replace(':', '')}00`;
}
