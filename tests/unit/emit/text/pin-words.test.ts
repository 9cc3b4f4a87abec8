/** Words for the pins are read back as a person would read them: every setting of a dial comes out as it went in. */
import { expect, test } from 'vitest';
import { pinsToChange, pinsToSet } from '../../../../src/emit/text/pin-words.ts';
import { slotsOfDay, slotsOfWindow } from '../../../../src/hardware/pins.ts';
import { words } from '../../../../src/plan/words/words.ts';

const shelf = words('en').shelf;
const dialOf = (stepMinutes: number, pins: 'down-is-on' | 'up-is-on') =>
  ({ stepMinutes, turnsInDays: 1, pins }) as const;
const STEPS = [15, 30];
const SENSES = ['down-is-on', 'up-is-on'] as const;

/** Pins that the text names, first to last, past midnight too. */
function pinsNamed(text: string, stepMinutes: number): readonly number[] {
  const slots = slotsOfDay(stepMinutes);
  const spans = [...text.matchAll(/(\d\d):(\d\d)(?: (?:up to and including|to) (\d\d):(\d\d))?/g)];
  return spans.flatMap(([, hour, minute, lastHour, lastMinute]) => {
    const first = (Number(hour) * 60 + Number(minute)) / stepMinutes;
    const last = lastHour === undefined ? first : (Number(lastHour) * 60 + Number(lastMinute)) / stepMinutes;
    return Array.from({ length: ((last - first + slots) % slots) + 1 }, (_, at) => (first + at) % slots);
  });
}

/** Pins that are down after following the lines on a dial that stands anyhow. */
function downAfter(lines: readonly string[], stepMinutes: number): ReadonlySet<number> | null {
  const all = Array.from({ length: slotsOfDay(stepMinutes) }, (_, slot) => slot);
  const text = lines.join('\n');
  if (/^Push down all/.test(text)) return new Set(all);
  if (/^Lift all/.test(text)) return new Set();
  const [span] = lines;
  const named = pinsNamed(span ?? '', stepMinutes);
  const counted = Number(/: (\d+) pins?\.$/.exec(span ?? '')?.[1]);
  if (counted !== named.length) return null;
  if (/^Push down/.test(text) && lines[1] === shelf.othersUp) return new Set(named);
  if (/^Lift/.test(text) && lines[1] === shelf.othersDown) return new Set(all.filter((slot) => !named.includes(slot)));
  return null;
}

test.each(STEPS.flatMap((step) => SENSES.map((sense) => [step, sense] as const)))(
  'every window of a dial with %i min pins, %s, is set as its words say',
  (step, sense) => {
    const wrong: string[] = [];
    for (let onMinute = 0; onMinute < 1440; onMinute += step) {
      for (let lengthMinutes = 0; lengthMinutes <= 1440; lengthMinutes += step) {
        const slots = slotsOfWindow({ onMinute, lengthMinutes }, step);
        const down = downAfter(pinsToSet(dialOf(step, sense), slots, shelf), step);
        const right = slots.every((slot) => down?.has(slot) === (sense === 'down-is-on'));
        const size = sense === 'down-is-on' ? slots.length : slotsOfDay(step) - slots.length;
        if (!right || down?.size !== size) wrong.push(`${onMinute}+${lengthMinutes}`);
      }
    }
    expect(wrong).toEqual([]);
  },
);

test.each(SENSES)('following a change from any length to any other on 30 min pins ends at the other, %s', (sense) => {
  const dial = dialOf(30, sense);
  const stand = (length: number) => slotsOfWindow({ onMinute: 780 - length, lengthMinutes: 2 * length }, 30);
  for (let before = 0; before <= 720; before += 30) {
    for (let after = 0; after <= 720; after += 30) {
      const text = pinsToChange(dial, stand(before), stand(after), shelf);
      const down = new Set(downPins(stand(before), sense));
      for (const part of text.split('; ')) {
        const pins = pinsNamed(part.slice(part.indexOf(':') + 1), 30);
        for (const pin of pins) part.startsWith('push') ? down.add(pin) : down.delete(pin);
      }
      expect([...down].sort((a, b) => a - b)).toEqual(downPins(stand(after), sense));
    }
  }
});

function downPins(on: readonly number[], sense: 'down-is-on' | 'up-is-on'): readonly number[] {
  return Array.from({ length: 48 }, (_, slot) => slot).filter((slot) => on.includes(slot) === (sense === 'down-is-on'));
}

test('the words of one setting and one change, as a person reads them', () => {
  const dial = dialOf(15, 'down-is-on');
  const winter = slotsOfWindow({ onMinute: 450, lengthMinutes: 660 }, 15);
  const wider = slotsOfWindow({ onMinute: 435, lengthMinutes: 690 }, 15);
  expect(pinsToSet(dial, winter, shelf)).toEqual([
    'Push down the pins from 07:30 up to and including 18:15: 44 pins.',
    'All other pins stay up.',
  ]);
  expect(pinsToChange(dial, wider, winter, shelf)).toBe('lift 2 pins: 07:15 and 18:30');
  expect(pinsToChange(dialOf(15, 'up-is-on'), wider, winter, shelf)).toBe('push down 2 pins: 07:15 and 18:30');
});
