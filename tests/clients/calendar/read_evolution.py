"""
Subscribes to a calendar with evolution-data-server, the store behind desktop calendars, and answers lines on standard input:
`list` prints [uid, sequence, title] of each event, `occurrences FROM TO` prints [start, uid, title] of each, `refresh` fetches anew.
"""
import json
import sys

import gi

for name, version in (("EDataServer", "1.2"), ("ECal", "2.0"), ("ICalGLib", "3.0")):
    gi.require_version(name, version)
from gi.repository import ECal, EDataServer, ICalGLib  # noqa: E402

SOURCE = EDataServer.SourceRegistry.new_sync(None).ref_source("care")
CLIENT = ECal.Client.connect_sync(SOURCE, ECal.ClientSourceType.EVENTS, 5, None)


def events():
    _done, components = CLIENT.get_object_list_as_comps_sync("#t", None)
    rows = [component.get_icalcomponent() for component in components]
    return sorted([row.get_uid(), row.get_sequence(), row.get_summary()] for row in rows)


def local(time):
    date = "%04d-%02d-%02d" % (time.get_year(), time.get_month(), time.get_day())
    return date if time.is_date() else date + "T%02d:%02d" % (time.get_hour(), time.get_minute())


def occurrences(first, last):
    rows = []
    zone = ICalGLib.Timezone.get_utc_timezone()
    seconds = [ICalGLib.Time.new_from_string(text.replace("-", "")).as_timet_with_zone(zone) for text in (first, last)]

    def add(component, start, _end, *_data):
        rows.append([local(start), component.get_uid(), component.get_summary()])
        return True

    CLIENT.generate_instances_sync(seconds[0], seconds[1], None, add, None)
    return sorted(rows)


for line in sys.stdin:
    command, *words = line.split()
    if command == "refresh":
        answer = CLIENT.refresh_sync(None)
    else:
        answer = events() if command == "list" else occurrences(*words)
    print(json.dumps(answer), flush=True)
