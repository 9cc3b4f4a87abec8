import { describe, expect, it } from 'vitest';
import { drivenNames, type PowerTree, peakWatts, powerTree } from '../../../src/hardware/power-tree.ts';
import { mistPump, pinDial, programmableTimer, repeatTimer } from '../../generated/shelf-care.ts';

const devices = [
  pinDial('dial'),
  repeatTimer('pulse', { outlet: 'dial' }),
  mistPump('pump', { outlet: 'pulse', powerW: 30 }),
  programmableTimer('clock'),
  mistPump('fogger', { outlet: 'clock', powerW: 18, kind: 'fogger' }),
];
const lamps = [
  { id: 'fern/sun', powerW: 75, outlet: 'dial' },
  { id: 'fern/mat', powerW: 15, outlet: 'always' },
  { id: 'fern/grow', powerW: 24, outlet: 'auto' },
];
const tree = powerTree(devices, lamps);

function node(id: string, of: PowerTree = tree) {
  const found = of.timers.find(({ timer }) => timer.id === id);
  if (!found) throw new Error(id);
  return found;
}

describe('the power tree', () => {
  it('lists what is plugged in directly, lamps first', () => {
    expect(drivenNames(node('dial'))).toEqual(['lamp:fern/sun', 'device:pulse']);
  });

  it('adds up what is switched through other timers', () => {
    expect(peakWatts(node('dial'))).toBe(75 + 30);
    expect(peakWatts(node('pulse'))).toBe(30);
    expect(peakWatts(node('clock'))).toBe(18);
  });

  it('names the timers between a timer and the wall', () => {
    expect(node('pulse').supply).toEqual(['dial']);
    expect(node('dial').supply).toEqual([]);
  });

  it('keeps live outlets apart and lamps on auto out', () => {
    expect(tree.live.filter(({ kind }) => kind === 'lamp').map(({ id }) => id)).toEqual(['fern/mat']);
    expect(tree.timers.flatMap(drivenNames)).not.toContain('lamp:fern/grow');
  });

  it('ends where timers hang on each other in a circle', () => {
    const circle = powerTree([pinDial('a', { outlet: 'b' }), pinDial('b', { outlet: 'a' })], []);
    expect(node('a', circle).supply).toEqual(['b', 'a']);
    expect(peakWatts(node('a', circle))).toBe(0);
  });
});
