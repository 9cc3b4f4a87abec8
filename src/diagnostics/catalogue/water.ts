/** What there is to say about mists, air and water. */
import { wording } from '../diagnostic.ts';

export const water = {
  'pump-without-timer': wording<{ pump: string; outlet: string }>(
    'cannot be done',
    'refusal',
    ({ pump, outlet }) => `${pump} hangs on ${outlet}, which is no timer; its enclosures are planned by hand`,
    () => 'put a programmable timer between, and name it as the outlet of the pump',
  ),
  'pump-shared-with-unmisted': wording<{ pump: string; enclosure: string; misted: string }>(
    'cannot be done',
    'refusal',
    ({ pump, enclosure, misted }) =>
      `${pump} sprays ${enclosure} too, which is not to be misted, whenever it sprays ${misted}`,
    ({ enclosure }) => `take its nozzle out of ${enclosure} and write mist: none there`,
  ),
  'pump-beside-lamps': wording<{ pump: string; timer: string; lamps: string; longest: string }>(
    'cannot be done',
    'refusal',
    ({ pump, timer, lamps, longest }) =>
      `${pump} would run as long as ${lamps} on ${timer}; the pump may run ${longest} at most`,
    () => 'give the pump a programmable timer of its own',
  ),
  'pump-step': wording<{ pump: string; timer: string; step: string; longest: string; pins: 'pins' | 'runs' }>(
    'cannot be done',
    'refusal',
    ({ pump, timer, step, longest, pins }) =>
      `${timer} has ${pins} of ${step}; ${pump} may run ${longest} at most; its enclosures are planned by hand`,
    () => "put a programmable timer that counts seconds between them, and name it as the pump's outlet",
  ),
  'tank-below-one-mist': wording<{ pump: string; usable: number; mist: number; seconds: number }>(
    'cannot be done',
    'refusal',
    ({ pump, usable, mist, seconds }) =>
      `the tank of ${pump} gives ${usable} mL above its reserve, and one mist of ${seconds} s takes ${mist} mL`,
    () => 'give it a larger tank',
  ),
  'dripper-bowl': wording<{ dripper: string; runs: number; holds: number; days: number; most: number }>(
    'not safe',
    'refusal',
    ({ dripper, runs, holds, days }) =>
      `${dripper} gives ${runs} mL in the ${days === 1 ? 'day' : `${days} days`} between two emptyings, and its bowl holds ${holds} mL`,
    ({ most }) => `let it run ${most} min a day at most, empty the bowl more often, or give it a larger one`,
  ),
  'dripper-step': wording<{ dripper: string; timer: string; step: string; wanted: string }>(
    'cannot be done',
    'refusal',
    ({ dripper, timer, step, wanted }) =>
      `${timer} switches in steps of ${step}, and ${dripper} is to run ${wanted} at a time`,
    () => 'let it run a whole step, or put it on a finer timer',
  ),
  'dripper-cycle': wording<{ dripper: string; timer: string; on: string; off: string }>(
    'note',
    'note',
    ({ dripper, timer, on, off }) => `set ${timer} to ${on} on and ${off} off for ${dripper}`,
    () => '',
  ),
  'dripper-cycle-range': wording<{ dripper: string; timer: string; on: string; off: string }>(
    'cannot be done',
    'refusal',
    ({ dripper, timer, on, off }) => `${timer} cannot be set to ${on} on and ${off} off, which ${dripper} asks for`,
    () => 'choose lengths that the timer has, or another timer',
  ),
};
