import { describe, expect, it } from 'vitest';
import { minimalHousehold, PROFILE_IDS, resolvedEnclosure, resolveText } from '../../shipped-profiles.ts';

const codes = (text: string) =>
  resolveText(text)
    .diagnostics.filter(({ weight }) => weight === 'error')
    .map(({ code }) => code);

const resting = (rest: string, more: readonly string[] = [], stage = 'adult') =>
  minimalHousehold({ species: 'hermanns-tortoise', stage, enclosure: ['mist: none', `rest: ${rest}`, ...more] });

const CHECKED =
  '{ kind: brumation, from: 2027-11-01, weeks: 12, ramp: 4 weeks, last_feed: 4 weeks, checked_by_vet: 2027-10-01 }';

describe('rest', () => {
  it('is taken as the keeper writes it', () => {
    const rest = resolvedEnclosure(
      resting(
        CHECKED.replace(
          ', checked',
          ', targets: { photoperiod: { hours: 9 h }, temperature: { day: [4 °C, 8 °C] }, humidity: { mean: [70 %, 80 %] } }, checked',
        ),
      ),
    ).rest;
    expect(rest).toMatchObject({
      kind: 'brumation',
      weeks: 12,
      rampWeeks: 4,
      lastFeedDays: 28,
      temperature: { dayC: [4, 8], nightC: null },
      humidity: { mean: [0.7, 0.8] },
    });
    expect(rest?.photoperiod?.form).toEqual({ kind: 'constant', minutes: 540 });
  });

  it('is never there by default', () => {
    for (const species of PROFILE_IDS)
      expect(
        resolvedEnclosure(minimalHousehold({ species, enclosure: ['nozzles: { hits_lamp: true }'] })).rest,
      ).toBeNull();
  });

  it.each([
    ['without a veterinarian’s check', CHECKED.replace(', checked_by_vet: 2027-10-01', ''), 'rest-without-vet'],
    ['checked on the day it begins', CHECKED.replace('2027-10-01', '2027-11-01'), 'rest-checked-too-late'],
    ['checked after it began', CHECKED.replace('2027-10-01', '2027-12-01'), 'rest-checked-too-late'],
  ])('is refused %s', (_, rest, code) => {
    expect(codes(resting(rest))).toEqual([code]);
  });

  it('is refused for the youngest, also by another name and for part of the weeks', () => {
    expect(codes(resting(CHECKED, [], 'hatchling'))).toEqual(['rest-of-hatchling']);
    expect(
      codes(resting(CHECKED, [], '[{ from: 2027-01-01, stage: hatchling }, { from: 2027-11-02, stage: juvenile }]')),
    ).toEqual(['rest-of-hatchling']);
    expect(
      codes(resting(CHECKED, [], '[{ from: 2027-01-01, stage: hatchling }, { from: 2027-11-01, stage: adult }]')),
    ).toEqual([]);
    const frog = minimalHousehold({ species: 'red-eyed-tree-frog', stage: 'froglet', enclosure: [`rest: ${CHECKED}`] });
    expect(codes(frog)).toEqual(['rest-of-hatchling']);
  });

  it.each(['new', 'quarantine', 'gravid', 'shedding', 'ill'])('is refused while %s, and only while', (state) => {
    const during = (from: string, to: string) =>
      codes(resting(CHECKED, [`states: [{ is: ${state}, from: ${from}, to: ${to} }]`]));
    expect(during('2028-01-23', '2028-02-10')).toEqual(['rest-in-state']);
    expect(during('2028-01-24', '2028-02-10')).toEqual([]);
    expect(during('2027-10-01', '2027-11-01')).toEqual(['rest-in-state']);
    expect(during('2027-10-01', '2027-10-31')).toEqual([]);
  });

  it('takes ramps that fit and four weeks without food where the file says neither', () => {
    const rest = resolvedEnclosure(
      resting('{ kind: cooling, from: 2027-11-01, weeks: 6, checked_by_vet: 2027-10-01 }'),
    ).rest;
    expect([rest?.rampWeeks, rest?.lastFeedDays]).toEqual([3, 28]);
  });
});

describe('stages', () => {
  it('names the nearest stage where one is unknown', () => {
    const { diagnostics } = resolveText(minimalHousehold({ stage: 'adlut' }));
    expect(diagnostics.map(({ code, instead }) => [code, instead])).toContainEqual([
      'stage-unknown',
      'write adult, if that is meant',
    ]);
  });

  it('lists the stages where none is near', () => {
    const { diagnostics } = resolveText(minimalHousehold({ stage: 'gravid' }));
    expect(diagnostics.find(({ code }) => code === 'stage-unknown')?.instead).toBe(
      'write one of hatchling, juvenile, adult',
    );
  });

  it('knows a stage that the file adds', () => {
    const text = minimalHousehold({
      stage: 'senior',
      enclosure: ['targets: { stages: { senior: { like: adult, dusting: [] } } }'],
    });
    const { targets } = resolvedEnclosure(text);
    expect(targets.stages.senior?.feeds).toEqual(targets.stages.adult?.feeds);
    expect(targets.stages.senior?.dusting).toEqual([]);
    expect(targets.mayGoWithoutDays.senior).toBe(7);
  });

  it('takes another’s values by like, what the stage says itself first', () => {
    const { stages } = resolvedEnclosure(
      minimalHousehold({ species: 'leopard-gecko', enclosure: ['mist: none'] }),
    ).targets;
    expect(stages.juvenile?.dusting).toEqual(stages.hatchling?.dusting);
    expect(stages.juvenile?.feeds[0]?.pieces).toBe(6);
    expect(stages.adult?.dusting).not.toEqual(stages.hatchling?.dusting);
  });

  it('records the targets of the stages in use and no others', () => {
    const paths = resolvedEnclosure(minimalHousehold({ stage: 'juvenile' })).targetRecords.map(({ path }) => path);
    expect(paths.filter((path) => path.startsWith('stages.juvenile.'))).not.toEqual([]);
    expect(paths.filter((path) => path.startsWith('stages.adult.'))).toEqual([]);
  });

  it('warns where the first stage begins after the plan', () => {
    const { diagnostics } = resolveText(minimalHousehold({ stage: '[{ from: 2027-03-01, stage: juvenile }]' }));
    expect(diagnostics.map(({ code }) => code)).toContain('stages-begin-late');
  });
});

describe('species', () => {
  it.each([
    ['panther-chamaeleon', 'write panther-chameleon, if that is meant'],
    ['bearded dragon', 'write bearded-dragon, if that is meant'],
    ['unicorn', `write one of ${PROFILE_IDS.join(', ')}, or the path of a profile of your own`],
    ['./mine.yaml', 'write the path from the folder of the household file'],
  ])('asks for a profile of %s', (species, instead) => {
    const { care, diagnostics } = resolveText(minimalHousehold({ species }));
    expect(care).toBeNull();
    expect(diagnostics.map((d) => [d.code, d.instead])).toEqual([['profile-unknown', instead]]);
  });
});
