/** What stands in the settings for a person at the shelf, in Spanish. */
import type { shelfEn } from './shelf-en.ts';

const months = 'enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre'.split(' ');
const weekdays = {
  mon: 'lunes',
  tue: 'martes',
  wed: 'miércoles',
  thu: 'jueves',
  fri: 'viernes',
  sat: 'sábado',
  sun: 'domingo',
};

export const shelfEs: typeof shelfEn = {
  date: (year, month, dayOfMonth) => `${dayOfMonth} de ${months[month - 1] ?? ''} de ${year}`,
  weekdays,
  weekdayDate: (weekday, date) => `${weekday} ${date}`,
  title: (household) => `${household}: qué ajustar en cada aparato`,
  madeFor: (from, to, revision) => `Del ${from} al ${to}. Revisión ${revision} del plan.`,
  span: (hours, minutes) =>
    hours === 0 ? `${minutes} min` : minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`,
  list: (items) => (items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} y ${items.at(-1) ?? ''}`),

  dial: (step) => `Reloj de pestañas; cada pestaña son ${step}.`,
  weekDial: (step) =>
    `Reloj de pestañas que da una vuelta en 7 días; cada pestaña son ${step}; todos los días se ajustan igual.`,
  timer: 'Programador; se teclean las entradas.',
  pinsDown: 'Una pestaña bajada enciende.',
  pinsUp: 'Una pestaña levantada enciende; una bajada deja apagado.',
  clock: {
    standard: 'Sigue todo el año en hora estándar (de invierno): todas sus horas de abajo son de hora estándar.',
    wall: 'Marca la hora del día: hay que girarlo cuando cambia la hora.',
    automatic: 'Marca la hora del día y cambia solo.',
  },
  where: (place) => `Está en: ${place}.`,
  drives: (things) => `Conectado a él: ${things}.`,
  pumpOut: (pumps) => `No enchufar aquí ${pumps}: junto a lámparas funcionaría durante horas.`,
  lampWatts: (lamp, watts) => `${lamp} ${watts} W`,
  peak: (watts) => `En total ${watts} W.`,
  peakRated: (watts, rating) => `En total ${watts} W; admite ${rating} W.`,
  load: (peak, lasting) => `En total ${peak} W, de los que ${lasting} W funcionan 3 h o más.`,
  loadRated: (peak, lasting, rating) =>
    `En total ${peak} W, de los que ${lasting} W funcionan 3 h o más; admite ${rating} W.`,
  cable: 'Por este orden en el cable: pared, interruptor diferencial, reloj, termostato (si lo hay), lámpara.',

  now: (date) => `Ajuste del ${date}`,
  from: (date) => date,
  pushSpan: (count, first, last) =>
    count === 1
      ? `Bajar la pestaña de las ${first}: 1 pestaña.`
      : `Bajar las pestañas de las ${first} a las ${last} inclusive: ${count} pestañas.`,
  liftSpan: (count, first, last) =>
    count === 1
      ? `Subir la pestaña de las ${first}: 1 pestaña.`
      : `Subir las pestañas de las ${first} a las ${last} inclusive: ${count} pestañas.`,
  othersUp: 'Todas las demás quedan levantadas.',
  othersDown: 'Todas las demás se bajan.',
  pushAll: (count) => `Bajar las ${count} pestañas.`,
  liftAll: (count) => `Subir las ${count} pestañas.`,
  pushSome: (count, spans) => (count === 1 ? `bajar 1 pestaña: ${spans}` : `bajar ${count} pestañas: ${spans}`),
  liftSome: (count, spans) => (count === 1 ? `subir 1 pestaña: ${spans}` : `subir ${count} pestañas: ${spans}`),
  pinRange: (first, last) => `${first} a ${last}`,
  everyDay: (what) => `Todos los días de la semana: ${what}`,
  strip: {
    push: 'bajar',
    lift: 'subir',
    staysOn: 'sigue encendido',
    staysOff: 'sigue apagado',
    everyDay: 'todos los días',
  },
  keyIn: (windows) => `Teclear: ${windows}.`,
  window: (on, off) => `encender ${on}, apagar ${off}`,
  goes: (windows) => `Queda ${windows}; se apaga en el borde tras la última pestaña.`,
  isThen: (windows) => `Queda ${windows}.`,
  offAllDay: 'apagado todo el día',
  onAllDay: 'encendido todo el día',
  onFromTo: (on, off) => `encendido de ${on} a ${off}`,
  wallThen: (windows, from, to) => `En el reloj de pared, del ${from} al ${to}: ${windows}.`,

  changes: 'Cambios por venir',
  noChanges: 'No queda ningún cambio en este plan.',
  capital: (text) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`,
  also: (parts) => parts.join('; '),
  sentence: (text) => `${text}.`,
  exact: 'La luz dura justo lo que deben dar las lámparas.',
  worst: (worst, mean) => `La luz se aparta como mucho ${worst} de lo que deben dar las lámparas, ${mean} de media.`,
  lampMisses: (lamp, minutes) => `${lamp} lo sigue y se aparta de sus propias horas hasta ${minutes}.`,
  replace: (lamp, dates) => `Cambiar ${lamp}: ${dates}.`,

  clockHeading: 'Cuando cambia la hora',
  forward: (date, by) => `${date}, los relojes se adelantan ${by}`,
  back: (date, by) => `${date}, los relojes se atrasan ${by}`,
  leaveAlone: 'dejarlo como está',
  turnOn: (by) => `girarlo ${by} en su propio sentido, hasta que su marca muestre la hora del día`,
  setClock: 'poner su reloj en la nueva hora del día',
  noClockChange: 'La hora no cambia en este plan.',

  cutHeading: 'Tras un corte de luz',
  cutDial:
    'se quedó parado y va tantos minutos atrasado como duró el corte: girarlo en su propio sentido hasta que la marca muestre la hora de ahora',
  cutDialStandard: ' (hora estándar)',
  cutKeeps: 'conserva la hora; comprobar que muestra la de ahora.',
  cutSet: 'ha perdido la hora: poner su reloj en la hora de ahora.',

  liveHeading: 'En enchufes con corriente permanente',
  live: (lamp, watts, isRegulated) =>
    `${lamp}, ${watts} W: siempre enchufado, ${isRegulated ? 'con su termostato entre el enchufe y él; sin reloj' : 'sin reloj'}.`,

  notPlanned: 'Sin planificar',
  noSetting: (why) => `No se escribe ningún ajuste para él: ${why}.`,
  leftOut: (lamp, why) => `${lamp}: ${why}.`,
  why: () => 'dewdial check dice por qué, en inglés',
  noLoads: 'En este plan no cuelga nada de él.',
  noLamps: 'No alimenta ninguna lámpara; lo que alimenta se ajusta con el agua.',
  cautions: 'Atención',
};
