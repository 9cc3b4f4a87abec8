import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { changesText } from '../../../src/emit/text/changes.ts';
import { changeSheet, isEmptySheet } from '../../../src/plan/change-sheet.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { standingOn } from '../../../src/plan/timer-changes.ts';
import { compiledHousehold, planIn } from '../../compiled-household.ts';

const TEXT = readFileSync(new URL('../../golden/replanned.yaml', import.meta.url), 'utf8');
const ON = '2027-01-20';

function planOf(text: string, today: string, earlier: Plan | null = null): Plan {
  return planIn(compiledHousehold(text, { file: 'replanned.yaml', today, earlier }));
}

const first = planOf(TEXT, '2027-01-01');

/** The plan after an edit on 20 January, made against the first. */
function edited(...edits: readonly (readonly [from: string, to: string])[]): Plan {
  const text = edits.reduce((now, [from, to]) => {
    if (!now.includes(from)) throw new Error(`nothing to edit: ${from}`);
    return now.replace(from, to);
  }, TEXT);
  return planOf(text, ON, first);
}

const sheetOf = (after: Plan) => changeSheet(first, after, ON);

describe('a change sheet', () => {
  it('of a plan against itself is empty, and says what stays', () => {
    const sheet = sheetOf(first);
    expect(isEmptySheet(sheet)).toBe(true);
    expect(sheet.stays).toEqual([
      { what: 'dial', name: 'upper' },
      { what: 'dial', name: 'lower' },
      { what: 'feeds', name: 'Fern' },
      { what: 'feeds', name: 'Moss' },
      { what: 'chores', name: String(first.chores.filter(({ kind }) => !/re-pin|change-sheet/.test(kind)).length) },
    ]);
  });

  it('without an earlier plan has everything as new', () => {
    const sheet = changeSheet(null, first, ON);
    expect(sheet.since).toBeNull();
    expect(sheet.dials.map(({ device, kind }) => [device, kind])).toEqual([
      ['upper', 'new'],
      ['lower', 'new'],
    ]);
  });

  describe('after midday is moved an hour forward', () => {
    const after = edited(['midday: "13:00"', 'midday: "12:00"']);
    const sheet = sheetOf(after);
    const change = sheet.dials.find(({ device }) => device === 'upper');

    it('has the window about the new midday, and leaves every other dial', () => {
      expect(sheet.dials.map(({ device }) => device)).toEqual(['upper']);
      expect(sheet.stays).toContainEqual({ what: 'dial', name: 'lower' });
      const middle = (slots: readonly number[] = []) => (((slots[0] ?? 0) + (slots.at(-1) ?? 0) + 1) * 15) / 2;
      const before = standingOn(first.lighting[0]?.settings ?? [], ON);
      expect(Math.abs(middle(before?.slots) - 13 * 60)).toBeLessThanOrEqual(7.5);
      expect(Math.abs(middle(change?.after?.slots) - 12 * 60)).toBeLessThanOrEqual(7.5);
    });

    it('leads from the slots before to the slots after, whatever changes', () => {
      const before = new Set(standingOn(first.lighting[0]?.settings ?? [], ON)?.slots ?? []);
      for (const slot of change?.goesOff ?? []) before.delete(slot);
      for (const slot of change?.comesOn ?? []) before.add(slot);
      expect([...before].sort((a, b) => a - b)).toEqual(change?.after?.slots);
    });

    it('names the later dates on which something else is to be set than before', () => {
      const own = after.lighting[0]?.settings.filter(({ from }) => from > ON).map(({ from }) => from);
      expect(change?.laterDates).toEqual(own);
    });

    it('is kept against the revision of the earlier day', () => {
      expect(after.previous?.revision).toBe(1);
      expect(after.revision).toBe(2);
      expect(changesText(after)).toContain('1 January 2027');
    });
  });

  it('names a lamp that hangs elsewhere, and the dials that it leaves and joins', () => {
    const sheet = sheetOf(edited(['power: 10 W, outlet: lower', 'power: 10 W, outlet: spare']));
    expect(sheet.moved).toEqual([{ what: 'lamp:moss/bar', from: 'lower', to: 'spare' }]);
    expect(sheet.dials.map(({ device, kind }) => [device, kind])).toEqual([
      ['lower', 'gone'],
      ['spare', 'new'],
    ]);
  });

  it('has a dial of another kind set from scratch', () => {
    const sheet = sheetOf(
      edited([
        'step: 30 min, outlets: 2, rating: 1800 W, pins: up-is-on',
        'step: 15 min, outlets: 2, rating: 1800 W, pins: up-is-on',
      ]),
    );
    expect(sheet.dials.map(({ device, kind }) => [device, kind])).toEqual([['lower', 'new']]);
  });

  it('counts the feeds that are other than before, and shows the first of them', () => {
    const after = edited(['count: 5', 'count: 4']);
    const [change] = sheetOf(after).feeds;
    const coming = after.feeding.filter(({ enclosure, date }) => enclosure === 'fern' && date >= ON);
    expect(change).toMatchObject({ enclosure: 'fern', added: 0, removed: 0, altered: coming.length });
    expect([change?.first.before?.count, change?.first.after?.count]).toEqual([5, 4]);
    expect(change?.first.after?.date).toBe(coming[0]?.date);
    expect(sheetOf(after).stays).toContainEqual({ what: 'feeds', name: 'Moss' });
  });

  it('names a chore that is new, one that is gone, one on other dates', () => {
    const renamed = sheetOf(edited(['id: wipe, title: Wipe the glass', 'id: dust, title: Dust the top'])).chores;
    expect(renamed.map(({ id, kind }) => [id, kind])).toEqual(
      expect.arrayContaining([
        ['moss/dust', 'new'],
        ['moss/wipe', 'gone'],
      ]),
    );
    const often = sheetOf(edited(['every: 2 weeks', 'every: 1 week'])).chores;
    expect(often.filter(({ id }) => id === 'moss/wipe').map(({ kind }) => kind)).toEqual(['changed']);
  });

  it('tells a longer plan as such, not its further feeds', () => {
    const sheet = sheetOf(edited(['days: 365', 'days: 400']));
    expect(sheet.reaches).toEqual({ before: '2027-12-31', after: '2028-02-04' });
    expect(sheet.feeds).toEqual([]);
  });

  it('names a chore that stays on its days under another title', () => {
    const sheet = sheetOf(edited(['title: Wipe the glass', 'title: Wipe the front']));
    expect(sheet.chores.map(({ title, kind }) => [title, kind])).toEqual([['Wipe the front', 'reworded']]);
    expect(isEmptySheet(sheet)).toBe(false);
  });

  it('compares with what stands on a dial whose plan has ended', () => {
    const ended = {
      ...first,
      to: '2027-01-10',
      lighting: first.lighting.map((dial) => ({
        ...dial,
        settings: dial.settings.slice(0, 1).map((setting) => ({ ...setting, to: '2027-01-10' })),
      })),
    };
    expect(
      changeSheet(ended, first, ON).dials.every(
        ({ comesOn, goesOff, kind }) => kind === 'changed' && comesOn.length + goesOff.length === 0,
      ),
    ).toBe(true);
  });

  it('says when a dial is to show another clock', () => {
    const other = { ...first, lighting: first.lighting.map((dial) => ({ ...dial, clock: 'wall' as const })) };
    expect(changeSheet(first, other, ON).dials.map(({ clock }) => clock)).toEqual([
      { from: 'standard', to: 'wall' },
      { from: 'standard', to: 'wall' },
    ]);
  });

  it('tells a timer of several enclosures once, and a repeat-cycle timer by what it repeats', () => {
    const set = (onSeconds: number) => ({
      from: '2027-01-01',
      to: '2027-12-31',
      entries: [{ at: '08:00', seconds: onSeconds }],
      interval: { onSeconds, offSeconds: 3600, poweredBy: null },
    });
    const misted = (onSeconds: number) => ({
      ...first,
      misting: ['fern', 'moss'].map((enclosure) => ({
        enclosure,
        pump: 'pump',
        device: 'pulse',
        clock: 'standard',
        sets: [set(onSeconds)],
        advice: [],
      })),
    });
    const sheet = changeSheet(misted(30) as unknown as Plan, misted(45) as unknown as Plan, ON);
    expect(sheet.mists).toHaveLength(1);
    expect(sheet.mists[0]?.enclosures).toEqual(['fern', 'moss']);
    expect(sheet.mists[0]?.interval).toEqual({ before: set(30).interval, after: set(45).interval });
    expect([sheet.mists[0]?.add, sheet.mists[0]?.alter]).toEqual([[], []]);
  });

  it('compares mists by their time', () => {
    const [plan] = [structuredClone(first) as { misting: unknown[] } & Plan];
    const set = (entries: readonly { at: string; seconds: number }[]) => ({
      enclosure: 'fern',
      pump: 'pump',
      device: 'timer',
      clock: 'wall',
      sets: [{ from: '2027-01-01', to: '2027-12-31', entries }],
      advice: [],
    });
    const before = {
      ...plan,
      misting: [
        set([
          { at: '08:00', seconds: 60 },
          { at: '12:00', seconds: 30 },
          { at: '18:00', seconds: 60 },
        ]),
      ],
    };
    const after = {
      ...plan,
      misting: [
        set([
          { at: '08:00', seconds: 90 },
          { at: '13:00', seconds: 30 },
          { at: '18:00', seconds: 60 },
        ]),
      ],
    };
    const [change] = changeSheet(before as unknown as Plan, after as unknown as Plan, ON).mists;
    expect(change).toEqual({
      enclosures: ['fern'],
      device: 'timer',
      clock: null,
      interval: null,
      add: [{ at: '13:00', seconds: 30 }],
      remove: [{ at: '12:00', seconds: 30 }],
      alter: [{ at: '08:00', fromSeconds: 60, toSeconds: 90 }],
      keep: [{ at: '18:00', seconds: 60 }],
      laterDates: [],
      droppedDates: [],
    });
  });
});
