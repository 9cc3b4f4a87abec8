/** Chooses the cautions that a household needs by what stands in it. */
import type { Device } from '../hardware/devices.ts';
import type { Language } from '../plan/plan.ts';
import type { CareEnclosure, LampKind } from './care.ts';
import { CAUTIONS, type CautionId, type CautionText, PRACTICE } from './caution-texts.ts';
import { CAUTIONS_ES, PRACTICE_ES } from './caution-texts-es.ts';

/** Lamps hot enough to burn, and to shatter when sprayed. */
export const HOT_LAMPS: readonly LampKind[] = ['halogen', 'mercury', 'metal-halide', 'ceramic'];
const UV_LAMPS: readonly LampKind[] = ['mercury', 'metal-halide'];
const HEATERS: readonly LampKind[] = ['ceramic', 'mat', 'cable'];

/** What of an enclosure decides on cautions. */
export type CautionFacts = Pick<
  CareEnclosure,
  'species' | 'lamps' | 'mist' | 'dripper' | 'nozzles' | 'targets' | 'rest' | 'stages'
>;

type Rule = (enclosure: CautionFacts, devices: readonly Device[]) => boolean;

const isMisted: Rule = ({ mist }) => mist !== 'none' && mist !== 'by-hand';
const hasHotLamp: Rule = ({ lamps }) => lamps.some(({ kind }) => HOT_LAMPS.includes(kind));
const hasKind =
  (kind: Device['kind']): Rule =>
  (_, devices) =>
    devices.some((device) => device.kind === kind);
const always: Rule = () => true;

const RULES: Readonly<Record<CautionId, Rule>> = {
  'verify-with-vet': always,
  salmonella: always,
  'people-at-risk': always,
  'out-of-kitchens': always,
  'mains-near-water': (e, devices) =>
    isMisted(e, devices) ||
    e.mist === 'by-hand' ||
    e.dripper !== null ||
    e.targets.water.dish !== null ||
    e.targets.water.soak !== null,
  'unplug-first': (e, devices) => e.lamps.length > 0 || isMisted(e, devices),
  'timer-ratings': (_, devices) => devices.some((device) => 'ratingW' in device),
  'heat-on-thermostat': ({ lamps }) =>
    lamps.some(({ uses, kind }) => uses.includes('heat') || uses.includes('basking') || HEATERS.includes(kind)),
  'hot-lamps': hasHotLamp,
  'shield-the-lamp': (e, devices) => isMisted(e, devices) && hasHotLamp(e, devices) && e.nozzles.hitsLamp === false,
  'lamp-distance': (e) => e.species === 'bearded-dragon' && e.lamps.some(({ uses }) => uses.includes('basking')),
  'uv-lamps': ({ lamps }) => lamps.some(({ uses, kind }) => uses.includes('uvb') || UV_LAMPS.includes(kind)),
  'no-uv-through-glass': ({ targets }) => targets.uvb !== null,
  'no-glass-in-sun': always,
  vitamins: ({ targets, stages }) => stages.some(({ stage }) => (targets.stages[stage]?.dusting ?? []).length > 0),
  'power-cut': (_, devices) => devices.length > 0,
  'dial-clocks': hasKind('pin-dial'),
  'pump-can-flood': (e, devices) => isMisted(e, devices) && devices.some(({ kind }) => kind === 'mist-pump'),
  'repeat-timer-flicker': hasKind('repeat-cycle-timer'),
  'standing-water': (e, devices) => isMisted(e, devices) || e.dripper !== null || e.targets.water.dish !== null,
  'rest-only-if-checked': ({ rest }) => rest !== null,
};

/** Returns the ids of the cautions of one enclosure, in the order of the table. */
export function cautionsOf(enclosure: CautionFacts, devices: readonly Device[]): readonly CautionId[] {
  return CAUTIONS.map(({ id }) => id).filter((id) => RULES[id](enclosure, devices));
}

/** Returns the cautions that any enclosure has, each once, in the order of the table and in the household's language. */
export function cautionTexts(ids: readonly string[], language: Language): readonly CautionText[] {
  const wanted = CAUTIONS.filter(({ id }) => ids.includes(id));
  if (language === 'en') return wanted;
  return wanted.map(({ id, source }) => ({
    id,
    text: CAUTIONS_ES[id],
    source: source === PRACTICE ? PRACTICE_ES : source,
  }));
}
