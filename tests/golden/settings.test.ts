/** Says that the sheet has changed, never that it is right. `GOLDEN_WRITE=1` writes a sheet that is missing. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { settingsText } from '../../src/emit/text/settings.ts';
import type { Language } from '../../src/plan/plan.ts';
import { compiledOnce, planIn } from '../compiled-household.ts';

function sheetOf(language: Language): string {
  const text = readFileSync(new URL('shelf.yaml', import.meta.url), 'utf8');
  const plan = planIn(compiledOnce(text, { file: 'shelf.yaml', today: '2027-02-10' }));
  return settingsText({ ...plan, language });
}

describe('the settings of a shelf', () => {
  it.each(['en', 'es'] as const)('read as they did, in %s', (language) => {
    const file = new URL(`shelf.settings.${language}.txt`, import.meta.url);
    const sheet = sheetOf(language);
    if (process.env.GOLDEN_WRITE && !existsSync(file)) writeFileSync(file, sheet);
    expect(sheet).toBe(readFileSync(file, 'utf8'));
  });
});
