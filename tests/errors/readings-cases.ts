/** What is said of a gauge's log and of fitted values: a household, a log (`cases/CODE.csv`, or made here where it is long), what is said. */
import type { Compiled } from '../../src/compile.ts';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { renderText } from '../../src/diagnostics/render.ts';
import { fitOfLog } from '../generated/fit-of-log.ts';
import { compiledFern, csvOf, fernHousehold, gaugeLog, type LogWish, WEEK } from '../generated/gauge-log.ts';

interface Said {
  readonly diagnostics: readonly Diagnostic[];
  readonly text: (wanted: (diagnostic: Diagnostic) => boolean) => string;
}

const HOUSEHOLD = fernHousehold();
let ordinary: Compiled | null = null;

function ordinaryHousehold(): Compiled {
  ordinary ??= compiledFern(HOUSEHOLD);
  return ordinary;
}

/** Returns what is said of a log against the ordinary household, or another. */
export function saidOfLog(csv: string, household: string = HOUSEHOLD): Said {
  const compiled = household === HOUSEHOLD ? ordinaryHousehold() : compiledFern(household);
  const { log } = fitOfLog(compiled, csv);
  return said(log.sorted(), { 'home.yaml': household, 'gauge.csv': csv });
}

function said(diagnostics: readonly Diagnostic[], texts: Readonly<Record<string, string>>): Said {
  const sources = new Map(Object.entries(texts).map(([file, text]) => [file, { shown: file, text }]));
  return { diagnostics, text: (wanted) => renderText(diagnostics.filter(wanted), sources) };
}

function saidOfMade(wish: Partial<LogWish>, household: string = HOUSEHOLD, logged: string = household): Said {
  const compiled = logged === HOUSEHOLD ? ordinaryHousehold() : compiledFern(logged);
  return saidOfLog(csvOf(gaugeLog(compiled, { ...WEEK, ...wish }).lines), household);
}

function saidOfFitted(text: string): Said {
  const { diagnostics } = compiledFern(HOUSEHOLD, { file: 'home.fit.yaml', text });
  return said(diagnostics, { 'home.fit.yaml': text });
}

function fittedFile(id: string, shape: string): string {
  return `format: 1
fitted:
  ${id}: { readings: gauge.csv, from: 2027-01-05, to: 2027-01-11, count: 900, residual: 2.9 %, shape: "${shape}", log: "0", changes_per_hour: { best: 12, low: 11, high: 13 } }
`;
}

/** Seventeen hours at one value, then the rest as before. */
function stuckLog(): string {
  const { lines } = gaugeLog(ordinaryHousehold());
  return csvOf(lines.map((line, index) => (index >= 300 && index < 400 ? { ...line, humidity: 61 } : line)));
}

/** Long waves that no mist makes. */
function wavyLog(): string {
  const { lines } = gaugeLog(ordinaryHousehold());
  const wave = (index: number) => Math.round(140 * Math.sin(index / 45)) / 10;
  return csvOf(
    lines.map((line, index) => ({ ...line, humidity: Math.min(99, Math.max(5, line.humidity + wave(index))) })),
  );
}

export const readingsCases: Readonly<Record<string, () => Said>> = {
  'fitted-for-another-shape': () => saidOfFitted(fittedFile('fern', '5d41402abc4b2a76b9719d911017c592')),
  'fitted-enclosure-unknown': () => saidOfFitted(fittedFile('ferm', '5d41402abc4b2a76b9719d911017c592')),
  'readings-outside-plan': () => saidOfLog('time,humidity\n2026-11-05 10:00,45\n2026-11-05 10:10,46\n'),
  'readings-newest': () => saidOfMade({ days: 65, everyMinutes: 90 }),
  'readings-too-few': () => saidOfMade({ days: 1, everyMinutes: 20 }),
  'gauge-stuck': () => saidOfLog(stuckLog()),
  'gauge-clock-off': () => saidOfMade({ aheadMinutes: 60 }),
  'fit-held-by-file': () => saidOfMade({}, fernHousehold('    air: { changes_per_hour: 8 }\n'), HOUSEHOLD),
  'fit-nothing-free': () =>
    saidOfMade(
      {},
      fernHousehold('    air: { changes_per_hour: 8, base_evaporation: 7 g/h, transfer: 4 m/h }\n'),
      HOUSEHOLD,
    ),
  'fit-undetermined': () => saidOfMade({ days: 3, everyMinutes: 20, noise: 0.05 }, fernHousehold('', 'none')),
  'fit-cannot-tell': () =>
    saidOfMade({
      days: 3,
      everyMinutes: 20,
      noise: 0.03,
      factors: { airChangesPerHour: 0.5, baseEvaporationGPerHour: 1, transferMPerHour: 1 },
    }),
  'fit-misses': () => saidOfLog(wavyLog()),
};
