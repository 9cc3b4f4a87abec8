import { describe, expect, it } from 'vitest';
import { zoneOffsets } from '../../../src/basics/zone.ts';
import type { Compiled } from '../../../src/compile.ts';
import { Log } from '../../../src/diagnostics/log.ts';
import { planJson } from '../../../src/emit/json/plan-json.ts';
import { fittedEntry, fittedText } from '../../../src/fit/fitted-text.ts';
import { readFitted } from '../../../src/read/fitted.ts';
import { shapeDigest } from '../../../src/resolve/fitted-of.ts';
import { fitOfLog } from '../../generated/fit-of-log.ts';
import { compiledFern, csvOf, fernHousehold, gaugeLog, WEEK } from '../../generated/gauge-log.ts';

const HOUSEHOLD = fernHousehold();
const plain = compiledFern(HOUSEHOLD);
/** A tighter cage than estimated, so that the mists change. */
const wish = { ...WEEK, factors: { airChangesPerHour: 0.6, baseEvaporationGPerHour: 1.2, transferMPerHour: 0.8 } };
const { lines, truth } = gaugeLog(plain, wish);
const { fitted, read } = fitOfLog(plain, csvOf(lines));

function shapeOf({ household }: Compiled): string {
  const said = household?.tree.enclosures[0];
  if (!said) throw new Error('no enclosure');
  return shapeDigest(said);
}

const text = ((): string => {
  if (!fitted) throw new Error('the log is not fitted');
  const offsets = zoneOffsets('Europe/Madrid', 20_819, 365);
  const entry = fittedEntry(fitted, { file: 'gauge.csv', digest: 'abc' }, shapeOf(plain), offsets);
  return fittedText('home.yaml', { fern: entry });
})();
const file = { file: 'home.fit.yaml', text };

describe('fitted values', () => {
  it('are those that the log was made with', () => {
    expect(read?.readings).toHaveLength(7 * 144);
    for (const { key, low, high } of fitted?.fit.values ?? []) {
      expect(truth[key]).toBeGreaterThan(low);
      expect(truth[key]).toBeLessThan(high);
    }
    expect(fitted?.fit.values.map(({ key }) => key)).toContain('airChangesPerHour');
  });

  it('are read back from the file as they were written, to four digits', () => {
    const log = new Log();
    const tree = readFitted('home.fit.yaml', text, log)?.tree.fitted.fern;
    expect(log.sorted()).toEqual([]);
    expect(tree).toMatchObject({ readings: 'gauge.csv', count: 7 * 144, shape: shapeOf(plain), log: 'abc' });
    expect(tree?.changes_per_hour?.best).toBeCloseTo(fitted?.fit.air.airChangesPerHour ?? 0, 2);
    expect(tree?.transfer?.best).toBeCloseTo(fitted?.fit.air.transferMPerHour ?? 0, 2);
  });

  it('change the mists of the plan, and say where they come from', () => {
    const after = compiledFern(HOUSEHOLD, file);
    const entries = ({ plan }: Compiled) => plan?.misting[0]?.sets.map((set) => set.entries);
    expect(entries(after)).not.toEqual(entries(plain));
    expect(after.plan?.misting[0]?.model.airChangesPerHour).toBeCloseTo(fitted?.fit.air.airChangesPerHour ?? 0, 2);
    const assumed = after.plan?.assumptions.find(({ path }) => path === 'misting[0].model.airChangesPerHour');
    expect(assumed?.source).toMatch(
      /^fitted from gauge\.csv, 2027-01-05 to 2027-01-11; 95 % between [\d.]+ and [\d.]+$/,
    );
  });

  it('leave no trace once their file is gone', () => {
    if (!plain.plan) throw new Error('no plan');
    const again = compiledFern(HOUSEHOLD, null);
    expect(again.plan && planJson(again.plan)).toBe(planJson(plain.plan));
  });

  it('are solved anew over a plan that stands, from today on', () => {
    const after = compiledFern(HOUSEHOLD, file, plain.plan, '2027-02-01');
    const sets = after.plan?.misting[0]?.sets ?? [];
    expect(sets.some(({ past }) => past === true)).toBe(true);
    expect(sets.find(({ from }) => from === '2027-02-01')?.entries).not.toEqual(
      plain.plan?.misting[0]?.sets[0]?.entries,
    );
    expect(after.plan?.revision).toBe(2);
  });

  it('stand behind what the file says itself', () => {
    const own = compiledFern(fernHousehold('    air: { changes_per_hour: 7 }\n'), file);
    expect(own.plan?.misting[0]?.model.airChangesPerHour).toBe(7);
    expect(own.plan?.assumptions.some(({ path }) => path.endsWith('airChangesPerHour'))).toBe(false);
    expect(own.plan?.misting[0]?.model.transferMPerHour).toBeCloseTo(fitted?.fit.air.transferMPerHour ?? 0, 2);
  });

  it('are left aside where the enclosure is no longer the one that was measured', () => {
    const covered = compiledFern(HOUSEHOLD.replace('open: 33 %', 'open: 25 %'), file);
    expect(covered.diagnostics.map(({ code }) => code)).toContain('fitted-for-another-shape');
    expect(covered.plan?.misting[0]?.model.airChangesPerHour).toBeLessThan(7);
  });

  it('that cannot be read stop the plan, with their place', () => {
    const broken = compiledFern(HOUSEHOLD, { ...file, text: text.replace('m/h', 'km') });
    expect(broken.plan).toBeNull();
    expect(broken.diagnostics.find(({ weight }) => weight === 'error')?.place).toMatchObject({
      file: 'home.fit.yaml',
      line: 16,
    });
  });
});
