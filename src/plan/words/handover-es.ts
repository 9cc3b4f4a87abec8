/** What stands on the sheet for a sitter, in Spanish. */
import type { handoverEn } from './handover-en.ts';

export const handoverEs: typeof handoverEn = {
  title: (household) => `${household}: mientras el cuidador está fuera`,
  subject: 'Hoja para quien cuida',
  forWhom: (sitter, from, to) => `Para ${sitter}, del ${from} al ${to}.`,
  comes: (dates) => `Viene usted: ${dates}.`,
  runningHead: (household, from, to) => `${household}, ${from} a ${to}`,
  page: (page, count) => `página ${page} de ${count}`,

  who: 'Quién vive aquí',
  animal: (name, species, count) => (count === 1 ? `${name}: ${species}.` : `${name}: ${species}, ${count} animales.`),
  activity: {
    diurnal: 'Despierto con las lámparas encendidas; de noche duerme, a menudo pálido.',
    nocturnal: 'De día escondido y dormido; sale al apagarse las lámparas.',
    crepuscular: 'Más despierto cuando las lámparas se encienden y se apagan.',
  },
  mayGoWithout: (days) => `No comer una vez es normal; ${days} no lo es.`,
  noHandling: 'Mirar, no coger.',

  machines: 'Lo que hacen solas las máquinas: dejarlas enchufadas',
  dialLine: (drives, windows) => `${drives}: ${windows} según el reloj de pared.`,
  dialChange: (date, what) => `Desde el ${date}: ${what}.`,
  dialOff: 'apagado todo el día',
  onOff: (on, off) => `encendido ${on}, apagado ${off}`,
  mistLine: (names, times) => `La bomba riega ${names}: ${times}.`,
  mistTime: (at, length) => `${at} durante ${length}`,
  dripperLine: (device) => `${device} gotea solo.`,
  clocksForward: (date, by) => `El ${date} los relojes se adelantan ${by}.`,
  clocksBack: (date, by) => `El ${date} los relojes se atrasan ${by}.`,
  clocksLeave: (devices) => `No tocar ${devices}.`,
  clocksTurn: (devices) => `Girar ${devices} en su sentido hasta que la marca muestre la hora de ahora.`,
  nothingRuns: 'Aquí no funciona ningún programador.',

  visit: 'En cada visita, por este orden',
  steps: {
    arrive:
      'Lavarse las manos. Mirar antes de abrir: ¿dónde está cada animal, respira tranquilo y con la boca cerrada?',
    arriveLast: (names) => `Dejar ${names} para el final y volver a lavarse las manos.`,
    lamps: '¿Están lámparas y relojes como dice la lista de máquinas?',
    values: 'Leer el lado cálido, el lado fresco y la humedad de cada uno; escribirlo en la tabla.',
    water: 'Agua: cuenco y plato limpios y llenos, depósito por encima de su marca, bandeja sin llenar.',
    mist: (names) => `Pulverizar a mano: ${names}; nunca sobre una lámpara caliente.`,
    mistOf: (name, times) => `${name} ${times}`,
    feed: 'Dar de comer según la letra del día. El polvo está en la bolsita con esa letra; ningún otro, y nunca dos.',
    clean: 'Retirar heces y restos de comida.',
    jobs: 'Hacer lo que hoy tiene marco en la tabla, y lo que dice para hoy la lista de debajo.',
    close: 'Cerrar con llave cada puerta. Contar los animales. Escribir las iniciales.',
    leave: 'Lavarse las manos con jabón.',
  },

  days: 'Día a día',
  howToFill: 'Con marco: toca ese día. Escriba el valor que lee, o sus iniciales al hacerlo.',
  humidityOf: (name) => `${name}: humedad %`,
  initials: 'Sus iniciales',
  feeds: 'Raciones preparadas de antemano',
  portions: (letter, count, means) => `${letter}: ${count === 1 ? '1 ración' : `${count} raciones`} de ${means}`,
  portionsHow: 'El cuidador llena una bolsita para cada una y escribe en ella la letra.',

  normal: 'Qué es normal y qué no',
  normalLines: [
    'Normal: quieto durante horas, cambia de color, se esconde, muda la piel, deja una comida.',
    'No es normal: boca abierta o burbujas, ojos hundidos, patas hinchadas, flojo o caído, no se levanta, sangre, algo que sale del cuerpo, moscas encima. Llamar.',
    'No es normal: dos lecturas seguidas fuera de los límites de la primera página. Hacer lo que dice allí y llamar.',
  ],

  cut: 'La noche del apagón',
  cutNumbers: (name, below, above) =>
    `${name}: actuar antes de ${[below, above].filter((each) => each !== '').join(' o ')}.`,
  cutBelow: (value) => `bajar de ${value}`,
  cutAbove: (value) => `pasar de ${value}`,
  cutSteps: {
    note: 'Linterna, no vela. Apuntar la hora: se fue la luz a las ____. Leer cada termómetro ahora y cada 30 min.',
    flicker: (pumps) =>
      `Si la luz parpadea, desenchufar ${pumps}: una bomba que arranca una y otra vez inunda o gira en seco.`,
    wrap: 'Abrigar lados y techo con mantas; dejar un hueco para el aire. Puertas cerradas.',
    bottles:
      'Al acercarse al límite inferior: botellas de agua tibia como la mano (unos 38 °C), cada una en un paño, a lo largo de un lado, nunca sobre el animal. Cambiarlas al enfriarse.',
    bottlesUs:
      'Al acercarse al límite inferior: botellas de agua tibia como la mano (unos 100 °F), cada una en un paño, a lo largo de un lado, nunca sobre el animal. Cambiarlas al enfriarse.',
    never:
      'Ni llamas, ni estufa de gas, ni generador dentro de casa. Sin comida hasta que esté templado. No pulverizar nada frío.',
    spray: (names) => `Más de 12 h sin luz y templado: pulverizar a mano: ${names}.`,
    sprayOf: (name, length) => `${name} ${length} sobre hojas y paredes`,
    move: 'Sigue bajando, a 2° del límite y sin luz a la vista: cada animal en una bolsa de tela o caja con agujeros, al cuarto más cálido que conozca, a oscuras. Llamar antes.',
    summer:
      'En verano al revés: primero sombra y aire, puertas entreabiertas tras la malla, sin mantas; al cuarto más fresco al acercarse al límite superior.',
    call: 'Llamar al cuidador tras 1 h, y enseguida si un límite está cerca. Sin respuesta en 15 min: al veterinario.',
  },
  back: 'Al volver la luz: volvió a las ____',
  backDial: (device) =>
    `${device} se paró: va atrasado justo lo que duró el corte (de 22:00 a 01:30: 3 h 30 min). Girarlo en su sentido hasta que la marca muestre la hora de ahora`,
  backDialStandard: (device, by) =>
    `${device} se paró: va atrasado justo lo que duró el corte. Girarlo en su sentido hasta que la marca muestre la hora de invierno: la de ahora, menos ${by} en verano`,
  backKeeps: (device) => `${device} conserva la hora: solo mirar si marca la de ahora`,
  backSet: (device) => `${device} ha perdido la hora: poner su reloj en la de ahora; sus entradas siguen`,
  backCycle: (device, at) =>
    at === ''
      ? `${device} empieza de nuevo encendido: desenchufarlo y enchufarlo a su hora`
      : `${device} empieza de nuevo encendido: enchufarlo a las ${at}`,
  backHeat: '¿Están encendidas todas las lámparas que deben? ¿Muestran los termostatos su valor?',
  backPump: (pumps) => `Lo último: ${pumps}. ¿Hay agua en el depósito? Entonces enchufar y mirar un riego.`,

  trouble: 'Si falla otra cosa',
  pumpFails: (pump, names) =>
    `${pump} no funciona: desenchufarla. ¿Hay agua, un tubo doblado? Pulverizar a mano: ${names}. Llamar.`,
  tankEmpty: (pump, reserve) =>
    `El depósito de ${pump} está vacío, o por debajo de ${reserve}: desenchufar la bomba, llenarlo con el agua guardada, enchufar, mirar un riego. Una bomba no debe girar en seco.`,
  noFeeders: (feeders) => `No quedan presas, o están muertas: ${feeders}. No cazar insectos fuera. Llamar.`,
  noFeederOf: (name, standIn, days) =>
    [
      `${name}${standIn === '' ? '' : ` toma ${standIn} en su lugar`}`,
      ...(days === '' ? [] : [`puede pasar sin comer ${days}`]),
    ].join(', '),
  escape:
    'Falta un animal: cerrar el cuarto, tapar la rendija de la puerta, avisar a todos. Apagar y cubrir aquello en que pueda quemarse o ahogarse. Buscar primero arriba, en lo cálido y detrás de las cosas; de noche con linterna. Llamar.',
  injury:
    'Un animal está herido: dejarlo a oscuras y en silencio, tocarlo lo menos posible. Ni pomadas ni agua en la boca. Llamar al veterinario y luego al cuidador.',
  bitten:
    'Le ha mordido o arañado: lavar con jabón y agua corriente, cubrir, ir al médico si es profundo o está rojo al día siguiente.',
  wet: 'Agua cerca de un enchufe o una lámpara: no tocar nada, cortar la luz en el cuadro y llamar.',

  phone: 'Al teléfono, leer esto',
  phoneLines: {
    me: 'Soy',
    lookAfter: (names) => `Cuido a ${names} de`,
    normal: 'Normalmente',
    now: 'Ahora',
    since: 'desde las',
    values: 'Lado cálido',
    cool: 'lado fresco',
    humidity: 'humedad',
    done: 'He hecho',
    ask: '¿Qué hago, y cuándo vuelvo a llamar? A las',
  },
  phoneEnd: 'Sin respuesta en 15 min: llamar al veterinario. No esperar si está flojo o boquea.',

  hygiene: 'Higiene y precauciones',
  where: 'Dónde están las cosas',
  whereThings: {
    food: 'comida',
    sprayer: 'pulverizador',
    tank: 'depósito',
    dish: 'cuenco',
    gauge: 'medidor',
    key: 'llave',
    fuse: 'cuadro eléctrico',
    tools: 'herramientas',
    water: 'agua',
  },
  whereOf: (name, places) => `${name}: ${places}`,
  whereBlank: ['cuadro eléctrico', 'linterna', 'mantas', 'transportín'],

  sign: 'Entregado',
  signKeeper: 'Cuidador, fecha',
  signSitter: 'Quien cuida, fecha',
  replace: (date) => `Esta hoja vale hasta el ${date}. Después, tirarla.`,
};
