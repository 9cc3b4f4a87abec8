import { describe, expect, it } from 'vitest';
import { adviceWords } from '../../../src/plan/phrases/advice-words.ts';
import type { Language, MistPlan, Plan } from '../../../src/plan/plan.ts';
import { compiled, HOUSEHOLDS } from '../../examples/every-household.ts';

function planOf(language: Language): { plan: Plan; fern: MistPlan } {
  const household = HOUSEHOLDS.find(({ name }) => name === 'reading-room');
  const plan = household && compiled(household).plan;
  const fern = plan?.misting.find(({ enclosure }) => enclosure === 'fern');
  if (!plan || !fern) throw new Error('no plan of the reading-room');
  const short = {
    code: 'humidity-short',
    message: 'as it was said',
    about: 'targets.humidity.night' as const,
    values: {
      enclosure: 'fern',
      target: 'humidity.night',
      is: '64 %',
      wants: '70 % to 95 %',
      by: '6 points too low',
      months: 'July',
      remedy: 'cover the mesh until 20 % is open',
    },
  };
  const bill = {
    code: 'water-bill',
    message: 'in the words of the run',
    values: { enclosure: 'fern', water: '4 L', tankDays: 1, refillDays: 1 },
  };
  return { plan: { ...plan, language }, fern: { ...fern, advice: [short, bill, { code: 'of-old', message: 'kept' }] } };
}

describe('advice about water on a sheet', () => {
  it('names the enclosure and the target, in sentences', () => {
    const { plan, fern } = planOf('en');
    expect(adviceWords(plan, fern)).toEqual([
      'Humidity by night of Fern comes to 64 % and is to be 70 % to 95 %: 6 points too low (July). Cover the mesh until 20 % is open.',
      'Fern takes 4 L of water a week; the tank lasts 1 day and is filled every day.',
      'Kept.',
    ]);
  });

  it('leaves out in Spanish what is said in English alone, and says so', () => {
    const { plan, fern } = planOf('es');
    expect(adviceWords(plan, fern)).toEqual([
      'Fern gasta 4 L de agua por semana; el depósito dura 1 día y se llena cada día.',
      'Kept.',
      'Hay 1 aviso sobre esta agua: dewdial check lo dice, en inglés.',
    ]);
  });
});
