/** What a fit to gauge readings says, in Spanish. */
import type { fitEn } from './fit-en.ts';

export const fitEs: typeof fitEn = {
  picture: {
    title: (name) => `${name}: higrómetro y modelo`,
    description: (name, readings) =>
      `Humedad relativa en ${name}: ${readings} lecturas del higrómetro, el modelo del aire ajustado a ellas y el modelo tal como se estimó.`,
    reading: 'higrómetro',
    fitted: 'modelo ajustado',
    estimated: 'modelo estimado',
    mist: 'nebulización',
    lit: 'luz encendida',
    lastDays: 'Los dos últimos días',
  },
  values: {
    airChangesPerHour: 'renovaciones de aire por hora',
    baseEvaporationGPerHour: 'evaporación sin nebulizar, g/h',
    transferMPerHour: 'secado de hojas mojadas, m/h',
  },
  summary: (name, count, from, to) => `${name}: ${count} lecturas, del ${from} al ${to}`,
  lost: (count) => (count === 1 ? '1 línea sin lectura' : `${count} líneas sin lectura`),
  gaps: (count, longest) => `${count === 1 ? 'un hueco' : `${count} huecos`} sin lecturas, el mayor de ${longest} h`,
  columns: ['', 'ajustado', '95 % entre', 'estimado'],
  and: 'y',
  kept: 'no se distingue, queda la estimación',
  saidByFile: 'dicho en el archivo',
  residual: (points) => `El modelo pasa a menos de ${points} puntos de humedad de dos de cada tres lecturas.`,
  taken: {
    room: 'Habitación: como dice el archivo. Si estuvo más seca o más húmeda, las renovaciones salen desviadas.',
    temperature: {
      gauge: 'Temperatura: la que midió el aparato.',
      model: 'Temperatura: la del plan, el registro no la trae.',
    },
    mists: {
      log: (count) => `Nebulizaciones: ${count}, del registro.`,
      plan: (count) => `Nebulizaciones: ${count}, las del plan; una que no funcionó engaña al ajuste.`,
      none: 'Nebulizaciones: ninguna.',
    },
    gauge: {
      tested: (points) => `Higrómetro: corregido con su prueba de sales (${points}).`,
      untested: 'Higrómetro: tal como mide. Una prueba de sales (--salt NaCl=72,MgCl2=35) quita su error.',
    },
    clock: (minutes, isAhead) =>
      `Reloj: el del aparato parece ir ${minutes} min ${isAhead ? 'adelantado' : 'atrasado'}; se ha tenido en cuenta.`,
  },
  written: (file, household, id) =>
    `escrito en ${file}; todas las órdenes lo usan desde ahora. Para quitarlo: dewdial fit ${household} --remove ${id}`,
  notWritten: 'no se ha escrito nada (--dry)',
  picturedIn: (file) => `dibujo: ${file}`,
  next: (household) => `después: dewdial compile ${household}`,
};
