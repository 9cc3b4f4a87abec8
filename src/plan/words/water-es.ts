/** What is said about water on the shelf, in pictures and in advice, in Spanish. */
import type { waterEn } from './water-en.ts';

const daysWord = (count: number) => (count === 1 ? '1 día' : `${count} días`);
const mistsWord = (count: number) => (count === 1 ? '1 nebulización' : `${count} nebulizaciones`);

const months = 'enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre'.split(' ');

export const waterEs: typeof waterEn = {
  month: (month) => months[month - 1] ?? '',
  heading: (enclosure) => `Agua: ${enclosure}`,
  mistedBy: (pump, timer) => `Nebuliza ${pump} detrás de ${timer}.`,
  mistedByHand: 'Se nebuliza a mano.',
  notMisted: 'No se nebuliza.',
  clock: {
    standard: 'Las horas son de horario estándar (de invierno).',
    wall: 'Las horas son las del reloj.',
    automatic: 'Las horas son las del reloj; el temporizador cambia solo.',
  },
  setFrom: (from, to) => `Del ${from} al ${to}`,
  keyIn: (entries) => `Programar: ${entries}.`,
  mistAt: (entries) => `Nebulizar: ${entries}.`,
  pinsStand: (timer) => `Sus pestañas están en ${timer}.`,
  entry: (at, length) => `${at} durante ${length}`,
  onOff: (on, off) => `encendido ${on}, apagado ${off}`,
  noEntries: 'Ninguna nebulización: dejar vacías todas las líneas del temporizador.',
  interval: (timer, on, off) => `Ajustar ${timer} a ${on} encendido, ${off} apagado.`,
  makes: (entries) => `En sus primeros días eso da: ${entries}.`,
  poweredBy: (timer) => `Recibe corriente de ${timer}.`,
  wallThen: (entries, from, to) => `Según el reloj de pared, del ${from} al ${to}: ${entries}.`,
  minutes: (minutes) => `${minutes} min`,
  list: (items) => items.join('; '),
  allowed: (spans) => `Puede empezar: ${spans}.`,
  fromTo: (from, to) => `de ${from} a ${to}`,
  forecast: (day, night, low, high) =>
    `Previsión del aire: ${day} de día y ${night} de noche de media, entre ${low} y ${high}.`,
  forecastMean: (mean, low, high) => `Previsión del aire: ${mean} de media, entre ${low} y ${high}.`,
  forecastNote:
    'Es una previsión a partir del tamaño, la malla y la habitación: donde difieran, vale el higrómetro; entregue su registro.',
  range: (low, high) => (low === high ? low : `${low} a ${high}`),
  percent: (value) => `${value} %`,
  dries: (hours) => `Las hojas están secas al menos ${hours} seguidas.`,
  hours: (hours, minutes) =>
    hours === 0 ? `${minutes} min` : minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`,
  measure: 'Mida con un vaso lo que da cada boquilla, al empezar y cada mes; el plan se guía por ello.',

  chart: {
    title: (enclosure) => `${enclosure}: el día de su aire`,
    dates: (from, to) => (from === to ? from : `${from} a ${to}`),
    description: (enclosure, mists, low, high, room) =>
      `Previsión de un día de ${enclosure}: ${mistsWord(mists)}, humedad entre ${low} y ${high} en una habitación al ${room}, y lo mojadas que están las hojas.`,
    clock: {
      standard: 'Las horas son de horario estándar (de invierno). Es una previsión: vale el higrómetro.',
      wall: 'Las horas son las del reloj. Es una previsión: vale el higrómetro.',
      automatic: 'Las horas son las del reloj. Es una previsión: vale el higrómetro.',
    },
    lamp: 'lámpara',
    lampOn: (on, off) => `encendida de ${on} a ${off}`,
    leaves: 'agua en las hojas, parte de la que retienen',
    humidity: 'humedad en el terrario',
    room: 'humedad de la habitación',
    mist: 'una nebulización: hora y duración',
    dayBand: 'objetivo de día (su media)',
    meanBand: 'objetivo en 24 h (su media)',
    nightBand: 'objetivo de noche (su media)',
    peakBand: 'objetivo de los picos',
    limit: 'límite: mínimo; hojas secas por debajo',
    ceiling: 'límite: nunca por encima',
  },
  notes: {
    'shield-the-lamp': (v) =>
      `${v.enclosure} se nebuliza mientras puede estar encendida ${v.lamps}: una lámpara caliente puede estallar si se moja. Proteja la lámpara y aparte de ella la boquilla.`,
    'starts-with-power': (v) =>
      `${v.timer} empieza encendido cada vez que llega la corriente, también tras un parpadeo: ${v.enclosure} se nebuliza entonces una vez más. Mire la bandeja después de una tormenta.`,
    'plug-in-at': (v) =>
      `${v.timer} no conoce la hora: enchúfelo a las ${v.at} (${v.clock === 'standard' ? 'horario estándar' : 'hora del reloj'}). Tras un corte de corriente empieza de nuevo: vuelva a enchufarlo a esa hora.`,
    'cover-mesh': (v) =>
      `Con ${v.open} de ${v.enclosure} abierto en lugar de ${v.now} se cumplen todos los objetivos, con ${v.water} de agua por semana en lugar de ${v.nowWater}. Es lo mínimo que hay que tapar.`,
    'cover-until': (v) =>
      `${v.enclosure} necesita esa cubierta desde el ${v.on}; desde el ${v.off} cumple sus objetivos sin ella: quítela entonces.`,
    'driest-month': (v) =>
      `El aire más seco de ${v.enclosure} es el de ${v.month}, con la habitación al ${v.room}: baja a ${v.low}. Planificado solo para esos días recibiría ${v.entries}.`,
    'coldest-month': (v) =>
      `Las noches más frías de ${v.enclosure} son las de ${v.month}, ${v.night}. Planificado solo para esos días recibiría ${v.entries}.`,
    'water-bill': (v) =>
      `${v.enclosure} gasta ${v.water} de agua por semana${v.tankDays < 0 ? '' : `; el depósito dura ${daysWord(v.tankDays)} y se llena cada ${v.refillDays === 1 ? 'día' : `${v.refillDays} días`}`}.`,
    'run-off': (v) =>
      `${v.runOff} al día escurren en ${v.enclosure}${v.lasts < 0 ? ': póngale una bandeja o un desagüe' : `; su bandeja se llena en ${daysWord(v.lasts)} y se vacía cada ${v.empty === 1 ? 'día' : `${v.empty} días`}`}.`,
    'more-mists-fewer-peaks': (v) =>
      `${mistsWord(v.mists)} ${v.mists === 1 ? 'da' : 'dan'} ${v.peaks} ${v.peaks === 1 ? 'pico' : 'picos'} en ${v.enclosure}: entre ellas su aire no baja lo bastante. Menos nebulizaciones muy separadas, o una malla más abierta, dan más picos.`,
  },
  inEnglish: (count) =>
    `Hay ${count === 1 ? '1 aviso' : `${count} avisos`} sobre esta agua: dewdial check ${count === 1 ? 'lo' : 'los'} dice, en inglés.`,
  targets: {
    'humidity.day': 'la humedad de día',
    'humidity.night': 'la humedad de noche',
    'humidity.mean': 'la humedad media',
    'humidity.floor': 'la humedad más baja',
    'humidity.ceiling': 'la humedad más alta',
    'humidity.peak': 'el pico de humedad',
    'humidity.peaks_per_day': 'el número de picos de humedad al día',
    'humidity.soaked_at_most': 'el tiempo seguido por encima del pico',
  },
  noHandMists: 'Ninguna nebulización.',
  cutRepeat:
    'empieza de nuevo encendido cuando vuelve la corriente: mire la bandeja y enchúfelo otra vez a su hora, si tiene una.',
  noMists: 'ninguna nebulización',
  sameMists: 'las mismas nebulizaciones',
  someMists: (count, entries) => `${mistsWord(count)} (${entries})`,
};
