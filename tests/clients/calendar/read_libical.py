"""Reads calendar files with libical; prints one JSON list of [start, uid, title] a file."""
import json
import sys

import gi

gi.require_version("ICalGLib", "3.0")
from gi.repository import ICalGLib  # noqa: E402

FIRST = ICalGLib.Time.new_from_string("20260101T000000Z")
LAST = ICalGLib.Time.new_from_string("20320101T000000Z")
UTC = ICalGLib.Timezone.get_utc_timezone()


def local(seconds, start):
    time = ICalGLib.Time.new_from_timet_with_zone(seconds, 0, UTC)
    if start.is_date():
        return "%04d-%02d-%02d" % (time.get_year(), time.get_month(), time.get_day())
    time = time.convert_to_zone(start.get_timezone())
    date = "%04d-%02d-%02d" % (time.get_year(), time.get_month(), time.get_day())
    return date + "T%02d:%02d" % (time.get_hour(), time.get_minute())


def occurrences(event):
    found = []
    event.foreach_recurrence(FIRST, LAST, lambda _component, span, *_data: found.append(span.get_start()), None)
    return found


for path in sys.argv[1:]:
    with open(path, encoding="utf-8") as file:
        calendar = ICalGLib.Component.new_from_string(file.read())
    rows = []
    event = calendar.get_first_component(ICalGLib.ComponentKind.VEVENT_COMPONENT)
    while event:
        for seconds in occurrences(event):
            rows.append([local(seconds, event.get_dtstart()), event.get_uid(), event.get_summary()])
        event = calendar.get_next_component(ICalGLib.ComponentKind.VEVENT_COMPONENT)
    print(json.dumps(rows))
