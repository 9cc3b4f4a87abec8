/** What stands in the calendar, in English. Titles open with the place or the device, so that a narrow screen still shows it. */
const months = 'January February March April May June July August September October November December'.split(' ');
const weekdays = { mon: 'Mon', tue: 'Tue', wed: 'Wed', thu: 'Thu', fri: 'Fri', sat: 'Sat', sun: 'Sun' };

export const calendarEn = {
  date: (year: number, month: number, dayOfMonth: number) => `${dayOfMonth} ${months[month - 1] ?? ''} ${year}`,
  weekdays,
  list: (items: readonly string[]) => items.join(', '),
  minutes: (minutes: number) => `${minutes} min`,
  calendarName: (household: string, person: string) => `${household}: ${person}`,
  atTime: (time: string, title: string) => `${time} ${title}`,
  inEnclosure: (enclosure: string, title: string) => `${enclosure}: ${title}`,

  feed: (enclosure: string, what: string) => `Feed ${enclosure}: ${what}`,
  pieces: (count: number, feeder: string) => `${count} × ${feeder}`,
  byEye: (portion: string, feeder: string) => `${feeder}, ${portion}`,
  dustWith: (dusting: string) => `dust with ${dusting}`,
  preDosed: (dusting: string) => `${dusting} from the portion put up beforehand`,
  noDust: 'no dust',
  portion: (portion: string) => `Portion: ${portion}`,
  gutLoad: (days: number) =>
    days === 1 ? 'Gut-load the feeders from the day before.' : `Gut-load the feeders from ${days} days before.`,
  standIn: 'Stand-in feeder.',
  takes: (minutes: number) => `About ${minutes} min.`,

  pins: (count: number) => (count === 1 ? '1 pin' : `${count} pins`),
  pinSpan: (pins: string, from: string, to: string) => `${pins} ${from}–${to}`,
  onWeekday: (weekday: string, span: string) => `${weekday} ${span}`,
  everyDay: (spans: string) => `every day ${spans}`,
  push: (spans: string) => `push ${spans}`,
  lift: (spans: string) => `lift ${spans}`,
  switchOn: (spans: string) => `on ${spans}`,
  switchOff: (spans: string) => `off ${spans}`,
  allPins: 'all pins',
  pushTheRest: 'push all others',
  liftTheRest: 'lift all others',
  setDevice: (device: string, what: string) => `${device}: ${what}`,
  inOrder: (parts: readonly string[]) => parts.join('; '),
  afterwards: (device: string, windows: string) => `${device} then reads: on ${windows}.`,
  afterwardsOff: (device: string) => `${device} then reads: off all day.`,
  dialClock: {
    standard: 'Times on the dial itself, which stays on standard (winter) time all year.',
    wall: 'Times on the dial itself, which shows the time of day.',
    automatic: 'Times on the timer itself, which changes with the clocks.',
  },

  enter: (entries: string) => `enter ${entries}`,
  add: (entries: string) => `add ${entries}`,
  alter: (entries: string) => `alter ${entries}`,
  remove: (times: string) => `delete ${times}`,
  mistEntry: (at: string, length: string) => `${at} ${length}`,
  alteredEntry: (at: string, length: string) => `${at} to ${length}`,
  noMist: 'no mist',
  interval: (on: string, off: string) => `set ${on} on, ${off} off`,
  plugIn: (at: string) => `Plug it in at ${at}: it starts with ON.`,
  allEntries: (entries: string) => `All entries afterwards: ${entries}.`,
  mistByHand: (enclosure: string, length: string) => `Mist ${enclosure} by hand, ${length}`,

  clocksForward: (minutes: string) => `Clocks go forward ${minutes}`,
  clocksBack: (minutes: string) => `Clocks go back ${minutes}`,
  turn: (devices: string) => `turn ${devices}`,
  leave: (devices: string) => `leave ${devices}`,
  turnHow: 'Turn each dial on, in its own direction, until its mark shows the time now; key the new time into a timer.',
  leaveWhy: 'What stays on standard time, or changes by itself, is left alone.',

  buy: (what: string) => `Buy ${what}`,
  away: (until: string) => `Away until ${until}`,
  awaySitter: (sitter: string, visits: number) =>
    visits === 1 ? `${sitter} comes on 1 day.` : `${sitter} comes on ${visits} days.`,
  awayNobody: 'Nobody comes.',
  visit: (household: string) => `Visit: ${household}`,
};
