/** Households in a few lines, solved up to their chores. */
import { type EpochDay, epochDay } from '../../src/basics/calendar-day.ts';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { Log } from '../../src/diagnostics/log.ts';
import type { Chore, Feed, MistPlan, Plan } from '../../src/plan/plan.ts';
import type { Care } from '../../src/resolve/care.ts';
import { solveChores } from '../../src/solve/chores/chores.ts';
import { solveFeeding } from '../../src/solve/feeding/feeding.ts';
import { lightsOfDay } from '../../src/solve/feeding/lights-of-day.ts';
import { solveLighting } from '../../src/solve/lighting.ts';
import { resolveText } from '../shipped-profiles.ts';

export interface HouseholdLines {
  /** Lines of `plan:` after the first day. */
  readonly plan?: string;
  readonly people?: string;
  readonly away?: string;
  /** Further lines of the file's top level. */
  readonly more?: string;
  readonly hardware?: string;
  readonly species?: string;
  readonly lamps?: string;
  readonly feeders?: string;
  /** Further lines of the enclosure, indented by four. */
  readonly enclosure?: string;
}

/** Returns a household of one enclosure, `sand`; a corn snake fed once in 14 days where nothing else is said. */
export function householdText(lines: HouseholdLines = {}): string {
  return [
    'format: 1',
    'name: Test shelf',
    'site: { timezone: Europe/Madrid, latitude: 41.65, longitude: -0.89, room: { day: 23 °C, night: 20 °C, humidity: 45 % } }',
    `plan: { from: 2027-01-01, ${lines.plan ?? 'days: 120'} }`,
    `people: [${lines.people ?? '{ id: keeper, feeds_at: "19:30", chores_on: sat }, { id: sitter }'}]`,
    ...(lines.away === undefined ? [] : [`away: [${lines.away}]`]),
    ...(lines.more === undefined ? [] : [lines.more]),
    'hardware:',
    lines.hardware ?? '  - { id: dial, kind: pin-dial, step: 15 min, rating: 1800 W }',
    'enclosures:',
    '  - id: sand',
    '    name: Sand',
    `    species: ${lines.species ?? 'corn-snake'}`,
    '    stage: adult',
    '    size: { width: 90 cm, depth: 45 cm, height: 45 cm }',
    '    open: 20 %',
    '    lamps:',
    lines.lamps ?? '      - { id: day, kind: led, for: [daylight], power: 10 W, outlet: dial }',
    ...(lines.enclosure?.includes('mist:') ? [] : ['    mist: none']),
    `    feeders: [${lines.feeders ?? '{ id: mouse, food: rodents, share: 100 %, shelf_life: 180 days }'}]`,
    ...(lines.enclosure === undefined ? [] : [lines.enclosure]),
    '',
  ].join('\n');
}

export interface SolvedChores {
  readonly care: Care;
  readonly chores: readonly Chore[];
  readonly feeding: readonly Feed[];
  readonly said: readonly Diagnostic[];
  /** The chore of an id; throws where there is none. */
  readonly chore: (id: string) => Chore;
}

/** Returns the chores of a household text; mists are as given, as no air is solved here. */
export function solvedChores(
  text: string,
  {
    misting = [],
    earlier = null,
    today,
  }: { misting?: readonly MistPlan[]; earlier?: Plan | null; today?: string } = {},
): SolvedChores {
  const { care, diagnostics } = resolveText(text);
  if (!care) throw new Error(diagnostics.map(({ because }) => because).join('\n'));
  const day: EpochDay = today === undefined ? care.plan.from : epochDay(today);
  const log = new Log();
  const { lighting, offsets } = solveLighting(care, null, care.plan.from, new Log());
  const { feeding } = solveFeeding(care, lightsOfDay(care, lighting, offsets), null, care.plan.from, new Log());
  const { chores } = solveChores(care, { lighting, misting, feeding, offsets }, earlier, day, log);
  const chore = (id: string): Chore => {
    const found = chores.find((each) => each.id === id);
    if (!found) throw new Error(`no ${id} among ${chores.map((each) => each.id).join(', ')}`);
    return found;
  };
  return { care, chores, feeding, said: log.sorted(), chore };
}
