"""Reads calendar files with python-icalendar and recurring-ical-events; prints one JSON list of [start, uid, title] a file."""
import datetime
import json
import sys

import icalendar
import recurring_ical_events

FIRST, LAST = datetime.date(2026, 1, 1), datetime.date(2032, 1, 1)


def local(start):
    return start.strftime("%Y-%m-%dT%H:%M") if isinstance(start, datetime.datetime) else start.isoformat()


for path in sys.argv[1:]:
    with open(path, "rb") as file:
        calendar = icalendar.Calendar.from_ical(file.read())
    events = recurring_ical_events.of(calendar).between(FIRST, LAST)
    print(json.dumps([[local(event["DTSTART"].dt), str(event["UID"]), str(event["SUMMARY"])] for event in events]))
