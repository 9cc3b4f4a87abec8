/** Says that the sheet has changed, never that it is right. `GOLDEN_WRITE=1` writes a sheet that is missing. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.ts';
import { settingsText } from '../../src/emit/text/settings.ts';
import type { Language } from '../../src/plan/plan.ts';

function sheetOf(language: Language): string {
  const text = readFileSync(new URL('shelf.yaml', import.meta.url), 'utf8');
  const { plan, diagnostics } = compile({
    file: 'shelf.yaml',
    text,
    profile: (id) => ({
      file: `profiles/${id}.yaml`,
      text: readFileSync(new URL(`../../profiles/${id}.yaml`, import.meta.url), 'utf8'),
    }),
    profileIds: [],
    earlier: null,
    today: { date: '2027-02-10' },
    version: '1.0.0',
  });
  if (!plan) throw new Error(JSON.stringify(diagnostics));
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
