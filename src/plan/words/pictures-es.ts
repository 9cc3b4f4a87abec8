/** What stands in the drawings, in Spanish. */
import type { picturesEn } from './pictures-en.ts';

const months = 'ene feb mar abr may jun jul ago sep oct nov dic'.split(' ');

export const picturesEs: typeof picturesEn = {
  month: (index) => months[index] ?? '',
  shortDate: (month, dayOfMonth) => `${dayOfMonth} ${months[month - 1] ?? ''}`,
  longDate: (year, month, dayOfMonth) => `${dayOfMonth} ${months[month - 1] ?? ''} ${year}`,
  dateSpan: (from, to) => `${from} a ${to}`,
  hours: (hours) => `${hours} h`,
  hoursAndMinutes: (hours, minutes) => (minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`),
  noon: '12:00 del mediodía',
  midnight: '12:00 de la noche',
  beforeNoon: (time) => `${time} a. m.`,
  afterNoon: (time) => `${time} p. m.`,

  yearTitle: (device) => `${device}: el año de luz`,
  yearDescription: (device, settings, worst) =>
    `Duración del día a lo largo del plan para ${device}: lo que piden sus lámparas y ${settings === 1 ? '1 ajuste' : `${settings} ajustes`} de sus pestañas, como mucho a ${worst} de distancia.`,
  legendSetting: 'lo que dan las pestañas',
  legendTarget: 'lo que deben dar las lámparas',
  legendError: 'la diferencia',
  legendSun: 'el sol en su lugar',
  legendEnvelope: 'entre lo que pide cada lámpara',

  dialTitle: (device) => `${device}: pestañas que ajustar`,
  dialDescription: (device, settings) =>
    `Un anillo por ajuste de ${device}, ${settings} en total. Una marca larga y llena es una pestaña que enciende; una corta y hueca, una que deja apagado.`,
  dialKey: 'Larga y llena: encendido. Corta y hueca: apagado.',
  dialNotATimer: 'Es un esquema del día, no una imagen de su reloj: guíese por las horas impresas en él.',
  dialStep: (minutes) => `Una pestaña son ${minutes} min.`,
  dialDirectionDown: 'Una pestaña bajada enciende.',
  dialDirectionUp: 'Una pestaña bajada deja apagado; una levantada enciende.',
  arrowKeyIn: 'Flecha llena hacia dentro: pasa a encendido.',
  arrowKeyOut: 'Flecha hueca hacia fuera: pasa a apagado.',
  clockStandard: 'El reloj sigue todo el año en hora estándar (de invierno).',
  clockWall: 'El reloj marca la hora del día: gírelo cuando cambie la hora.',
  everyDay: 'igual todos los días de la semana',
  fromTo: (on, off) => `encendido ${on}, apagado ${off}`,
  allDay: 'encendido todo el día',
  notAtAll: 'apagado todo el día',
  pinsSpan: (count, first, last) =>
    count === 1 ? `1 pestaña: ${first}` : `${count} pestañas, de ${first} a ${last} inclusive`,
  versusBefore: 'respecto al ajuste anterior:',
  pushDown: (spans) => `bajar ${spans}`,
  liftUp: (spans) => `subir ${spans}`,
  changeToday: (date) => `Cambio el ${date}`,
  pinList: (spans) => spans.join(', '),
  pinRange: (first, last) => `${first}–${last}`,
};
