/** The sitter's sheet and the page options, on the built command. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bench } from './built.ts';

const { folder, run, files } = bench();
const TODAY = ['--today', '2027-01-01'];
const AWAY = ['--from', '2027-03-06', '--to', '2027-03-11'];

describe('handover', () => {
  it('writes a sheet and a calendar beside what stands there, and leaves all else', () => {
    expect(run(['compile', 'reading-room.yaml', ...TODAY]).exit).toBe(0);
    writeFileSync(join(folder, 'out/reading-room/note.txt'), 'mine\n');
    const before = files('out/reading-room');
    const { exit, out } = run(['handover', 'reading-room.yaml', ...AWAY, ...TODAY]);
    expect(exit).toBe(0);
    const fresh = ['handover/2027-03-06-2027-03-11.ics', 'handover/2027-03-06-2027-03-11.pdf'];
    expect(files('out/reading-room')).toEqual([...before, ...fresh].sort());
    for (const path of fresh) expect(out).toContain(path);
    expect(readFileSync(join(folder, 'out/reading-room/note.txt'), 'utf8')).toBe('mine\n');
  });

  it('gives the sitter events of the dates alone, and a compile keeps the sheet', () => {
    run(['handover', 'reading-room.yaml', ...AWAY, ...TODAY]);
    const ics = readFileSync(join(folder, 'out/reading-room/handover/2027-03-06-2027-03-11.ics'), 'utf8');
    const days = [...ics.matchAll(/^DTSTART[^:]*:(2027\d{4})/gm)].map(([, day]) => day ?? '');
    expect(days.length).toBeGreaterThan(0);
    for (const day of days) expect(day >= '20270306' && day <= '20270311', day).toBe(true);
    run(['compile', 'reading-room.yaml', ...TODAY]);
    expect(files('out/reading-room')).toContain('handover/2027-03-06-2027-03-11.pdf');
  });

  it('says that the file has no such absence, and writes the sheet as if it had', () => {
    const { exit, said, out } = run([
      'handover',
      'one-gecko.yaml',
      '--from',
      '2027-05-01',
      '--to',
      '2027-06-29',
      ...TODAY,
    ]);
    expect([exit, said.includes('(handover-not-away)')]).toEqual([0, true]);
    expect(out).toContain('handover/2027-05-01-2027-06-29.pdf');
  });

  it.each([
    ['a date that is none', ['--from', '2027-02-30', '--to', '2027-03-11'], '--from 2027-02-30'],
    ['dates the wrong way round', ['--from', '2027-03-11', '--to', '2027-03-06'], 'lies before'],
    ['dates outside the plan', ['--from', '2029-03-11', '--to', '2029-03-12'], 'outside the plan'],
    ['more days than a sheet holds', ['--from', '2027-01-01', '--to', '2027-12-01'], 'at most 92'],
  ])('ends with wrong usage for %s', (_what, dates, words) => {
    const { exit, said } = run(['handover', 'reading-room.yaml', ...dates, ...TODAY]);
    expect([exit, said.includes(words)]).toEqual([2, true]);
  });
});

describe('compile', () => {
  it('leaves the pages out with --no-pdf', () => {
    run(['compile', 'one-gecko.yaml', '--out', 'bare', '--no-pdf', ...TODAY]);
    expect(files('bare/one-gecko').filter((path) => path.endsWith('.pdf'))).toEqual([]);
    expect(existsSync(join(folder, 'bare/one-gecko/plan.json'))).toBe(true);
  });

  it('refuses a page that does not fit, writes the rest and ends with 1', () => {
    const { exit, said } = run(['compile', 'reading-room.yaml', '--out', 'tight', '--weeks', '5', ...TODAY]);
    expect(exit).toBe(1);
    expect(said).toContain('(page-too-long)');
    expect(files('tight/reading-room')).not.toContain('care-calendar.pdf');
    expect(files('tight/reading-room')).toContain('shelf-cards.pdf');
  });

  it.each([
    [['--weeks', '6'], '--weeks 6'],
    [['--month', '2027-13'], '--month 2027-13'],
    [['--month', '2031-01'], 'outside the plan'],
    [['--weeks', '2', '--month', '2027-02'], 'one of the two'],
    [['--font', 'no-such-file.ttf'], 'no such file'],
  ])('ends with wrong usage for %j', (more, words) => {
    const { exit, said } = run(['compile', 'one-gecko.yaml', ...more, ...TODAY]);
    expect([exit, said.includes(words)]).toEqual([2, true]);
  });
});
