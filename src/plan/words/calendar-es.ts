/** What stands in the calendar, in Spanish. */
import type { calendarEn } from './calendar-en.ts';

const months = 'enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre'.split(' ');
const weekdays = { mon: 'lun', tue: 'mar', wed: 'mié', thu: 'jue', fri: 'vie', sat: 'sáb', sun: 'dom' };

export const calendarEs: typeof calendarEn = {
  date: (year, month, dayOfMonth) => `${dayOfMonth} de ${months[month - 1] ?? ''} de ${year}`,
  weekdays,
  list: (items) => items.join(', '),
  minutes: (minutes) => `${minutes} min`,
  calendarName: (household, person) => `${household}: ${person}`,
  atTime: (time, title) => `${time} ${title}`,
  inEnclosure: (enclosure, title) => `${enclosure}: ${title}`,

  feed: (enclosure, what) => `Alimentar ${enclosure}: ${what}`,
  pieces: (count, feeder) => `${count} × ${feeder}`,
  byEye: (portion, feeder) => `${feeder}, ${portion}`,
  dustWith: (dusting) => `espolvorear con ${dusting}`,
  preDosed: (dusting) => `${dusting} de la ración preparada`,
  noDust: 'sin espolvorear',
  portion: (portion) => `Ración: ${portion}`,
  gutLoad: (days) =>
    days === 1
      ? 'Alimentar bien a las presas desde el día anterior.'
      : `Alimentar bien a las presas desde ${days} días antes.`,
  standIn: 'Presa de reserva.',
  takes: (minutes) => `Unos ${minutes} min.`,

  pins: (count) => (count === 1 ? '1 pestaña' : `${count} pestañas`),
  pinSpan: (pins, from, to) => `${pins} ${from}–${to}`,
  onWeekday: (weekday, span) => `${weekday} ${span}`,
  everyDay: (spans) => `cada día ${spans}`,
  push: (spans) => `bajar ${spans}`,
  lift: (spans) => `subir ${spans}`,
  switchOn: (spans) => `encendido ${spans}`,
  switchOff: (spans) => `apagado ${spans}`,
  allPins: 'todas las pestañas',
  pushTheRest: 'bajar todas las demás',
  liftTheRest: 'subir todas las demás',
  setDevice: (device, what) => `${device}: ${what}`,
  inOrder: (parts) => parts.join('; '),
  afterwards: (device, windows) => `${device} queda así: encendido ${windows}.`,
  afterwardsOff: (device) => `${device} queda así: apagado todo el día.`,
  dialClock: {
    standard: 'Horas del propio reloj, que sigue todo el año en hora estándar (de invierno).',
    wall: 'Horas del propio reloj, que marca la hora del día.',
    automatic: 'Horas del propio programador, que cambia con los relojes.',
  },

  enter: (entries) => `programar ${entries}`,
  add: (entries) => `añadir ${entries}`,
  alter: (entries) => `cambiar ${entries}`,
  remove: (times) => `borrar ${times}`,
  mistEntry: (at, length) => `${at} ${length}`,
  alteredEntry: (at, length) => `${at} a ${length}`,
  noMist: 'sin nebulización',
  interval: (on, off) => `poner ${on} encendido, ${off} apagado`,
  plugIn: (at) => `Enchufar a las ${at}: empieza encendido.`,
  allEntries: (entries) => `Todas las entradas después: ${entries}.`,
  mistByHand: (enclosure, length) => `Pulverizar ${enclosure} a mano, ${length}`,

  clocksForward: (minutes) => `Los relojes se adelantan ${minutes}`,
  clocksBack: (minutes) => `Los relojes se atrasan ${minutes}`,
  turn: (devices) => `girar ${devices}`,
  leave: (devices) => `dejar ${devices}`,
  turnHow:
    'Girar cada reloj, en su propio sentido, hasta que su marca muestre la hora actual; en un programador, teclear la hora nueva.',
  leaveWhy: 'Lo que sigue en hora estándar, o cambia por sí mismo, se deja como está.',

  buy: (what) => `Comprar ${what}`,
  away: (until) => `Fuera hasta el ${until}`,
  awaySitter: (sitter, visits) => (visits === 1 ? `${sitter} viene 1 día.` : `${sitter} viene ${visits} días.`),
  awayNobody: 'No viene nadie.',
  visit: (household) => `Visita: ${household}`,
};
