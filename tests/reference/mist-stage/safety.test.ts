/** What is not negotiable, in whole plans in which the rhythm would have a mist just there. */
import { describe, expect, it } from 'vitest';
import { minuteOf } from '../../../src/basics/minute-of-day.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { compiledHousehold, planIn } from '../../compiled-household.ts';

/** A cadence alone, at dawn: the first mist on the first allowed start, the next 2 h later. */
function planOf(lamps: string, { feedsAt = '19:00', night = 18, hitsLamp = 'yes' } = {}): Plan {
  const text = `format: 1
name: Dawn
site: { timezone: Etc/UTC, latitude: 41.65, longitude: -0.89, room: { day: 21 °C, night: ${night} °C, humidity: 45 % } }
plan: { from: 2027-01-01, days: 28 }
people: [{ id: keeper, feeds_at: "${feedsAt}" }]
hardware:
  - { id: dial, kind: pin-dial, step: 15 min, outlets: 4, rating: 1800 W }
  - { id: mist-timer, kind: programmable-timer, entries: 12, resolution: 1 s, shortest: 5 s, clock: standard, keeps_time: yes, rating: 1000 W }
  - { id: pump, kind: mist-pump, outlet: mist-timer, power: 30 W, flow: 90 mL/min, longest_run: 5 min, rest: 10 min }
enclosures:
  - id: home
    species: dawn.yaml
    stage: adult
    size: { width: 60 cm, depth: 60 cm, height: 120 cm }
    open: 33 %
    lamps: [${lamps}]
    nozzles: { hits_lamp: ${hitsLamp} }
    mist: pump
    supplements: [{ id: calcium, contains: [] }]
    feeders: [{ id: cricket, share: 100 %, dust: true, shelf_life: 10 days }]
`;
  return planIn(compiledHousehold(text, { own: { 'dawn.yaml': PROFILE } }));
}

const PROFILE = `format: 1
species: dawn
name: Dawn animal
scientific: Animal aurorae
activity: diurnal
photoperiod: { hours: 12 h, source: ours }
day: { midday: "13:00", source: ours }
temperature: { day: [22 °C, 28 °C], night: [18 °C, 22 °C], source: ours }
misting: { per_day: [3, 3], seconds: [60 s, 60 s], gap: 2 h, favour: dawn, source: ours }
feeding: { from: { after_lights_on: 1 h }, to: { before_lights_off: 0 min }, dry_before_mist: 1 h, source: ours }
stages:
  adult:
    feeds: [{ food: insects, per_week: 7, portion: as much as is eaten, source: ours }]
    dusting: [{ id: calcium, at: the rest, source: ours }]
`;

const COOL = '{ id: day, kind: led, for: [daylight], power: 20 W, outlet: dial, warms: 4 °C }';
const HOT = '{ id: day, kind: halogen, for: [daylight], power: 50 W, outlet: dial, warms: 4 °C }';
const starts = (plan: Plan): readonly number[] =>
  (plan.misting[0]?.sets[0]?.entries ?? []).map(({ at }) => minuteOf(at));

describe('mists that a rhythm would have at dawn', () => {
  it('stand there where nothing forbids it', () => {
    expect(starts(planOf(COOL))).toEqual([390, 510, 630]);
  });

  it('keep off dusted feeds', () => {
    const plan = planOf(COOL, { feedsAt: '08:30' });
    expect(plan.feeding.every(({ dusting, time }) => dusting === 'calcium' && time === '08:30')).toBe(true);
    const near = starts(plan).filter((start) => start >= 500 && start < 570);
    expect(near).toEqual([]);
    expect(starts(plan)).toHaveLength(3);
  });

  it('keep off a hot lamp from 5 min after it comes on to 15 min after it goes off, unless the spray cannot reach it', () => {
    for (const start of starts(planOf(HOT))) expect(start < 425 || start >= 1155, `${start}`).toBe(true);
    expect(starts(planOf(HOT)).length).toBeGreaterThan(0);
    expect(starts(planOf(HOT, { hitsLamp: 'no' }))).toEqual([390, 510, 630]);
  });

  it('wait for the lights where the night is too cold', () => {
    for (const start of starts(planOf(COOL, { night: 15 })))
      expect(start >= 420 && start < 1200, `${start}`).toBe(true);
  });
});
