/**
 * What real calendar programs read is the plan's own list, occurrence by occurrence. python-icalendar with recurring-ical-events and
 * libical read every household, one process each; khal and calcurse, which start once a household, some of them.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { grouped } from '../../../src/basics/grouped.ts';
import { type Household, rowsOf, SLOW_HOUSEHOLDS, workFolder, writeHouseholds } from './households.ts';

let households: readonly Household[] = [];
/** Some generated households, and every example. */
const few = (): readonly Household[] =>
  households.filter(({ household }) => household.endsWith('.yaml') || Number(household) < SLOW_HOUSEHOLDS);

beforeAll(() => {
  households = writeHouseholds();
});

function run(program: string, args: readonly string[], timezone = 'UTC'): string {
  const env = { ...process.env, TZ: timezone, LANG: 'C.UTF-8', LC_ALL: 'C.UTF-8' };
  return execFileSync(program, args, { encoding: 'utf8', env, maxBuffer: 2 ** 30 });
}

/** Counts occurrences as it compares them, and says so. */
function compareAll(
  client: string,
  list: readonly Household[],
  read: (household: Household, index: number) => readonly string[],
  own: (household: Household) => readonly string[],
): void {
  let compared = 0;
  for (const [index, household] of list.entries()) {
    const expected = own(household);
    expect(read(household, index), `${client} ${household.name} ${household.zone}`).toEqual(expected);
    compared += expected.length;
  }
  console.info(`${client}: ${list.length} calendars, ${compared} occurrences`);
  expect(compared).toBeGreaterThan(1000);
}

describe('calendar programs', () => {
  it.each(['read_icalendar.py', 'read_libical.py'])('%s reads every occurrence of every household', (script) => {
    const path = fileURLToPath(new URL(script, import.meta.url));
    const lines = run('/usr/bin/python3', [path, ...households.map(({ file }) => file)])
      .trim()
      .split('\n');
    const rows = lines.map((line): readonly string[] =>
      JSON.parse(line)
        .map((row: readonly string[]) => row.join(' '))
        .sort(),
    );
    compareAll(
      script,
      households,
      (_household, index) => rows[index] ?? [],
      ({ own }) => rowsOf(own),
    );
  });

  it('khal reads every occurrence', () => {
    const together = grouped(few(), ({ household }) => household);
    const firsts = few().filter((one) => together.get(one.household)?.[0] === one);
    const allOf = ({ household }: Household): readonly Household[] => together.get(household) ?? [];
    compareAll(
      'khal',
      firsts,
      (one) => khal(allOf(one)),
      (one) => rowsOf(allOf(one).flatMap(({ own }) => own)),
    );
  });

  it('calcurse reads every occurrence', () => {
    compareAll('calcurse', few(), calcurse, dayByDay);
  });
});

/** Some programs show what lasts several days on each of them. */
function dayByDay({ own, days }: Household): readonly string[] {
  return own
    .flatMap(({ uid, start, title }) =>
      Array.from(
        { length: days.get(uid) ?? 1 },
        (_, later) => `${later === 0 ? start : daysLater(start, later)} ${title}`,
      ),
    )
    .sort();
}

function daysLater(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

/** Imports the calendars of a household into a folder of its own and lists them, in the zone of the household. */
function khal(both: readonly Household[]): readonly string[] {
  const [{ name, zone, from, to } = lacking()] = both;
  const folder = join(workFolder, `khal-${name}`);
  mkdirSync(join(folder, 'care'), { recursive: true });
  const config = join(folder, 'config');
  const formats = ['longdateformat', 'dateformat'].map((key) => `${key} = %Y-%m-%d`);
  const times = ['longdatetimeformat', 'datetimeformat'].map((key) => `${key} = %Y-%m-%dT%H:%M`);
  writeFileSync(
    config,
    [
      `[calendars]\n[[care]]\npath = ${join(folder, 'care')}\n[sqlite]\npath = ${join(folder, 'khal.db')}\n[default]\ndefault_calendar = care`,
      `[locale]\nlocal_timezone = ${zone}\ndefault_timezone = ${zone}\ntimeformat = %H:%M`,
      ...formats,
      ...times,
      '',
    ].join('\n'),
  );
  run('khal', ['-c', config, 'import', '--batch', '-a', 'care', ...both.map(({ file }) => file)], zone);
  const format = '{start-long} {uid} {title}';
  const listed = run('khal', ['-c', config, 'list', '--format', format, '--day-format', '', from, to], zone);
  // a day of many is listed again on each of its days
  return [...new Set(listed.split('\n').filter((line) => /^\d{4}-/.test(line)))].sort();
}

/** Asks for two days more: it counts the days of the range by the hour, and loses one where the clocks go forward between. */
function calcurse({ name, zone, file, from, to }: Household): readonly string[] {
  const folder = join(workFolder, `calcurse-${name}`);
  mkdirSync(folder);
  run('calcurse', ['-q', '-D', folder, '-i', file], zone);
  const formats = ['apt', 'recur-apt'].flatMap((kind) => [`--format-${kind}`, 'T%S %m\\n']);
  const days = ['event', 'recur-event'].flatMap((kind) => [`--format-${kind}`, 'D %m\\n']);
  const range = ['--input-datefmt', '4', '--output-datefmt', '%Y-%m-%d', '--from', from, '--to', daysLater(to, 2)];
  const listed = run('calcurse', ['-q', '-D', folder, '-Q', ...range, ...formats, ...days], zone);
  return datedLines(listed);
}

/** Puts the date of the line above before each entry: `T08:15 title` or `D title`. */
function datedLines(listed: string): readonly string[] {
  let date = '';
  const rows: string[] = [];
  for (const line of listed.split('\n')) {
    const heading = /^(\d{4}-\d{2}-\d{2}):$/.exec(line);
    if (heading) date = heading[1] ?? '';
    else if (line.startsWith('T')) rows.push(`${date}${line}`);
    else if (line.startsWith('D ')) rows.push(`${date} ${line.slice(2)}`);
  }
  return rows.sort();
}

function lacking(): never {
  throw new Error('no household');
}
