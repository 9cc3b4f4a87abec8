/** The rules about heat, regulators and kinds of lamps that hold before anything is solved. */

import type { Log } from '../../diagnostics/log.ts';
import type { TimerNode } from '../../hardware/power-tree.ts';
import type { NotPlanned } from '../../plan/plan.ts';
import type { Care, Lamp, LampKind } from '../../resolve/care.ts';
import type { ShelfLamp } from './shelf-lamp.ts';

const STANDS_NO_DIMMING: readonly LampKind[] = ['mercury', 'metal-halide', 'fluorescent', 'led'];
const GIVES_NO_LIGHT: readonly LampKind[] = ['ceramic', 'mat', 'cable'];
const LIGHT_USES = ['daylight', 'plants', 'uvb'] as const;

/** Returns the lamps that must not be planned, with why, and reports every rule that a lamp touches. */
export function checkLamps(
  care: Care,
  lamps: readonly ShelfLamp[],
  timers: readonly TimerNode[],
  log: Log,
): readonly NotPlanned[] {
  for (const shelf of lamps) warnAbout(care, shelf, timers, log);
  return lamps.flatMap((shelf) => {
    const why = refusalOf(care, shelf, timers, log);
    return why === null ? [] : [{ lamp: shelf.id, device: deviceOf(shelf.lamp), why }];
  });
}

function deviceOf(lamp: Lamp): string | null {
  return lamp.outlet === 'auto' || lamp.outlet === 'always' ? null : lamp.outlet;
}

function refusalOf(care: Care, { id, lamp }: ShelfLamp, timers: readonly TimerNode[], log: Log): string | null {
  const at = (key: string) => care.placeOf([...lamp.path, key]);
  if (lamp.uses.includes('heat') && lamp.thermostat === 'none') {
    log.report('heat-without-thermostat', { lamp: id }, at('thermostat'));
    return 'heats without a thermostat';
  }
  if (STANDS_NO_DIMMING.includes(lamp.kind) && (lamp.thermostat === 'dimming' || lamp.thermostat === 'pulse')) {
    log.report('lamp-behind-regulator', { lamp: id, kind: lamp.kind, thermostat: lamp.thermostat }, at('thermostat'));
    return `a ${lamp.kind} lamp behind a ${lamp.thermostat} thermostat`;
  }
  const use = LIGHT_USES.find((each) => lamp.uses.includes(each));
  if (use && GIVES_NO_LIGHT.includes(lamp.kind)) {
    log.report('no-light-from-heater', { lamp: id, kind: lamp.kind, use }, at('for'));
    return `a ${lamp.kind} heater gives no light`;
  }
  if (lamp.outlet === 'auto' && lamp.uses.includes('heat')) {
    log.report('heat-left-to-auto', { lamp: id }, at('outlet'));
    return 'auto never places a heater';
  }
  return timerRefusal(care, { id, lamp }, timers, log);
}

function timerRefusal(
  care: Care,
  { id, lamp }: Pick<ShelfLamp, 'id' | 'lamp'>,
  timers: readonly TimerNode[],
  log: Log,
): string | null {
  const node = timers.find(({ timer }) => timer.id === lamp.outlet);
  if (node?.timer.kind !== 'repeat-cycle-timer') return null;
  if (!lamp.uses.some((use) => use !== 'heat')) return null;
  log.report('lamp-on-repeat-timer', { lamp: id, timer: node.timer.id }, care.placeOf([...lamp.path, 'outlet']));
  return `${node.timer.id} repeats and knows no time of day`;
}

function warnAbout(care: Care, { id, lamp }: ShelfLamp, timers: readonly TimerNode[], log: Log): void {
  const onTimer = timers.some(({ timer }) => timer.id === lamp.outlet);
  if (lamp.uses.includes('heat') && lamp.thermostat !== 'none' && onTimer)
    log.report('heat-on-timer', { lamp: id, timer: lamp.outlet }, care.placeOf([...lamp.path, 'outlet']));
  if (lamp.uses.includes('basking') && lamp.thermostat === 'none')
    log.report('basking-unregulated', { lamp: id }, care.placeOf(lamp.path));
  const use = lamp.uses.find((each) => each !== 'heat');
  if (lamp.outlet === 'always' && use && !GIVES_NO_LIGHT.includes(lamp.kind))
    log.report('lamp-never-off', { lamp: id, use }, care.placeOf([...lamp.path, 'outlet']));
}
