/** Why a pump is not planned; each is said once, with what would do. */
import { spanWords } from '../../basics/span-words.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { MistPump, Timer } from '../../hardware/devices.ts';
import type { Load } from '../../plan/plan.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import type { MistMachine } from './day/day-problem.ts';
import { restsTooLong } from './shared-checks.ts';

/** Returns whether the pump is refused, and reports why. */
export function refusalOf(
  care: Care,
  power: { readonly drives: ReadonlyMap<string, readonly string[]>; readonly loads: readonly Load[] },
  pump: MistPump,
  timer: Timer | null,
  machine: MistMachine | null,
  members: readonly CareEnclosure[],
  log: Log,
): boolean {
  const at = (key: string) => care.placeOf([...pump.path, key]);
  if (!timer) return true;
  const unmisted = care.enclosures.find(({ mist, targets }) => mist === pump.id && targets.misting === 'none');
  if (unmisted) {
    const values = { pump: pump.id, enclosure: unmisted.id, misted: members.map(({ id }) => id).join(', ') };
    log.report('pump-shared-with-unmisted', values, care.placeOf([...unmisted.path, 'mist']));
    return true;
  }
  const load = power.loads.find(({ device }) => device === timer.id);
  if (load && load.ratingW !== null && load.peakW > load.ratingW) return true;
  if (runsBesideLamps(care, power, pump, timer, log)) return true;
  if (!machine) {
    const step = timer.kind === 'pin-dial' ? timer.stepMinutes * 60 : leastRunSeconds(timer);
    const values = { pump: pump.id, timer: timer.id, step: runWords(step), longest: runWords(pump.longestRunSeconds) };
    log.report('pump-step', { ...values, pins: timer.kind === 'pin-dial' ? 'pins' : 'runs' }, at('outlet'));
    return true;
  }
  return restsTooLong(care, pump, log) || tankRefusal(care, pump, machine, log);
}

/** Returns whether a pump hangs on a timer of lamps, and reports it: planned or not, it would run as long as they are on. */
export function runsBesideLamps(
  care: Pick<Care, 'placeOf'>,
  { drives }: { readonly drives: ReadonlyMap<string, readonly string[]> },
  pump: MistPump,
  timer: Timer,
  log: Log,
): boolean {
  const lamps = (drives.get(timer.id) ?? []).filter((name) => name.startsWith('lamp:'));
  if (lamps.length === 0 || timer.kind === 'repeat-cycle-timer') return false;
  const values = { pump: pump.id, timer: timer.id, lamps: lamps.map((name) => name.slice('lamp:'.length)).join(', ') };
  log.report(
    'pump-beside-lamps',
    { ...values, longest: runWords(pump.longestRunSeconds) },
    care.placeOf([...pump.path, 'outlet']),
  );
  return true;
}

function leastRunSeconds(timer: Timer): number {
  if (timer.kind === 'repeat-cycle-timer') return timer.onSeconds[0];
  return timer.kind === 'pin-dial' ? timer.stepMinutes * 60 : Math.max(timer.resolutionSeconds, timer.shortestSeconds);
}

/** A tank that does not hold the shortest mist can give none. */
function tankRefusal(care: Care, { id, path, tank, afterDripG }: MistPump, machine: MistMachine, log: Log): boolean {
  if (!tank) return false;
  const mistG = (machine.pumpFlowGPerHour * machine.shortestSeconds) / 3600 + afterDripG;
  const usableG = tank.holdsG - tank.reserveG;
  if (usableG >= mistG) return false;
  const values = { pump: id, usable: Math.round(usableG), mist: Math.round(mistG), seconds: machine.shortestSeconds };
  log.report('tank-below-one-mist', values, care.placeOf([...path, 'tank']));
  return true;
}

/** Returns seconds as `90 s`, `5 min` or `1 h 30 min`. */
function runWords(seconds: number): string {
  return seconds % 60 === 0 ? spanWords(seconds / 60) : `${seconds} s`;
}
