import { describe, expect, it } from 'vitest';
import { planJson } from '../../../src/emit/json/plan-json.ts';
import { planFault } from '../../../src/plan/plan-shape.ts';
import { readPlan } from '../../../src/plan/read-plan.ts';
import { compiledHousehold, planIn } from '../../compiled-household.ts';
import { generateHousehold } from '../../property/household-generator.ts';

const TEXT = planJson(planIn(compiledHousehold(generateHousehold(4, { enclosures: 2, days: 30 }))));

type Path = readonly (string | number)[];

function changed(path: Path, value: unknown): unknown {
  const root: unknown = JSON.parse(TEXT);
  let here = root as Record<string | number, unknown>;
  for (const key of path.slice(0, -1)) here = here[key] as Record<string | number, unknown>;
  const last = path.at(-1) ?? '';
  if (value === undefined) delete here[last];
  else here[last] = value;
  return root;
}

describe('the shape of a plan.json', () => {
  it('is that of every plan that this program writes', () => {
    expect(planFault(JSON.parse(TEXT))).toBeNull();
    expect(readPlan(TEXT)).toMatchObject({ ok: true });
  });

  it.each<[Path, unknown, string]>([
    [['made'], '2027-02-30', 'made is no date'],
    [['lighting', 0, 'settings', 0, 'from'], undefined, 'lighting[0].settings[0].from is missing'],
    [['lighting', 0, 'settings', 0, 'windows'], {}, 'lighting[0].settings[0].windows is no list'],
    [['lighting', 0], null, 'lighting[0] is no map'],
    [['lighting', 0, 'turnsInDays'], 3, 'lighting[0].turnsInDays is none of 1, 7'],
    [['feeding', 1, 'time'], '24:01', 'feeding[1].time is no time of day'],
    [['feeding', 1, 'count'], 'five', 'feeding[1].count is no number'],
    [['events', 0, 'start'], '2027-13-01T08:00', 'events[0].start is no date'],
    [['digests', 'told'], 7, 'digests.told is no text'],
    [['enclosures', 0, 'sizeCm'], [1, 2], 'enclosures[0].sizeCm has 2 items'],
    [['site', 'offsets'], [], 'site.offsets has 0 items'],
    [['enclosures', 0, 'targets', 0, 'value'], undefined, 'enclosures[0].targets[0].value is missing'],
    [['revision'], 1.5, 'revision is no whole number'],
    [['previous'], {}, 'previous.format is missing'],
    [['to'], '2199-01-01', 'from and to span'],
    [['lighting', 0, 'targetMinutes'], [1], 'have 1 days of 30'],
  ])('is refused with %j as %j', (path, value, fault) => {
    expect(planFault(changed(path, value))).toContain(fault);
    const read = readPlan(JSON.stringify(changed(path, value)));
    expect(read.ok ? '' : read.reason).toContain(`it is damaged: `);
  });

  it.each([true, false])(
    'holds that dates of events have times of day where they do not last all day (%s)',
    (allDay) => {
      const { events } = JSON.parse(TEXT) as { readonly events: readonly { readonly allDay: boolean }[] };
      const at = events.findIndex((event) => event.allDay === allDay);
      expect(at).toBeGreaterThanOrEqual(0);
      const [other, fault] = allDay ? ['2027-01-04T08:00', 'is no date'] : ['2027-01-04', 'is no moment'];
      for (const key of ['start', 'until'])
        expect(planFault(changed(['events', at, key], other))).toContain(`.${key} ${fault}`);
      expect(planFault(changed(['events', at, 'exdates'], [other]))).toContain(`.exdates[0] ${fault}`);
    },
  );

  it('lets be what a later version may write besides', () => {
    expect(planFault(changed(['later'], { of: 'another version' }))).toBeNull();
  });
});
