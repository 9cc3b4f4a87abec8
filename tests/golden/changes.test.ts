/** Says that a change sheet has changed, never that it is right. `GOLDEN_WRITE=1` writes a sheet that is missing. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { changesText } from '../../src/emit/text/changes.ts';
import type { Language, Plan } from '../../src/plan/plan.ts';
import { compiledHousehold, planIn } from '../compiled-household.ts';

const TEXT = readFileSync(new URL('replanned.yaml', import.meta.url), 'utf8');

function planOf(text: string, today: string, earlier: Plan | null): Plan {
  return planIn(compiledHousehold(text, { file: 'replanned.yaml', today, earlier }));
}

describe('the change sheet of an edited household', () => {
  const edited = TEXT.replace('midday: "13:00"', 'midday: "12:00"')
    .replace('power: 10 W, outlet: lower', 'power: 10 W, outlet: spare')
    .replace('count: 5', 'count: 4')
    .replace('every: 2 weeks', 'every: 1 week');
  const inLanguage = (text: string, language: Language): string =>
    text.replace('name: Replanned', `name: Replanned\nlanguage: ${language}`);

  it.each(['en', 'es'] as const)('reads as it did, in %s', (language: Language) => {
    const file = new URL(`replanned.changes.${language}.txt`, import.meta.url);
    const before = planOf(inLanguage(TEXT, language), '2027-01-01', null);
    const sheet = changesText(planOf(inLanguage(edited, language), '2027-01-20', before));
    if (process.env.GOLDEN_WRITE && !existsSync(file)) writeFileSync(file, sheet);
    expect(sheet).toBe(readFileSync(file, 'utf8'));
  });
});
