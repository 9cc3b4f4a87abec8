/** What would do instead of mists that fall short, in words: levers as proposals with what they cost in water. */
import type { Care, CareEnclosure } from '../../../resolve/care.ts';
import type { ExceededLimit } from '../day/day-problem.ts';
import type { MistUnit } from '../mist-unit.ts';
import type { Lever } from './lever.ts';
import type { LeversByWay } from './levers-by-way.ts';
import { percentWords, waterWords } from './water-quantities.ts';

/** Said of a miss so small that no lever is sought. */
export const NEAR_REMEDY = 'leave it: so small a miss is less than a gauge can show';

/** Returns the levers that do, in words; where none does, what may be tried beyond the model. */
export function remedyWords(
  care: Care,
  unit: MistUnit,
  enclosure: CareEnclosure,
  levers: LeversByWay,
  isTooHumid: boolean,
): string {
  const say = levers[isTooHumid ? 'humid' : 'dry'].map((lever) => leverWords(care, unit, enclosure, lever));
  const never = isTooHumid ? ['never mist more'] : [];
  if (say.length > 0) return [say.join('; or '), ...never].join('; ');
  if (isTooHumid)
    return `open more of the mesh${of(unit, enclosure)}, ventilate with a fan on a timer, dehumidify the room; never mist more`;
  if (!unit.machine) return 'cover more of the mesh, keep a deep substrate damp underneath, or moisten the room';
  return 'no covering, nozzle, timer or room that was tried does it: ask less, or think of another enclosure';
}

/** Behind a shared pump the enclosure is named, because a neighbour's mesh may come to mind. */
function of({ members }: MistUnit, { id }: CareEnclosure, preposition = 'of'): string {
  return members.length > 1 ? ` ${preposition} ${id}` : '';
}

function leverWords(care: Care, unit: MistUnit, enclosure: CareEnclosure, lever: Lever): string {
  const { besides } = lever;
  return `${besides === null ? '' : `${besidesWords(besides, of(unit, enclosure, 'in'))}, and `}${singleWords(care, unit, enclosure, lever)}`;
}

function besidesWords(besides: 'shield' | 'dry-floor', where: string): string {
  return besides === 'shield'
    ? `put a guard between spray and hot lamp${where} (hits_lamp: no)`
    : `lay a dry substrate${where} (floor: dry)`;
}

function singleWords(care: Care, unit: MistUnit, enclosure: CareEnclosure, { kind, value, waterG }: Lever): string {
  const aWeek = unit.machine ? ` (${waterWords(waterG * 7, care.units)} a week)` : '';
  const { pump } = unit;
  const where = of(unit, enclosure, 'in');
  switch (kind) {
    case 'cover':
      return `cover the mesh${of(unit, enclosure)} until ${percentWords(value)} is open${aWeek}`;
    case 'open':
      return `open the mesh${of(unit, enclosure)} to ${percentWords(value)}${aWeek}`;
    case 'nozzle':
      return `fit ${value} nozzles${where} instead of ${value - 1}${aWeek}`;
    case 'timer':
      if (unit.means === 'repeat-cycle') return 'use a programmable timer instead: it knows the time of day';
      return timerWords(unit);
    case 'entries':
      return `use a timer with ${value} lines`;
    case 'tank': {
      const days = pump?.tank ? Math.min(7, pump.tank.refillEveryDays) : 7;
      const holds = Math.ceil((value * days + (pump?.tank?.reserveG ?? 0)) / 500) * 500;
      return `use a tank of ${waterWords(holds, care.units)}, or refill it every ${refillDays(unit, value)}`;
    }
    case 'tray': {
      const holds = Math.ceil((value * (enclosure.tray?.emptyEveryDays ?? 1)) / 500) * 500;
      return `use a tray of ${waterWords(holds, care.units)}`;
    }
    case 'damp-floor':
      return `keep a deep substrate damp underneath${where} (floor: damp-below)`;
    case 'dry-floor':
      return `lay a dry substrate${where} (floor: dry)`;
    case 'shield':
      return `put a guard between spray and hot lamp${where} and write hits_lamp: no, so that mists may run while it is on`;
    case 'wetter-room':
      return `moisten the room to ${roomWords(care, value)}`;
    case 'drier-room':
      return `dehumidify or air the room to ${roomWords(care, value)}`;
  }
}

/** A timer that takes single seconds already only wants finer steps of its pump, and short mists. */
function timerWords({ timer, pump }: MistUnit): string {
  const steps = 'start_step: 5 min and length_step: 5 s';
  const isFine = timer?.kind === 'programmable-timer' && timer.resolutionSeconds <= 1 && timer.shortestSeconds <= 15;
  if (isFine && pump) return `write ${steps} for ${pump.id}`;
  return `use a timer that counts single seconds and starts at any minute, with ${steps}`;
}

function refillDays({ pump }: MistUnit, waterG: number): string {
  const usable = pump?.tank ? pump.tank.holdsG - pump.tank.reserveG : 0;
  const days = Math.max(1, Math.floor(usable / Math.max(1, waterG)));
  return days === 1 ? 'day' : `${days} days`;
}

/** The lever is a factor of the room's vapour; told for its extreme month. */
function roomWords(care: Care, factor: number): string {
  const all = care.site.roomByMonth.map(({ humidity }) => humidity);
  const from = factor > 1 ? Math.min(...all) : Math.max(...all);
  return percentWords(Math.min(1, Math.round(from * factor * 100) / 100));
}

/** Returns what would keep a hard limit, in words. */
export function limitRemedy(
  care: Care,
  unit: MistUnit,
  enclosure: CareEnclosure,
  limit: ExceededLimit['limit'],
  levers: LeversByWay,
): string {
  const said = levers.dry.map((lever) => leverWords(care, unit, enclosure, lever));
  if (said.length > 0) return said.join('; or ');
  switch (limit) {
    case 'tank':
      return 'refill more often';
    case 'tray':
      return 'empty the tray more often';
    case 'dry-out':
      return 'open more of the mesh, or ask for a shorter dry-out';
    case 'noise':
      return 'allow the pump in part of those hours';
    case 'no-mist':
      return 'let no_mist leave a start open';
    case 'drink':
      return 'add a dripper, or leave hours in which a mist may run';
    case 'gap':
    case 'count':
    case 'length':
      return 'widen misting to what pump and timer can do';
  }
}
