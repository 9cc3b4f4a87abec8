/** What is said about water on the shelf, in pictures and in advice, in English. */
const daysWord = (count: number) => (count === 1 ? '1 day' : `${count} days`);
const mistsWord = (count: number) => (count === 1 ? '1 mist' : `${count} mists`);

const months = 'January February March April May June July August September October November December'.split(' ');

export const waterEn = {
  month: (month: number) => months[month - 1] ?? '',
  heading: (enclosure: string) => `Water: ${enclosure}`,
  mistedBy: (pump: string, timer: string) => `Misted by ${pump} behind ${timer}.`,
  mistedByHand: 'Misted by hand.',
  notMisted: 'Not misted.',
  clock: {
    standard: 'The times are standard (winter) time.',
    wall: 'The times are the time of day.',
    automatic: 'The times are the time of day; the timer changes by itself.',
  },
  setFrom: (from: string, to: string) => `From ${from} to ${to}`,
  keyIn: (entries: string) => `Key in: ${entries}.`,
  mistAt: (entries: string) => `Mist at: ${entries}.`,
  pinsStand: (timer: string) => `Its pins stand under ${timer}.`,
  entry: (at: string, length: string) => `${at} for ${length}`,
  onOff: (on: string, off: string) => `on ${on}, off ${off}`,
  noEntries: 'No mist: leave every line of the timer empty.',
  interval: (timer: string, on: string, off: string) => `Set ${timer} to ${on} on, ${off} off.`,
  makes: (entries: string) => `On its first days that makes: ${entries}.`,
  poweredBy: (timer: string) => `It gets power from ${timer}.`,
  wallThen: (entries: string, from: string, to: string) => `By the wall clock, ${from} to ${to}: ${entries}.`,
  minutes: (minutes: number) => `${minutes} min`,
  list: (items: readonly string[]) => items.join('; '),
  allowed: (spans: string) => `A mist may start: ${spans}.`,
  fromTo: (from: string, to: string) => `${from} to ${to}`,
  forecast: (day: string, night: string, low: string, high: string) =>
    `Forecast of the air: ${day} by day and ${night} by night on average, between ${low} and ${high}.`,
  forecastMean: (mean: string, low: string, high: string) =>
    `Forecast of the air: ${mean} on average, between ${low} and ${high}.`,
  forecastNote:
    'A forecast from the size, the mesh and the room: trust the gauge where they differ, and hand its log in.',
  range: (low: string, high: string) => (low === high ? low : `${low} to ${high}`),
  percent: (value: string) => `${value} %`,
  dries: (hours: string) => `The leaves are dry for at least ${hours} at a stretch.`,
  hours: (hours: number, minutes: number) =>
    hours === 0 ? `${minutes} min` : minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`,
  measure: 'Measure what each nozzle gives with a cup, at the start and monthly; the plan goes by it.',

  chart: {
    title: (enclosure: string) => `${enclosure}: the day of its air`,
    dates: (from: string, to: string) => (from === to ? from : `${from} to ${to}`),
    description: (enclosure: string, mists: number, low: string, high: string, room: string) =>
      `Forecast of one day of ${enclosure}: ${mistsWord(mists)}, humidity between ${low} and ${high} in a room of ${room}, and how wet the leaves are.`,
    clock: {
      standard: 'Times are standard (winter) time. A forecast: trust the gauge.',
      wall: 'Times are the time of day. A forecast: trust the gauge.',
      automatic: 'Times are the time of day. A forecast: trust the gauge.',
    },
    lamp: 'lamp',
    lampOn: (on: string, off: string) => `on ${on} to ${off}`,
    leaves: 'water on the leaves, share of what they hold',
    humidity: 'humidity in the enclosure',
    room: 'humidity of the room',
    mist: 'a mist: time and length',
    dayBand: 'target by day (its mean)',
    meanBand: 'target over 24 h (its mean)',
    nightBand: 'target by night (its mean)',
    peakBand: 'target of the peaks',
    limit: 'limit: floor; dry leaves below',
    ceiling: 'limit: never above',
  },
  notes: {
    'shield-the-lamp': (v: { enclosure: string; lamps: string }) =>
      `${v.enclosure} is misted while ${v.lamps} may be on: a hot lamp can shatter when sprayed. Shield the lamp, keep the nozzle off it.`,
    'starts-with-power': (v: { enclosure: string; timer: string }) =>
      `${v.timer} begins with ON whenever its power comes, also after a flicker: ${v.enclosure} is then misted once more. Look at the tray after a storm.`,
    'plug-in-at': (v: { timer: string; at: string; clock: string }) =>
      `${v.timer} knows no time of day: plug in at ${v.at} (${v.clock === 'standard' ? 'standard time' : 'time of day'}). After a power cut it starts anew: plug it in again at that time.`,
    'cover-mesh': (v: { enclosure: string; open: string; now: string; water: string; nowWater: string }) =>
      `With ${v.open} of ${v.enclosure} open instead of ${v.now}, all targets are met, with ${v.water} of water a week instead of ${v.nowWater}. That is the least covering that does it.`,
    'cover-until': (v: { enclosure: string; on: string; off: string; open: string }) =>
      `${v.enclosure} needs that covering from ${v.on}; from ${v.off} its targets are met without it: take it off again then.`,
    'driest-month': (v: { enclosure: string; month: string; room: string; low: string; entries: string }) =>
      `The driest air of ${v.enclosure} is in ${v.month}, with the room at ${v.room}: it falls to ${v.low}. Planned for those days alone it would get ${v.entries}.`,
    'coldest-month': (v: { enclosure: string; month: string; night: string; entries: string }) =>
      `The coldest nights of ${v.enclosure} are in ${v.month}, ${v.night}. Planned for those days alone it would get ${v.entries}.`,
    'water-bill': (v: { enclosure: string; water: string; tankDays: number; refillDays: number }) =>
      `${v.enclosure} takes ${v.water} of water a week${v.tankDays < 0 ? '' : `; the tank lasts ${daysWord(v.tankDays)} and is filled every ${v.refillDays === 1 ? 'day' : daysWord(v.refillDays)}`}.`,
    'run-off': (v: { enclosure: string; runOff: string; lasts: number; empty: number }) =>
      `${v.runOff} a day runs off in ${v.enclosure}${v.lasts < 0 ? ': give it a tray or a drain' : `; its tray is full in ${daysWord(v.lasts)} and is emptied every ${v.empty === 1 ? 'day' : `${v.empty} days`}`}.`,
    'more-mists-fewer-peaks': (v: { enclosure: string; mists: number; peaks: number }) =>
      `${mistsWord(v.mists)} make${v.mists === 1 ? 's' : ''} ${v.peaks} peak${v.peaks === 1 ? '' : 's'} in ${v.enclosure}: its air does not fall far enough between them. Fewer mists far apart, or a more open mesh, make more peaks.`,
  },
  inEnglish: (count: number) =>
    `${count === 1 ? '1 message' : `${count} messages`} about this water: dewdial check says ${count === 1 ? 'it' : 'them'}.`,
  targets: {
    'humidity.day': 'humidity by day',
    'humidity.night': 'humidity by night',
    'humidity.mean': 'the mean humidity',
    'humidity.floor': 'the lowest humidity',
    'humidity.ceiling': 'the highest humidity',
    'humidity.peak': 'the peak of humidity',
    'humidity.peaks_per_day': 'the number of humid peaks a day',
    'humidity.soaked_at_most': 'the time without a break above the peak',
  },
  noHandMists: 'No mist.',
  cutRepeat:
    'it begins anew with ON when its power comes: look at the tray, and plug it in again at its hour where one is named.',
  noMists: 'no mist',
  sameMists: 'the same mists',
  someMists: (count: number, entries: string) => `${mistsWord(count)} (${entries})`,
};

export type WaterNoteWords = typeof waterEn.notes;
export type WaterNoteCode = keyof WaterNoteWords;
