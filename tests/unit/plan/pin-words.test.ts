import { describe, expect, it } from 'vitest';
import { pinsToChange, pinsToSet, windowsInWords } from '../../../src/plan/phrases/pin-words.ts';
import type { PinSense } from '../../../src/plan/plan.ts';
import { words } from '../../../src/plan/words/words.ts';

const { shelf } = words('en');

function dial(pins: PinSense, stepMinutes = 15, turnsInDays: 1 | 7 = 1) {
  return { pins, stepMinutes, turnsInDays };
}

function slots(first: number, count: number, inAll = 96): readonly number[] {
  return Array.from({ length: count }, (_, index) => (first + index) % inAll).sort((a, b) => a - b);
}

describe('setting a dial', () => {
  it.each([
    [
      'pins down for on',
      'down-is-on',
      slots(30, 44),
      ['Push down the pins from 07:30 up to and including 18:15: 44 pins.', 'All other pins stay up.'],
    ],
    [
      'pins up for on',
      'up-is-on',
      slots(30, 44),
      ['Lift the pins from 07:30 up to and including 18:15: 44 pins.', 'All other pins are pushed down.'],
    ],
    [
      'past midnight',
      'down-is-on',
      slots(90, 12),
      ['Push down the pins from 22:30 up to and including 01:15: 12 pins.', 'All other pins stay up.'],
    ],
    ['one pin', 'down-is-on', slots(1, 1), ['Push down the pin of 00:15: 1 pin.', 'All other pins stay up.']],
    ['none', 'down-is-on', [], ['Lift all 96 pins.']],
    ['none, pins up for on', 'up-is-on', [], ['Push down all 96 pins.']],
    ['all', 'down-is-on', slots(0, 96), ['Push down all 96 pins.']],
    ['all, pins up for on', 'up-is-on', slots(0, 96), ['Lift all 96 pins.']],
  ] as const)('%s', (_, pins, on, expected) => {
    expect(pinsToSet(dial(pins), on, shelf)).toEqual(expected);
  });

  it('says both windows of a day in the order of the clock', () => {
    expect(pinsToSet(dial('down-is-on', 30), [16, 17, 36, 37], shelf)).toEqual([
      'Push down the pins from 08:00 up to and including 08:30: 2 pins.',
      'Push down the pins from 18:00 up to and including 18:30: 2 pins.',
      'All other pins stay up.',
    ]);
  });

  it('says a 7-day dial once', () => {
    const week = [0, 1, 2, 3, 4, 5, 6].flatMap((day) => [4, 5].map((slot) => day * 12 + slot));
    expect(pinsToSet(dial('down-is-on', 120, 7), week, shelf)).toEqual([
      'On every day of the week: Push down the pins from 08:00 up to and including 10:00: 2 pins.',
      'All other pins stay up.',
    ]);
  });
});

describe('changing a dial', () => {
  it.each([
    ['shorter at both ends', 'down-is-on', slots(29, 46), slots(30, 44), 'lift 2 pins: 07:15 and 18:30'],
    ['shorter, pins up for on', 'up-is-on', slots(29, 46), slots(30, 44), 'push down 2 pins: 07:15 and 18:30'],
    [
      'moved later',
      'down-is-on',
      slots(30, 44),
      slots(32, 44),
      'push down 2 pins: 18:30 to 18:45; lift 2 pins: 07:30 to 07:45',
    ],
    ['one pin more', 'down-is-on', slots(30, 44), slots(30, 45), 'push down 1 pin: 18:30'],
  ] as const)('%s', (_, pins, before, after, expected) => {
    expect(pinsToChange(dial(pins), before, after, shelf)).toBe(expected);
  });

  it.each([
    [96, 'down-is-on'],
    [96, 'up-is-on'],
    [48, 'down-is-on'],
    [48, 'up-is-on'],
  ] as const)('every window of a %i-pin dial, %s, reads back from its sentence', (pins, sense) => {
    for (let first = 0; first < pins; first++)
      for (let count = 1; count < pins; count++) {
        const on = slots(first, count, pins);
        const [line] = pinsToSet(dial(sense, 1440 / pins), on, shelf);
        expect(slotsRead(line ?? '', pins).join()).toBe(on.join());
      }
  });
});

/** Reads the slots back from the sentence, as a person would: from, up to and including, and as many as it says. */
function slotsRead(line: string, pins: number): readonly number[] {
  const times = [...line.matchAll(/(\d{2}):(\d{2})/g)].map(
    (time) => (Number(time[1]) * 60 + Number(time[2])) / (1440 / pins),
  );
  const [from = 0, to = from] = times;
  const count = ((to - from + pins) % pins) + 1;
  return Number(/(\d+) pins?\.$/.exec(line)?.[1]) === count ? slots(from, count, pins) : [];
}

describe('windows in words', () => {
  it.each([
    [[], 'off all day'],
    [[{ on: '00:00', off: '24:00' }], 'on all day'],
    [[{ on: '07:30', off: '18:45' }], 'on from 07:30 to 18:45'],
    [
      [
        { on: '00:00', off: '05:00' },
        { on: '17:00', off: '24:00' },
      ],
      'on from 17:00 to 05:00',
    ],
    [
      [
        { on: '07:00', off: '08:00' },
        { on: '17:00', off: '18:00' },
      ],
      'on from 07:00 to 08:00 and on from 17:00 to 18:00',
    ],
  ])('%j', (windows, expected) => {
    expect(windowsInWords(windows, shelf)).toBe(expected);
  });
});
