/**
 * What the trade knows of mesh in dry rooms (common practice, no source; the facts `veiled-humidity`, `dry-room` and `open-mesh` of the
 * check values): in a room of 20 to 40 % an all-mesh enclosure of 60 x 60 x 120 cm with one nozzle cannot be held near 50 % with peaks of
 * 70 to 80 % by any ordinary number of mists; with three sides covered, front and top open, it can with several a day. The room keeps its
 * warmth at night, so that no peak comes of cool air alone.
 */
import { describe, expect, it } from 'vitest';
import type { MistSet } from '../../../src/plan/plan.ts';
import { compiledHousehold, planIn } from '../../compiled-household.ts';
import { profileText } from '../../shipped-profiles.ts';

/** Front and top of four walls and a top. */
const FRONT_AND_TOP = Math.round((100 * (0.72 + 0.36)) / (4 * 0.72 + 0.36));

function household(openPercent: number, roomPercent: number): string {
  return `format: 1
name: Dry room
site: { timezone: Europe/Madrid, latitude: 41.65, longitude: -0.89, room: { day: 21 °C, night: 21 °C, humidity: ${roomPercent} % } }
plan: { from: 2027-01-01, days: 7 }
hardware:
  - { id: dial, kind: pin-dial, step: 15 min, outlets: 4, rating: 1800 W }
  - { id: mist-timer, kind: programmable-timer, entries: 12, resolution: 1 s, shortest: 5 s, clock: standard, keeps_time: yes, rating: 1000 W }
  - { id: pump, kind: mist-pump, outlet: mist-timer, power: 30 W, flow: 90 mL/min, longest_run: 5 min, rest: 10 min }
enclosures:
  - id: home
    species: veiled-chameleon
    stage: adult
    size: { width: 60 cm, depth: 60 cm, height: 120 cm }
    open: ${openPercent} %
    planting: medium
    lamps: [{ id: day, kind: led, for: [daylight], power: 20 W, outlet: dial, warms: 4 °C }]
    mist: pump
    targets:
      humidity: { mean: [45 %, 55 %], peak: [70 %, 80 %], peaks_per_day: [2, 4], floor: 20 %, why: as the trade has it }
      misting: { per_day: [1, 12], seconds: [15 s, 300 s], gap: 15 min, why: any ordinary number }
      water: { dry_out: none, no_mist: [], why: the air alone is asked about }
`;
}

function setFor(openPercent: number, roomPercent: number): MistSet {
  const text = profileText('veiled-chameleon').replace(
    /^humidity:[\s\S]*?^water:/m,
    'humidity:\n  source: ours\nwater:',
  );
  const own = { 'veiled-chameleon': text };
  const set = planIn(compiledHousehold(household(openPercent, roomPercent), { own })).misting[0]?.sets[0];
  if (!set) throw new Error('nothing is misted');
  return set;
}

describe.each([20, 30, 40])('a room of %i %%', (room) => {
  it('leaves an all-mesh enclosure out of reach', () => {
    const set = setFor(100, room);
    console.info(`all mesh, room ${room} %: shortfall ${set.shortfall}, ${set.entries.length} mists`);
    expect(set.shortfall).toBeGreaterThan(0.25);
    expect(set.shortfalls.some(({ remedy }) => remedy.includes('cover the mesh'))).toBe(true);
  });

  it('is overcome by covering three sides, with several mists a day', () => {
    const set = setFor(FRONT_AND_TOP, room);
    console.info(`front and top, room ${room} %: shortfall ${set.shortfall}, ${set.entries.length} mists`);
    expect(set.shortfall).toBeLessThanOrEqual(0.05);
    expect(set.entries.length).toBeGreaterThanOrEqual(2);
    expect(set.entries.length).toBeLessThanOrEqual(8);
  });
});
