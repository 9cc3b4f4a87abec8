import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { paintSvg } from '../../../src/emit/paint-svg.ts';
import { dialSheet } from '../../../src/layout/dial-sheet.ts';
import type { Shape } from '../../../src/layout/shapes.ts';
import type { DialPlan, Plan } from '../../../src/plan/plan.ts';
import { compiledOnce } from '../../compiled-household.ts';

const EXAMPLES = new URL('../../../examples/', import.meta.url);

interface ReadRing {
  readonly setting: string;
  readonly on: readonly number[];
  readonly comesOn: readonly number[];
  readonly goesOff: readonly number[];
}

/** Reads the rings of a sheet back from the marks in its SVG text alone. */
function ringsIn(svg: string): readonly ReadRing[] {
  return svg
    .split(/(?=<g[^>]* data-setting=")/)
    .slice(1)
    .map((part) => {
      const pins = [...part.matchAll(/data-pin="(\d+)" data-state="(on|off)" data-moved="([a-z-]+)"/g)].map(
        ([, pin, state, moved]) => ({ pin: Number(pin), state, moved }),
      );
      return {
        setting: /data-setting="([\d-]+)"/.exec(part)?.[1] ?? '',
        on: pins.filter(({ state }) => state === 'on').map(({ pin }) => pin),
        comesOn: pins.filter(({ moved }) => moved === 'comes-on').map(({ pin }) => pin),
        goesOff: pins.filter(({ moved }) => moved === 'goes-off').map(({ pin }) => pin),
      };
    });
}

function plansOf(): readonly (readonly [string, Plan])[] {
  return readdirSync(EXAMPLES)
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => {
      const { plan } = compiledOnce(readFileSync(new URL(file, EXAMPLES), 'utf8'), { file, today: '2027-01-01' });
      if (!plan) throw new Error(`${file} has no plan`);
      return [file, plan] as const;
    });
}

const dials = plansOf().flatMap(([file, plan]) =>
  plan.lighting.flatMap((dial) =>
    (['down-is-on', 'up-is-on'] as const).map((pins) => [file, dial.device, pins, plan, { ...dial, pins }] as const),
  ),
);

function textsOf(shapes: readonly Shape[]): string {
  return shapes
    .map((shape) => (shape.kind === 'group' ? textsOf(shape.shapes) : shape.kind === 'text' ? shape.text : ''))
    .join('\n');
}

function slotsOfDay({ slots }: DialPlan['settings'][number], stepMinutes: number): readonly number[] {
  return slots.filter((slot) => slot < 1440 / stepMinutes);
}

describe.each(dials)('%s, %s, %s', (_file, _device, pins, plan, dial) => {
  const rings = ringsIn(paintSvg(dialSheet(plan, dial)));

  it('decodes to the settings of the plan', () => {
    expect(rings.map(({ setting }) => setting)).toEqual(dial.settings.map(({ from }) => from));
    expect(rings.map(({ on }) => on)).toEqual(dial.settings.map((setting) => slotsOfDay(setting, dial.stepMinutes)));
  });

  it('marks what moves against the setting before, and nothing on the first', () => {
    const daily = dial.settings.map((setting) => slotsOfDay(setting, dial.stepMinutes));
    const differs = (from: readonly number[], to: readonly number[]) => to.filter((slot) => !from.includes(slot));
    expect(rings.map(({ comesOn }) => comesOn)).toEqual(
      daily.map((slots, index) => (index === 0 ? [] : differs(daily[index - 1] ?? [], slots))),
    );
    expect(rings.map(({ goesOff }) => goesOff)).toEqual(
      daily.map((slots, index) => (index === 0 ? [] : differs(slots, daily[index - 1] ?? []))),
    );
  });

  it('says in words which way a pin switches on', () => {
    const said = textsOf(dialSheet(plan, dial).shapes);
    expect(said.includes('leaves off')).toBe(pins === 'up-is-on');
    expect(said.includes('A pin pressed down switches on')).toBe(pins === 'down-is-on');
  });
});

it('notices one pin that is wrong', () => {
  const [first] = dials;
  if (!first) throw new Error('no example has a dial');
  const [, , , plan, dial] = first;
  const svg = paintSvg(dialSheet(plan, dial)).replace('data-state="on"', 'data-state="off"');
  expect(ringsIn(svg)[0]?.on).not.toEqual(dial.settings[0]?.slots);
});
