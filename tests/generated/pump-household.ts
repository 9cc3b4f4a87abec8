/** Household files in which `auto` shares enclosures out to pumps: each enclosure with a cadence, a state and nozzles of its own; our own invention. */
import { readFileSync } from 'node:fs';
import { compile } from '../../src/compile.ts';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { PROFILE_IDS, profileText } from '../shipped-profiles.ts';

export interface PumpedEnclosure {
  readonly perDay: number;
  readonly seconds?: number;
  readonly nozzles?: number;
  /** A pump by name; left out: auto. */
  readonly mist?: string;
  /** The keys of a state, for instance `is: quarantine, from: …, to: …`. */
  readonly state?: string;
}

/** An animal that asks for nothing but mists. */
const RAIN = 'mine/rain.yaml';

const RAIN_PROFILE = readFileSync(new URL(`../errors/cases/${RAIN}`, import.meta.url), 'utf8');

/** Pumps by their number of nozzles, `pump-0` first. */
export function pumpHousehold(pumps: readonly number[], enclosures: readonly PumpedEnclosure[]): string {
  return `# today: 2027-01-01
format: 1
name: Pumps
site: { timezone: Europe/Madrid, latitude: 41.65, longitude: -0.89, room: { day: 22 °C, night: 20 °C, humidity: 45 % } }
plan: { from: 2027-01-01, days: 28 }
people: [{ id: keeper, feeds_at: "12:30" }]
hardware:
  - { id: dial, kind: pin-dial, step: 15 min, outlets: 40, rating: 1800 W }
${pumps
  .map(
    (nozzles, index) =>
      `  - { id: timer-${index}, kind: programmable-timer, entries: 12, resolution: 1 s, shortest: 5 s, clock: standard, keeps_time: yes, rating: 1000 W }
  - { id: pump-${index}, kind: mist-pump, outlet: timer-${index}, power: 30 W, flow: 90 mL/min, nozzles: ${nozzles}, longest_run: 5 min, rest: 10 min }
`,
  )
  .join('')}enclosures:
${enclosures.map(enclosureText).join('')}`;
}

function enclosureText(
  { perDay, seconds = 60, nozzles = 1, mist = 'auto', state }: PumpedEnclosure,
  index: number,
): string {
  const misting = `misting: { per_day: [${perDay}, ${perDay}], seconds: [${seconds} s, ${seconds} s], favour: even, why: chosen for this }`;
  return `  - id: e${index}
    species: ${RAIN}
    stage: adult
    size: { width: 45 cm, depth: 45 cm, height: 60 cm }
    open: 33 %
    lamps: [{ id: day, kind: led, for: [daylight], power: 10 W, warms: 2 °C, outlet: dial }]
    mist: ${mist}
    nozzles: { count: ${nozzles}, hits_lamp: false }
    targets: { ${misting} }
${state === undefined ? '' : `    states: [{ ${state} }]\n`}`;
}

export function compiledPumps(text: string, earlier: Plan | null = null, date = '2027-01-01') {
  const { plan, diagnostics } = compile({
    file: 'home.yaml',
    text,
    profile: (id) => ({ file: id, text: id === RAIN ? RAIN_PROFILE : profileText(id) }),
    profileIds: PROFILE_IDS,
    earlier,
    today: { date },
    version: '1.0.0',
  });
  if (!plan) throw new Error(diagnostics.map(({ code, because }: Diagnostic) => `${code} ${because}`).join('\n'));
  return { plan, diagnostics };
}
