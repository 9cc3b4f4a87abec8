/** What stands in the drawings, in English. */
const months = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

export const picturesEn = {
  month: (index: number) => months[index] ?? '',
  shortDate: (month: number, dayOfMonth: number) => `${dayOfMonth} ${months[month - 1] ?? ''}`,
  longDate: (year: number, month: number, dayOfMonth: number) => `${dayOfMonth} ${months[month - 1] ?? ''} ${year}`,
  dateSpan: (from: string, to: string) => `${from} to ${to}`,
  hours: (hours: number) => `${hours} h`,
  hoursAndMinutes: (hours: number, minutes: number) => (minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`),
  noon: '12:00 noon',
  midnight: '12:00 midnight',
  beforeNoon: (time: string) => `${time} am`,
  afterNoon: (time: string) => `${time} pm`,

  yearTitle: (device: string) => `${device}: the year of light`,
  yearDescription: (device: string, settings: number, worst: string) =>
    `Day length over the plan for ${device}: the target of its lamps, and ${settings === 1 ? '1 setting' : `${settings} settings`} of its pins, at worst ${worst} apart.`,
  legendSetting: 'what the pins give',
  legendTarget: 'what the lamps are to give',
  legendError: 'the difference',
  legendSun: 'the sun at your place',
  legendEnvelope: 'between the needs of its lamps',

  dialTitle: (device: string) => `${device}: pins to set`,
  dialDescription: (device: string, settings: number) =>
    `One ring a setting of ${device}, ${settings} in all. A long solid mark is a pin that switches on, a short hollow one a pin that leaves off.`,
  dialKey: 'Long and solid: on. Short and hollow: off.',
  dialNotATimer: 'A diagram of the day, not a picture of your timer: go by the hours printed on its dial.',
  dialStep: (minutes: number) => `One pin is ${minutes} min.`,
  dialDirectionDown: 'A pin pressed down switches on.',
  dialDirectionUp: 'A pin pressed down leaves off; a pin left up switches on.',
  arrowKeyIn: 'Solid arrow pointing in: comes on.',
  arrowKeyOut: 'Hollow arrow pointing out: goes off.',
  clockStandard: 'The dial stays on standard (winter) time all year.',
  clockWall: 'The dial shows the time of day: turn it when the clocks change.',
  everyDay: 'the same every day of the week',
  fromTo: (on: string, off: string) => `on ${on}, off ${off}`,
  allDay: 'on all day',
  notAtAll: 'off all day',
  pinsSpan: (count: number, first: string, last: string) =>
    count === 1 ? `1 pin: ${first}` : `${count} pins, ${first} up to and including ${last}`,
  versusBefore: 'against the setting before:',
  pushDown: (spans: string) => `push down ${spans}`,
  liftUp: (spans: string) => `lift ${spans}`,
  changeToday: (date: string) => `Change on ${date}`,
  pinList: (spans: readonly string[]) => spans.join(', '),
  pinRange: (first: string, last: string) => `${first}–${last}`,
};
