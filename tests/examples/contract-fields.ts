/** The fields of plan.json that others build on, by place; `[]` stands for each entry of a list, `{}` for each value of a map. */
export const CONTRACT_FIELDS: Readonly<Record<string, readonly string[]>> = {
  '': [
    ...['format', 'id', 'revision', 'made', 'tool', 'digests', 'previous', 'name', 'timezone', 'from', 'to'],
    ...['units', 'paper', 'language', 'contacts', 'people', 'site', 'enclosures', 'cautions', 'sources', 'lighting'],
    ...['misting', 'feeding', 'rotation', 'chores', 'stock', 'away', 'events', 'notPlanned', 'loads', 'assumptions'],
    'warnings',
  ],
  'people[]': ['id', 'feedsAt', 'reminderMinutes'],
  site: ['latitude', 'longitude', 'standardOffsetMinutes', 'offsets', 'sunMinutes'],
  'site.offsets[]': ['fromUtc', 'minutes'],
  'enclosures[]': [
    ...['id', 'name', 'species', 'speciesName', 'scientific', 'animals', 'stages', 'sizeCm', 'targets', 'uvIndex'],
    'cautions',
  ],
  'enclosures[].stages[]': ['from', 'stage'],
  'enclosures[].targets[]': ['path', 'value', 'unit', 'origin'],
  'enclosures[].targets[].origin': ['kind'],
  'cautions[]': ['id', 'text', 'source'],
  'lighting[]': [
    ...['device', 'clock', 'stepMinutes', 'turnsInDays', 'pins', 'drives', 'lamps', 'settings', 'targetHighMinutes'],
    ...['targetLowMinutes', 'targetMinutes', 'worstErrorMinutes', 'meanErrorMinutes', 'tradeoff'],
  ],
  'lighting[].lamps[]': ['enclosure', 'lamp', 'uses', 'powerW', 'targetMinutes', 'worstErrorMinutes', 'replaceOn'],
  'lighting[].settings[]': ['from', 'to', 'windows', 'slots', 'wall', 'worstErrorMinutes', 'meanErrorMinutes'],
  'lighting[].settings[].windows[]': ['on', 'off'],
  'lighting[].settings[].wall[]': ['from', 'to', 'windows'],
  'lighting[].tradeoff[]': ['settings', 'worstErrorMinutes', 'meanErrorMinutes', 'largestJumpMinutes'],
  'misting[]': ['enclosure', 'pump', 'device', 'clock', 'sets', 'targets', 'limits', 'model', 'advice'],
  'misting[].sets[]': ['from', 'to', 'entries', 'wall', 'conditions', 'shortfall', 'shortfalls', 'allowed'],
  'misting[].sets[].entries[]': ['at', 'seconds'],
  'misting[].sets[].wall[]': ['from', 'to', 'entries'],
  'misting[].sets[].conditions[]': [
    ...['from', 'to', 'dayOn', 'dayOff', 'roomTemperatureC', 'roomHumidity', 'dayTemperatureC', 'nightTemperatureC'],
    ...['predicted', 'curve', 'shortfall'],
  ],
  'misting[].sets[].conditions[].predicted': [
    ...['dayHumidity', 'nightHumidity', 'meanHumidity', 'lowHumidity', 'highHumidity', 'wetLimit', 'dryLimit', 'peaks'],
    ...['hoursSoaked', 'dryOutHours', 'waterMlPerDay', 'runoffMlPerDay', 'tankDays'],
  ],
  'misting[].sets[].conditions[].curve': ['everyMinutes', 'humidity', 'leafWetness', 'temperatureC'],
  'misting[].sets[].shortfalls[]': ['target', 'by', 'unit', 'remedy'],
  'misting[].targets': [
    ...['dayHumidity', 'nightHumidity', 'meanHumidity', 'peakHumidity', 'peaksPerDay', 'floorHumidity'],
    ...['ceilingHumidity', 'soakedAtMostHours', 'dryOut', 'drink', 'favour'],
  ],
  'misting[].model': [
    ...['volumeM3', 'airChangesPerHour', 'wettableAreaM2', 'filmCapacityG', 'airborneShare', 'warmUpMinutes'],
    ...['transferMPerHour', 'landsShare', 'baselineGPerHour', 'flowGPerHour'],
  ],
  'misting[].advice[]': ['code', 'message'],
  'feeding[]': [
    ...['date', 'time', 'slot', 'enclosure', 'food', 'feeder', 'count', 'portion', 'dusting', 'by', 'gutLoadFrom'],
    'standIn',
  ],
  'rotation[]': ['enclosure', 'cycleFeeds', 'nextIndex', 'last'],
  'chores[]': ['id', 'title', 'kind', 'who', 'minutes', 'enclosure', 'dates', 'moved'],
  'chores[].moved[]': ['due', 'on'],
  'stock[]': ['date', 'feeder', 'amount', 'why'],
  'away[]': ['from', 'to', 'sitter'],
  'events[]': [
    ...['uid', 'sequence', 'stamp', 'status', 'title', 'description', 'category', 'start', 'minutes', 'allDay', 'rule'],
    ...['until', 'exdates', 'alarmMinutes', 'for', 'kind', 'task', 'slot'],
  ],
  'notPlanned[]': ['lamp', 'device', 'why'],
  'loads[]': ['device', 'peakW', 'continuousW', 'ratingW'],
  'assumptions[]': ['path', 'value', 'source'],
  'warnings[]': ['code', 'message', 'file', 'line', 'column'],
};

/** Returns `PLACE lacks FIELD` for each field that should stand in a plan and does not. */
export function missingFields(plan: unknown): readonly string[] {
  return Object.entries(CONTRACT_FIELDS).flatMap(([place, fields]) =>
    partsAt(plan, place === '' ? [] : place.split('.')).flatMap((part) =>
      fields.filter((field) => !isMap(part) || !(field in part)).map((field) => `${place} lacks ${field}`),
    ),
  );
}

function partsAt(value: unknown, [step, ...rest]: readonly string[]): readonly unknown[] {
  if (step === undefined) return [value];
  const key = step.replace('[]', '');
  const inner = isMap(value) ? value[key] : undefined;
  if (!step.endsWith('[]')) return partsAt(inner, rest);
  return Array.isArray(inner) ? inner.flatMap((each) => partsAt(each, rest)) : [undefined];
}

function isMap(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
