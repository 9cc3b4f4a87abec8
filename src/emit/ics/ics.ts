/** The calendar file of one person (RFC 5545), from the plan alone. The one home of ical-generator. */
import ical, {
  type ICalAlarmData,
  ICalAlarmType,
  ICalCalendarMethod,
  type ICalDayJsStub,
  type ICalEventData,
  ICalEventStatus,
  ICalEventTransparency,
} from 'ical-generator';
import { epochDay } from '../../basics/calendar-day.ts';
import { plainLine, plainLines } from '../../basics/plain-line.ts';
import type { UtcOffsets } from '../../basics/utc-offsets.ts';
import type { Plan, PlanEvent } from '../../plan/plan.ts';
import { siteOffsets } from '../../plan/site-offsets.ts';
import { words } from '../../plan/words/words.ts';
import { basicForm, endOf, foldedLines, ruleLines } from './ics-text.ts';
import { vtimezone } from './vtimezone.ts';

/** To subscribe: what is. To import: also what an earlier file brought and is no more, as CANCELLED. */
export type IcsKind = 'subscribe' | 'import';

const REFRESH_SECONDS = 4 * 3600;

/** Returns the calendar of a person, empty but for its name where the plan has no event for them. */
export function emitIcs(plan: Plan, person: string, kind: IcsKind): string {
  const events = plan.events.filter(
    (event) => event.for === person && (kind === 'import' || event.status === 'CONFIRMED'),
  );
  return calendarText(words(plan.language).calendar.calendarName(plan.name, person), events, siteOffsets(plan));
}

function calendarText(name: string, events: readonly PlanEvent[], offsets: UtcOffsets): string {
  const calendar = ical({
    prodId: '//Dewdial//Care calendar//EN',
    method: ICalCalendarMethod.PUBLISH,
    name: escaped(plainLine(name)),
    ttl: REFRESH_SECONDS,
    timezone: null,
  });
  const head = calendar.toString().replace(/END:VCALENDAR$/, '');
  const bodies = events.map((event) => alarmsLast(calendar.createEvent(eventData(event, offsets)).toString()));
  return `${head}${zoneOf(events, offsets)}${bodies.map(foldedLines).join('')}END:VCALENDAR\r\n`;
}

/** Only events with a time of day name a zone. */
function zoneOf(events: readonly PlanEvent[], offsets: UtcOffsets): string {
  const timed = events.filter(({ allDay }) => !allDay);
  if (timed.length === 0) return '';
  const days = timed
    .flatMap(({ start, until }) => [start, until ?? start])
    .map((local) => epochDay(local.slice(0, 10)));
  return vtimezone(offsets, Math.min(...days), Math.max(...days));
}

function eventData(event: PlanEvent, offsets: UtcOffsets): ICalEventData {
  const stamp = finished(basicForm(event.stamp.slice(0, 19)));
  const summary = plainLine(event.title);
  const description = plainLines(event.description);
  return {
    id: event.uid,
    sequence: event.sequence,
    stamp,
    lastModified: stamp,
    start: finished(basicForm(event.start)),
    end: finished(endOf(event)),
    allDay: event.allDay,
    timezone: event.allDay ? null : offsets.zone,
    repeating: ruleLines(event, offsets),
    summary,
    description: description === '' ? null : description,
    categories: [{ name: plainLine(event.category) }],
    transparency: ICalEventTransparency.TRANSPARENT,
    status: event.status === 'CANCELLED' ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
    alarms: event.alarmMinutes === null || event.status === 'CANCELLED' ? [] : alarms(event.alarmMinutes, summary),
  };
}

function alarms(minutes: number, description: string): ICalAlarmData[] {
  return [{ type: ICalAlarmType.display, trigger: minutes * 60, description }];
}

/**
 * Dresses a date or time in its final form as the kind of object that ical-generator asks for its text: nothing is converted, so no
 * time zone of the process or of any table can move it.
 */
function finished(basic: string): ICalDayJsStub {
  const date: ICalDayJsStub = {
    format: (pattern) => (pattern === 'YYYYMMDD' ? basic.slice(0, 8) : basic.slice(9, 15)),
    isValid: () => true,
    toDate: () => new Date(`${basic.slice(0, 4)}-${basic.slice(4, 6)}-${basic.slice(6, 8)}T00:00Z`),
    toJSON: () => basic,
    tz: () => date,
    utc: () => date,
  };
  return date;
}

/** The generator escapes what an event says, but not the calendar's name. */
function escaped(name: string): string {
  return name.replace(/[\\;,]/g, (character) => `\\${character}`);
}

/** The standard wants an event's properties before its alarms. */
function alarmsLast(text: string): string {
  return text.replace(/(BEGIN:VALARM\r\n[\s\S]*?END:VALARM\r\n)([\s\S]*?)(?=END:VEVENT\r\n)/g, '$2$1');
}
