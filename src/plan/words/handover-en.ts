/** What stands on the sheet for a sitter, in English: short sentences for somebody who has never held the animal. */
export const handoverEn = {
  title: (household: string) => `${household}: while the keeper is away`,
  subject: 'Sheet for the sitter',
  forWhom: (sitter: string, from: string, to: string) => `For ${sitter}, ${from} to ${to}.`,
  comes: (dates: string) => `You come on ${dates}.`,
  runningHead: (household: string, from: string, to: string) => `${household}, ${from} to ${to}`,
  page: (page: number, count: number) => `page ${page} of ${count}`,

  who: 'Who lives here',
  animal: (name: string, species: string, count: number) =>
    count === 1 ? `${name}: ${species}.` : `${name}: ${species}, ${count} animals.`,
  activity: {
    diurnal: 'Awake while the lamps are on, asleep and often pale at night.',
    nocturnal: 'Hidden and asleep by day, out after the lamps go off.',
    crepuscular: 'Most awake around the time the lamps go on and off.',
  },
  mayGoWithout: (days: string) => `Once without eating is normal; ${days} is not.`,
  noHandling: 'Look, do not pick up.',

  machines: 'What the machines do by themselves: leave them on',
  dialLine: (drives: string, windows: string) => `${drives}: ${windows} by the clock on the wall.`,
  dialChange: (date: string, what: string) => `From ${date}: ${what}.`,
  dialOff: 'off all day',
  onOff: (on: string, off: string) => `on ${on}, off ${off}`,
  mistLine: (names: string, times: string) => `The pump mists ${names}: ${times}.`,
  mistTime: (at: string, length: string) => `${at} for ${length}`,
  dripperLine: (device: string) => `${device} drips by itself.`,
  clocksForward: (date: string, by: string) => `On ${date} the clocks go forward ${by}.`,
  clocksBack: (date: string, by: string) => `On ${date} the clocks go back ${by}.`,
  clocksLeave: (devices: string) => `Leave ${devices} alone.`,
  clocksTurn: (devices: string) => `Turn ${devices} on, the way they run, until the mark shows the time now.`,
  nothingRuns: 'No timer runs here.',

  visit: 'At each visit, in this order',
  steps: {
    arrive: 'Wash your hands. Look before you open: where is each animal, does it breathe quietly with the mouth shut?',
    arriveLast: (names: string) => `Keep ${names} for last, and wash your hands again after.`,
    lamps: 'Are the lamps and timers as the list of machines says?',
    values: 'Read the warm end, the cool end and the humidity of each; write them into the grid.',
    water: 'Water: dish and bowl clean and full, tank above its mark, tray not full.',
    mist: (names: string) => `Mist by hand: ${names}; never onto a hot lamp.`,
    mistOf: (name: string, times: string) => `${name} ${times}`,
    feed: 'Feed by the letter of the day. The dust is in the packet with that letter; give no other, and never two.',
    clean: 'Take out droppings and what was not eaten.',
    jobs: 'Do what is framed for today in the grid, and what the list under it says for today.',
    close: 'Shut and lock every door. Count the animals. Write your initials.',
    leave: 'Wash your hands with soap.',
  },

  days: 'Day by day',
  howToFill: 'Framed: due that day. Write the value you read, or your initials when it is done.',
  humidityOf: (name: string) => `${name} humidity %`,
  initials: 'Your initials',
  feeds: 'Portions put up beforehand',
  portions: (letter: string, count: number, means: string) =>
    `${letter}: ${count === 1 ? '1 portion' : `${count} portions`} of ${means}`,
  portionsHow: 'The keeper fills a packet for each and writes the letter on it.',

  normal: 'What is normal, and what is not',
  normalLines: [
    'Normal: sits still for hours, changes colour, hides, sheds its skin, leaves a meal once.',
    'Not normal: open mouth or bubbles, sunken eyes, swollen limbs, limp or fallen, cannot lift itself, blood, a prolapse, flies on it. Call.',
    'Not normal: two readings in a row outside the limits on the first page. Act as it says there, then call.',
  ],

  cut: 'The night of the power cut',
  cutNumbers: (name: string, below: string, above: string) =>
    `${name}: act before it is ${[below, above].filter((each) => each !== '').join(' or ')}.`,
  cutBelow: (value: string) => `colder than ${value}`,
  cutAbove: (value: string) => `hotter than ${value}`,
  cutSteps: {
    note: 'Take a torch, no candle. Write down the time: power off at ____. Read each thermometer now and every 30 min.',
    flicker: (pumps: string) =>
      `If it flickers, unplug ${pumps}: a pump that starts again and again floods or runs dry.`,
    wrap: 'Wrap the sides and the top in blankets; leave a gap for air. Keep the doors shut.',
    bottles:
      'When it nears its lower limit: bottles of water as warm as your hand (about 38 °C), each in a cloth, along one side, never on the animal. Change them when they are cool.',
    bottlesUs:
      'When it nears its lower limit: bottles of water as warm as your hand (about 100 °F), each in a cloth, along one side, never on the animal. Change them when they are cool.',
    never: 'No flame, no gas heater, no generator indoors. No food until it is warm again. Mist nothing that is cold.',
    spray: (names: string) => `Off for longer than 12 h and warm: spray by hand for ${names}.`,
    sprayOf: (name: string, length: string) => `${name} ${length} onto leaves and walls`,
    move: 'Still falling, 2° above the limit and no power in sight: each animal in a cloth bag or box with air holes, into the warmest room you know, in the dark. Call first.',
    summer:
      'In summer the other way round: shade and air first, doors ajar behind mesh, no blankets; move it to the coolest room when it nears its upper limit.',
    call: 'Call the keeper after 1 h, at once when a limit is near. No answer in 15 min: the vet.',
  },
  back: 'When the power is back: power on at ____',
  backDial: (device: string) =>
    `${device} stood still: it is slow by just as long as the power was off (off 22:00, on 01:30: 3 h 30 min slow). Turn it on, the way it runs, until its mark shows the time now`,
  backDialStandard: (device: string, by: string) =>
    `${device} stood still: it is slow by just as long as the power was off. Turn it on, the way it runs, until its mark shows winter time: the time now, less ${by} in summer`,
  backKeeps: (device: string) => `${device} keeps its time: only look whether it shows the time now`,
  backSet: (device: string) => `${device} has lost its time: set its clock to the time now; its entries stay`,
  backCycle: (device: string, at: string) =>
    at === ''
      ? `${device} begins anew with ON: unplug it and plug it in again at its hour`
      : `${device} begins anew with ON: plug it in again at ${at}`,
  backHeat: 'Are all lamps on that should be? Do the thermostats show their set value?',
  backPump: (pumps: string) => `Last: ${pumps}. Water in the tank? Then plug it in and watch one mist.`,

  trouble: 'If something else goes wrong',
  pumpFails: (pump: string, names: string) =>
    `${pump} does not run: unplug it. Is there water, a kinked hose? Spray by hand instead: ${names}. Call.`,
  tankEmpty: (pump: string, reserve: string) =>
    `The tank of ${pump} is empty, or below ${reserve}: unplug the pump, fill it with the water kept for it, plug it in, watch one mist. A pump must not run dry.`,
  noFeeders: (feeders: string) => `No feeders left, or all dead: ${feeders}. Catch no insects outside. Call.`,
  noFeederOf: (name: string, standIn: string, days: string) =>
    [
      `${name}${standIn === '' ? '' : ` takes ${standIn} instead`}`,
      ...(days === '' ? [] : [`may go without for ${days}`]),
    ].join(', '),
  escape:
    'An animal is gone: shut the room, stop the gap under the door, tell everybody. Switch off and cover what it could burn or drown in. Look high and warm first, and behind things; at night with a torch. Call.',
  injury:
    'An animal is hurt: leave it in the dark and quiet, touch it as little as you can. No ointment, no water into the mouth. Call the vet, then the keeper.',
  bitten:
    'You are bitten or scratched: wash with soap and running water, cover it, see a doctor if it is deep or red the day after.',
  wet: 'Water near a plug or a lamp: touch nothing, switch off at the fuse, then call.',

  phone: 'On the phone, read this out',
  phoneLines: {
    me: 'This is',
    lookAfter: (names: string) => `I look after ${names} for`,
    normal: 'Normally it',
    now: 'Now it',
    since: 'since',
    values: 'Warm end',
    cool: 'cool end',
    humidity: 'humidity',
    done: 'I have',
    ask: 'What shall I do, and when do I call again? At',
  },
  phoneEnd: 'No answer in 15 min: call the vet. Do not wait for a call back when it is limp or gasps.',

  hygiene: 'Hygiene and cautions',
  where: 'Where things are',
  whereThings: {
    food: 'food',
    sprayer: 'sprayer',
    tank: 'tank',
    dish: 'dish',
    gauge: 'gauge',
    key: 'key',
    fuse: 'fuse box',
    tools: 'tools',
    water: 'water',
  } as Readonly<Record<string, string>>,
  whereOf: (name: string, places: string) => `${name}: ${places}`,
  whereBlank: ['fuse box', 'torch', 'blankets', 'animal carrier'],

  sign: 'Handed over',
  signKeeper: 'Keeper, date',
  signSitter: 'Sitter, date',
  replace: (date: string) => `This sheet holds until ${date}. Throw it away after that.`,
};
