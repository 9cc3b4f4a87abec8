import { describe, expect, it } from 'vitest';
import {
  coldSpans,
  dustedSpans,
  frozenSpans,
  hotSpans,
  isHotLamp,
  noMistSpans,
  outsideSpans,
} from '../../../../../src/solve/mist/day/forbidden-starts.ts';

const LIT = { onMinute: 450, minutes: 675 };

describe('hours in which nothing may be misted', () => {
  it('counts halogen, mercury, metal-halide and ceramic lamps as hot', () => {
    expect((['halogen', 'mercury', 'metal-halide', 'ceramic'] as const).every(isHotLamp)).toBe(true);
    expect((['led', 'fluorescent', 'mat', 'cable'] as const).some(isHotLamp)).toBe(false);
  });

  it('leaves a hot lamp 5 min after it comes on and waits 15 min after it goes off', () => {
    expect(hotSpans([{ onMinute: 450, offMinute: 1125 }])).toEqual([{ fromMinute: 455, toMinute: 1140 }]);
    expect(hotSpans([{ onMinute: 450, offMinute: 454 }])).toEqual([]);
  });

  it('takes a hot lamp that is always on as always hot', () => {
    expect(hotSpans([{ onMinute: 0, offMinute: 1440 }])).toEqual([{ fromMinute: 0, toMinute: 1440 }]);
  });

  it('passes midnight where a lamp does', () => {
    expect(hotSpans([{ onMinute: 1200, offMinute: 1560 }])).toEqual([{ fromMinute: 1205, toMinute: 135 }]);
  });

  it('keeps 10 min before a dusted feed and so long after it as the animal asks', () => {
    expect(dustedSpans([630], 60)).toEqual([{ fromMinute: 620, toMinute: 690 }]);
    expect(dustedSpans([630], 0)).toEqual([{ fromMinute: 620, toMinute: 631 }]);
    expect(dustedSpans([5], 30)).toEqual([{ fromMinute: 1435, toMinute: 35 }]);
  });

  it('reads the animal’s hours against the lights', () => {
    const evening = {
      from: { of: 'before_lights_off', minutes: 120 },
      to: { of: 'before_lights_on', minutes: 30 },
    } as const;
    expect(noMistSpans([evening], LIT, 0)).toEqual([{ fromMinute: 1005, toMinute: 420 }]);
    expect(noMistSpans([evening], { onMinute: 450, minutes: 0 }, 0)).toEqual([]);
  });

  it('moves a time of day to the mist timer’s clock', () => {
    expect(noMistSpans([{ from: { minute: 720 }, to: { minute: 780 } }], LIT, 60)).toEqual([
      { fromMinute: 780, toMinute: 840 },
    ]);
  });

  it('forbids the dark where it is colder than 18 °C, or than the animal’s own night where that is lower', () => {
    const sixteen = new Float64Array(1441).fill(16);
    expect(coldSpans(sixteen, LIT, null)).toEqual([{ fromMinute: 1125, toMinute: 450 }]);
    expect(coldSpans(sixteen, LIT, 17)).toEqual([{ fromMinute: 1125, toMinute: 450 }]);
    expect(coldSpans(sixteen, LIT, 10)).toEqual([]);
    expect(coldSpans(new Float64Array(1441).fill(18), LIT, null)).toEqual([]);
  });

  it('forbids water while the air freezes', () => {
    const night = Float64Array.from({ length: 1441 }, (_, minute) => (minute < 300 ? -1 : 5));
    expect(frozenSpans(night)).toEqual([{ fromMinute: 0, toMinute: 300 }]);
    expect(frozenSpans(new Float64Array(1441).fill(5))).toEqual([]);
  });

  it('finds what lies outside the hours of a dial', () => {
    expect(outsideSpans([{ onMinute: 450, offMinute: 1125 }])).toEqual([{ fromMinute: 1125, toMinute: 450 }]);
    expect(outsideSpans([])).toEqual([{ fromMinute: 0, toMinute: 1440 }]);
  });
});
