/** Pumps that the file plugs into a timer of lamps: they are never planned, and their plugs must stay out of it. */
import type { DialPlan, Plan } from './plan.ts';

const PUMPS = ['mist-pump', 'fogger'];

/** Returns the ids of the pumps that hang directly on a dial with lamps; empty where there are none. */
export function pumpsBesideLamps(
  plan: Pick<Plan, 'hardware'>,
  dial: Pick<DialPlan, 'drives' | 'lamps'>,
): readonly string[] {
  if (dial.lamps.length === 0) return [];
  return dial.drives.flatMap((name) => {
    const device = plan.hardware.find(({ id }) => name === `device:${id}`);
    return device && PUMPS.includes(device.kind) ? [device.id] : [];
  });
}
