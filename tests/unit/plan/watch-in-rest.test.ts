import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../../src/basics/calendar-day.ts';
import { watchWords } from '../../../src/plan/phrases/watch-words.ts';
import { watchFor } from '../../../src/plan/watch-for.ts';
import { words } from '../../../src/plan/words/words.ts';
import { temperatureBandsOn } from '../../../src/solve/light/enclosure-temperature.ts';
import { planEnclosures } from '../../../src/solve/plan-parts.ts';
import { minimalHousehold, resolveText } from '../../shipped-profiles.ts';

const REST =
  'rest: { kind: brumation, from: 2027-11-06, weeks: 8, ramp: 2 weeks, checked_by_vet: 2027-10-15, targets: { temperature: { day: [8 °C, 12 °C], night: [4 °C, 8 °C] }, humidity: { mean: [50 %, 70 %] } } }';

function careOf(rest: string) {
  const { care, diagnostics } = resolveText(minimalHousehold({ species: 'hermanns-tortoise', enclosure: [rest] }));
  const [enclosure] = care?.enclosures ?? [];
  if (!care || !enclosure) throw new Error(JSON.stringify(diagnostics));
  return { care, enclosure, plan: { enclosures: planEnclosures(care) } };
}

describe('what is normal in a rest', () => {
  const { enclosure, plan } = careOf(REST);

  it('is what the rest asks for, blended in and out as the plan has it', () => {
    for (let day = epochDay('2027-11-06'); day <= epochDay('2027-12-31'); day++) {
      const [watch] = watchFor(plan, isoDateOf(day));
      const { dayC, nightC } = temperatureBandsOn(enclosure, day);
      for (const [told, planned] of [
        [watch?.dayC, dayC],
        [watch?.nightC, nightC],
      ] as const)
        for (const index of [0, 1] as const) expect(told?.[index]).toBeCloseTo(planned?.[index] ?? Number.NaN, 1);
    }
  });

  it('reads as bands between the ramps, with the limits still there', () => {
    const [watch] = watchFor(plan, '2027-12-01');
    if (!watch) throw new Error('nothing to watch');
    const said = watchWords(watch, 'metric', words('en'));
    expect(said.normal).toEqual(['day 8 to 12 °C, night 4 to 8 °C', 'humidity 50 to 70 %']);
    expect(said.act).toMatch(/^act above \d/);
  });

  it('is nothing but limits where the rest gives no targets', () => {
    const bare = careOf(
      'rest: { kind: brumation, from: 2027-11-06, weeks: 8, ramp: 2 weeks, checked_by_vet: 2027-10-15 }',
    );
    expect(watchFor(bare.plan, '2027-12-01')[0]).toMatchObject({ dayC: null, nightC: null, meanHumidity: null });
  });
});
