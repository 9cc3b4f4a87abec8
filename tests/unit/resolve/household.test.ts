import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../../src/basics/calendar-day.ts';
import { minimalHousehold, resolveText } from '../../shipped-profiles.ts';

const resolved = (options: Parameters<typeof minimalHousehold>[0]) => {
  const { care, diagnostics } = resolveText(minimalHousehold(options));
  if (!care) throw new Error(diagnostics.map(({ because }) => because).join('\n'));
  return { care, codes: diagnostics.map(({ code }) => code) };
};

describe('what the file leaves out', () => {
  it('is taken as the design says', () => {
    const { care } = resolved({});
    expect([care.language, care.units, care.paper, care.id]).toEqual(['en', 'metric', 'a4', null]);
    expect(care.plan).toEqual({
      from: epochDay('2027-01-01'),
      days: 365,
      changeOn: null,
      settingsAtMost: 8,
      toleranceMinutes: null,
      atLeastBetweenDays: 1,
      jumpAtMostMinutes: null,
      mistSetsAtMost: 4,
    });
    expect(care.people.map(({ id, shops }) => [id, shops])).toEqual([['keeper', true]]);
    expect(care.shopping).toEqual({ days: [], reserveDays: 14 });
    expect(care.site.roomByMonth).toHaveLength(12);
    expect(care.devices[0]).toMatchObject({
      kind: 'pin-dial',
      clock: 'standard',
      pins: 'down-is-on',
      turnsInDays: 1,
      outlet: 'always',
      now: null,
    });
  });

  it('leaves the number of settings open where only a tolerance is given', () => {
    const plan = (line: string) =>
      resolveText(minimalHousehold().replace('plan: { from: 2027-01-01 }', `plan: { from: 2027-01-01, ${line} }`)).care
        ?.plan;
    expect(plan('tolerance: 15 min')).toMatchObject({ settingsAtMost: null, toleranceMinutes: 15 });
    expect(plan('tolerance: 15 min, settings_at_most: 6')).toMatchObject({ settingsAtMost: 6, toleranceMinutes: 15 });
    expect(plan('settings_at_most: 3')).toMatchObject({ settingsAtMost: 3, toleranceMinutes: null });
  });

  it('takes a room month by month, or the same all year', () => {
    const text = minimalHousehold().replace(
      'humidity: 45 %',
      'humidity: [30 %, 31 %, 32 %, 33 %, 34 %, 35 %, 36 %, 37 %, 38 %, 39 %, 40 %, 41 %]',
    );
    const months = resolveText(text).care?.site.roomByMonth ?? [];
    expect(months[0]).toEqual({ dayC: 21, nightC: 18, humidity: 0.3 });
    expect(months[11]).toEqual({ dayC: 21, nightC: 18, humidity: 0.41 });
  });

  it('gives a pump and a fogger their shares, and notes the times that were taken', () => {
    const { care, codes } = resolved({
      hardware: [
        '{ id: seconds, kind: programmable-timer, entries: 8 }',
        '{ id: pump, kind: mist-pump, outlet: seconds, power: 30 W, flow: 90 mL/min }',
        '{ id: fog, kind: fogger, outlet: seconds, power: 25 W, flow: 300 mL/h, longest_run: 15 min, rest: 5 min }',
      ],
      enclosure: ['mist: pump'],
    });
    expect(care.devices[1]).toMatchObject({
      resolutionSeconds: 60,
      shortestSeconds: 60,
      clock: 'wall',
      keepsTime: false,
      entryForm: 'start-and-length',
    });
    expect(care.devices[2]).toMatchObject({
      flowGPerHour: 5400,
      landsShare: 0.6,
      airborneShare: 0,
      longestRunSeconds: 300,
      restSeconds: 600,
      startStepMinutes: 15,
      lengthStepSeconds: 15,
      nozzles: 1,
    });
    expect(care.devices[3]).toMatchObject({
      landsShare: 0,
      airborneShare: 1,
      longestRunSeconds: 900,
      restSeconds: 300,
    });
    expect(codes.filter((code) => code === 'pump-figures-taken')).toHaveLength(1);
  });
});

describe('absences', () => {
  const visits = (line: string) => {
    const { care, codes } = resolved({
      top: ['people: [{ id: keeper }, { id: sitter }]', `away: [{ from: 2027-03-05, to: 2027-03-10, ${line} }]`],
    });
    return { days: care.away[0]?.visits.map(isoDateOf), codes };
  };
  it('have a visit every day of a named sitter, every so many, on dates, or none', () => {
    expect(visits('sitter: sitter').days).toHaveLength(6);
    expect(visits('sitter: sitter, visits: every 2 days').days).toEqual(['2027-03-05', '2027-03-07', '2027-03-09']);
    expect(visits('sitter: sitter, visits: { dates: [2027-03-08, 2027-03-06] }').days).toEqual([
      '2027-03-06',
      '2027-03-08',
    ]);
    const { care } = resolved({ top: ['away: [{ from: 2027-03-05, to: 2027-03-10 }]'] });
    expect(care.away[0]).toMatchObject({ sitter: null, visits: [] });
  });

  it('leave out a visit outside them, with a warning', () => {
    const { days, codes } = visits('sitter: sitter, visits: { dates: [2027-03-06, 2027-03-12] }');
    expect(days).toEqual(['2027-03-06']);
    expect(codes).toContain('visit-outside-absence');
  });
});

describe('sources of several profiles', () => {
  it('stand once each, and a key that means another work is told apart', () => {
    const own = (cite: string, id: string) =>
      `format: 1\nspecies: ${id}\nname: Own\nscientific: Mea\nactivity: diurnal\nsources: { vet: { cite: "${cite}", read: opened } }\nphotoperiod: { hours: 12 h, source: vet }\nstages: { adult: { feeds: [] } }\n`;
    const second =
      '  - { id: second, species: ./b.yaml, stage: adult, size: { width: 50 cm, depth: 50 cm, height: 90 cm }, open: 30 %, mist: none }\n';
    const { care } = resolveText(minimalHousehold({ species: './a.yaml', enclosure: ['mist: none'] }) + second, {
      './a.yaml': own('One', 'a'),
      './b.yaml': own('Two', 'b'),
    });
    expect(care?.sources).toEqual({ vet: 'One', 'b/vet': 'Two' });
    expect(
      care?.enclosures.map(
        ({ targetRecords }) => targetRecords.find(({ path }) => path === 'photoperiod.hours')?.origin.source,
      ),
    ).toEqual(['vet', 'b/vet']);
  });
});
