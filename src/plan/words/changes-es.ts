/** What stands in the change sheet, in Spanish. */
import type { changesEn } from './changes-en.ts';

export const changesEs: typeof changesEn = {
  title: (household) => `${household}: qué cambiar`,
  since: (on, before) => `El ${on}, respecto al plan hecho el ${before}. En el orden de la estantería.`,
  nothing: 'No hay nada que cambiar.',
  noEarlier: 'No hay un plan anterior con que comparar: ajuste todo como dicen los ajustes.',
  newDevice: (device) => `${device}: nuevo en el plan. Ajústelo como dicen los ajustes.`,
  goneDevice: (device) => `${device}: ya no está en el plan. No hay nada que ajustar en él.`,
  today: (what) => `Ahora: ${what}.`,
  nothingNow: 'Ahora: nada.',
  afterwards: (what) => `Queda así: ${what}.`,
  later: (dates) => `Cambios por venir que son nuevos o distintos: ${dates}.`,
  dropped: (dates) => `Cambios que ya no se hacen: ${dates}.`,
  comesOn: (steps) => `encendido: ${steps}`,
  goesOff: (steps) => `apagado: ${steps}`,
  mists: (enclosure) => `Nebulizaciones de ${enclosure}`,
  mistsOn: (enclosure, device) => `Nebulizaciones de ${enclosure}, en ${device}`,
  add: (entries) => `añadir ${entries}`,
  alter: (entries) => `cambiar ${entries}`,
  remove: (times) => `borrar ${times}`,
  keep: (times) => `dejar ${times}`,
  entry: (at, seconds) => `${at} durante ${seconds} s`,
  altered: (at, from, to) => `${at} de ${from} s a ${to} s`,
  loads: 'Qué cuelga de dónde',
  plugsIn: (what, to) => `${what}: ahora en ${to}`,
  moves: (what, from, to) => `${what}: de ${from} a ${to}`,
  unplugged: (what, from) => `${what}: ya no en ${from}`,
  people: 'Qué hacen las personas',
  feeds: (enclosure, added, removed, altered) => {
    const parts = [
      ...(added > 0 ? [`${added} más`] : []),
      ...(removed > 0 ? [`${removed} menos`] : []),
      ...(altered > 0 ? [`${altered} distintas`] : []),
    ];
    return `Comidas de ${enclosure}: ${parts.join(', ')}`;
  },
  firstFeed: (date, before, after) => `la primera el ${date}: ${before} pasa a ser ${after}`,
  noFeed: 'ninguna',
  choreNew: (title, dates) => `Nuevo: ${title}${dates === '' ? '' : `, primero el ${dates}`}`,
  choreGone: (title) => `Ya no: ${title}`,
  choreChanged: (title, dates) => `${title}: otras fechas${dates === '' ? '' : `, la primera ${dates}`}`,
  stays: 'Lo que queda como está',
  staying: {
    dial: (device: string) => device,
    mists: (enclosure: string) => `nebulizaciones de ${enclosure}`,
    feeds: (enclosure: string) => `comidas de ${enclosure}`,
  },
};
