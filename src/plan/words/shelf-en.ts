/** What stands in the settings for a person at the shelf, in English. */
const months = 'January February March April May June July August September October November December'.split(' ');
const weekdays = {
  mon: 'Monday',
  tue: 'Tuesday',
  wed: 'Wednesday',
  thu: 'Thursday',
  fri: 'Friday',
  sat: 'Saturday',
  sun: 'Sunday',
};

export const shelfEn = {
  date: (year: number, month: number, dayOfMonth: number) => `${dayOfMonth} ${months[month - 1] ?? ''} ${year}`,
  weekdays,
  weekdayDate: (weekday: string, date: string) => `${weekday} ${date}`,
  title: (household: string) => `${household}: what to set on each device`,
  madeFor: (from: string, to: string, revision: number) => `For ${from} to ${to}. Revision ${revision} of the plan.`,
  span: (hours: number, minutes: number) =>
    hours === 0 ? `${minutes} min` : minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`,
  list: (items: readonly string[]) =>
    items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`,

  dial: (step: string) => `Pin dial, one pin is ${step}.`,
  weekDial: (step: string) => `Pin dial that turns once in 7 days, one pin is ${step}; every day is set alike.`,
  timer: 'Programmable timer; key in the entries.',
  pinsDown: 'A pin pressed down switches on.',
  pinsUp: 'A pin left up switches on; a pin pressed down leaves off.',
  clock: {
    standard: 'It stays on standard (winter) time all year: all its times below are standard time.',
    wall: 'It shows the time of day: turn it when the clocks change.',
    automatic: 'It shows the time of day and changes by itself.',
  },
  where: (place: string) => `It is ${place}.`,
  drives: (things: string) => `On it: ${things}.`,
  pumpOut: (pumps: string) => `Leave the plug of ${pumps} out of it: beside lamps it would run for hours.`,
  lampWatts: (lamp: string, watts: number) => `${lamp} ${watts} W`,
  peak: (watts: number) => `Together ${watts} W.`,
  peakRated: (watts: number, rating: number) => `Together ${watts} W; it may switch ${rating} W.`,
  load: (peak: number, lasting: number) => `Together ${peak} W, of which ${lasting} W run for 3 h or more.`,
  loadRated: (peak: number, lasting: number, rating: number) =>
    `Together ${peak} W, of which ${lasting} W run for 3 h or more; it may switch ${rating} W.`,
  cable: 'In this order on the cable: wall, residual-current device, timer, thermostat (where there is one), lamp.',

  now: (date: string) => `Set on ${date}`,
  from: (date: string) => date,
  pushSpan: (count: number, first: string, last: string) =>
    count === 1
      ? `Push down the pin of ${first}: 1 pin.`
      : `Push down the pins from ${first} up to and including ${last}: ${count} pins.`,
  liftSpan: (count: number, first: string, last: string) =>
    count === 1
      ? `Lift the pin of ${first}: 1 pin.`
      : `Lift the pins from ${first} up to and including ${last}: ${count} pins.`,
  othersUp: 'All other pins stay up.',
  othersDown: 'All other pins are pushed down.',
  pushAll: (count: number) => `Push down all ${count} pins.`,
  liftAll: (count: number) => `Lift all ${count} pins.`,
  pushSome: (count: number, spans: string) =>
    count === 1 ? `push down 1 pin: ${spans}` : `push down ${count} pins: ${spans}`,
  liftSome: (count: number, spans: string) => (count === 1 ? `lift 1 pin: ${spans}` : `lift ${count} pins: ${spans}`),
  pinRange: (first: string, last: string) => `${first} to ${last}`,
  everyDay: (what: string) => `On every day of the week: ${what}`,
  strip: {
    push: 'push down',
    lift: 'lift',
    staysOn: 'stays on',
    staysOff: 'stays off',
    everyDay: 'every day',
  },
  keyIn: (windows: string) => `Key in: ${windows}.`,
  window: (on: string, off: string) => `on ${on}, off ${off}`,
  goes: (windows: string) => `It is then ${windows}; off is the edge after the last pin.`,
  isThen: (windows: string) => `It is then ${windows}.`,
  offAllDay: 'off all day',
  onAllDay: 'on all day',
  onFromTo: (on: string, off: string) => `on from ${on} to ${off}`,
  wallThen: (windows: string, from: string, to: string) => `By the wall clock, ${from} to ${to}: ${windows}.`,

  changes: 'Changes to come',
  noChanges: 'No change to come in this plan.',
  capital: (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`,
  also: (parts: readonly string[]) => parts.join('; '),
  sentence: (text: string) => `${text}.`,
  exact: 'The light is just as long as the lamps are to give it.',
  worst: (worst: string, mean: string) =>
    `The light is at most ${worst} from what the lamps are to give, ${mean} on average.`,
  lampMisses: (lamp: string, minutes: string) => `${lamp} follows it and misses its own hours by up to ${minutes}.`,
  replace: (lamp: string, dates: string) => `Replace ${lamp}: ${dates}.`,

  clockHeading: 'When the clocks change',
  forward: (date: string, by: string) => `${date}, clocks forward ${by}`,
  back: (date: string, by: string) => `${date}, clocks back ${by}`,
  leaveAlone: 'leave it alone',
  turnOn: (by: string) => `turn it on by ${by} in its own direction, until its mark shows the time of day`,
  setClock: 'set its clock to the new time of day',
  noClockChange: 'The clocks do not change in this plan.',

  cutHeading: 'After a power cut',
  cutDial:
    'it stood still and is as many minutes slow as the power was off: turn it on in its own direction until the mark shows the time now',
  cutDialStandard: ' (standard time)',
  cutKeeps: 'it keeps its time; check that it shows the time now.',
  cutSet: 'it has lost its time: set its clock to the time now.',

  liveHeading: 'On live sockets',
  live: (lamp: string, watts: number, isRegulated: boolean) =>
    `${lamp}, ${watts} W: always plugged in, ${isRegulated ? 'its thermostat between the socket and it; no timer' : 'no timer'}.`,

  notPlanned: 'Not planned',
  noSetting: (why: string) => `No setting is written for it: ${why}.`,
  leftOut: (lamp: string, why: string) => `${lamp}: ${why}.`,
  /** Reasons are said in English alone. */
  why: (reason: string) => reason,
  noLoads: 'Nothing hangs on it in this plan.',
  noLamps: 'It drives no lamp; what it drives is set with the water.',
  cautions: 'Take care',
};
