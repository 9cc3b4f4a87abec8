import * as fs from 'node:fs';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { publish } from '../../../src/cli/publish.ts';
import { planJson } from '../../../src/emit/json/plan-json.ts';
import { readResults } from '../../../src/serve/published-results.ts';
import { pagePlan } from '../../generated/page-plan.ts';

let out = '';
beforeEach(() => {
  out = mkdtempSync(join(tmpdir(), 'results-'));
});
afterEach(() => rmSync(out, { recursive: true, force: true }));

const products = (feed: string) => [
  { path: 'plan.json', content: planJson(pagePlan()) },
  { path: 'calendar/keeper.ics', content: feed },
  { path: 'settings.txt', content: feed },
  { path: 'notes/private.txt', content: 'mine' },
  { path: 'private.txt', content: 'mine' },
  { path: 'handover/a.pdf', content: '%PDF' },
];

describe('results in a folder', () => {
  it('are what a phone may ask for, and nothing else', () => {
    publish(out, 'home', products('one'));
    const read = readResults(join(out, 'home'), fs);
    expect(read.ok && [...read.results.files.keys()].sort()).toEqual([
      'calendar/keeper.ics',
      'handover/a.pdf',
      'settings.txt',
    ]);
    expect(read.ok && read.results.plan.id).toBe('page');
  });

  it('are those of one compile, also where another turns the link while they are read', () => {
    publish(out, 'home', products('one'));
    let reads = 0;
    const disk: typeof fs = {
      ...fs,
      readFileSync: ((...args: Parameters<typeof fs.readFileSync>) => {
        if (++reads === 4) publish(out, 'home', products('two'));
        return fs.readFileSync(...args);
      }) as typeof fs.readFileSync,
    };
    const read = readResults(join(out, 'home'), disk);
    const texts = read.ok
      ? ['calendar/keeper.ics', 'settings.txt'].map((path) => read.results.files.get(path)?.toString())
      : [];
    expect(texts).toEqual(['two', 'two']);
  });

  it('are none where no plan stands, or another than ours', () => {
    expect(readResults(join(out, 'home'), fs).ok).toBe(false);
    fs.mkdirSync(join(out, 'home'));
    fs.writeFileSync(join(out, 'home', 'plan.json'), '{"format":1');
    expect(readResults(join(out, 'home'), fs)).toEqual({ ok: false, reason: expect.stringContaining('damaged') });
  });
});
