/** What a fit to gauge readings says, in English. */
export const fitEn = {
  picture: {
    title: (name: string) => `${name}: gauge and model`,
    description: (name: string, readings: number) =>
      `Relative humidity in ${name}: ${readings} readings of the gauge, the air model fitted to them, and the model as it was estimated.`,
    reading: 'gauge',
    fitted: 'model, fitted',
    estimated: 'model, as estimated',
    mist: 'mist',
    lit: 'lights on',
    lastDays: 'The last two days',
  },
  values: {
    airChangesPerHour: 'air changes an hour',
    baseEvaporationGPerHour: 'evaporation without mist, g/h',
    transferMPerHour: 'drying of wet leaves, m/h',
  },
  summary: (name: string, count: number, from: string, to: string) => `${name}: ${count} readings, ${from} to ${to}`,
  lost: (count: number) => (count === 1 ? '1 line holds no reading' : `${count} lines hold no reading`),
  gaps: (count: number, longest: string) =>
    `${count === 1 ? 'one gap' : `${count} gaps`} without readings, the longest ${longest} h`,
  columns: ['', 'fitted', '95 % between', 'as estimated'] as readonly string[],
  and: 'and',
  kept: 'not told, estimate kept',
  saidByFile: 'said by the file',
  residual: (points: string) =>
    `The model passes the readings within ${points} points of humidity, two times in three.`,
  taken: {
    room: 'Room: as the file has it. Where it was drier or damper, the air changes are off.',
    temperature: {
      gauge: 'Temperature: as the gauge read it.',
      model: 'Temperature: from the plan, the log has none.',
    },
    mists: {
      log: (count: number) => `Mists: ${count}, from the log.`,
      plan: (count: number) => `Mists: ${count}, as the plan has them; a mist that did not run misleads the fit.`,
      none: 'Mists: none.',
    },
    gauge: {
      tested: (points: string) => `Gauge: corrected by its salt test (${points}).`,
      untested: 'Gauge: as it reads. A salt test (--salt NaCl=72,MgCl2=35) takes its error out.',
    },
    clock: (minutes: string, isAhead: boolean) =>
      `Clock: the gauge's seems ${minutes} min ${isAhead ? 'ahead' : 'behind'}; allowed for.`,
  },
  written: (file: string, household: string, id: string) =>
    `written to ${file}; every command uses it from now on. To take it back: dewdial fit ${household} --remove ${id}`,
  notWritten: 'nothing written (--dry)',
  picturedIn: (file: string) => `picture: ${file}`,
  next: (household: string) => `next: dewdial compile ${household}`,
};
