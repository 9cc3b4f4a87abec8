/** The pictures of the README: what the tool draws of the example with three enclosures; of a dial the first two rings. */
import { paintSvg } from '../../src/emit/paint-svg.ts';
import { dayChart } from '../../src/layout/day-chart.ts';
import { dialSheet } from '../../src/layout/dial-sheet.ts';
import { yearChart } from '../../src/layout/year-chart.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { words } from '../../src/plan/words/words.ts';
import { compiled, HOUSEHOLDS } from '../examples/every-household.ts';

export const PICTURES = new URL('../../examples/pictures/', import.meta.url);

/** Returns each picture by the name of its file. */
export function readmePictures(): ReadonlyMap<string, string> {
  const plan = planOf('reading-room');
  const dial = found(plan.lighting.find(({ device }) => device === 'shelf-dial'));
  const mist = found(plan.misting.find(({ enclosure }) => enclosure === 'fern'));
  return new Map([
    ['dial.svg', paintSvg(dialSheet(plan, { ...dial, settings: dial.settings.slice(0, 2) }))],
    ['year.svg', paintSvg(yearChart(plan, dial, words(plan.language).pictures))],
    ['day.svg', paintSvg(found(dayChart(plan, mist, plan.from)))],
  ]);
}

function planOf(name: string): Plan {
  return found(compiled(found(HOUSEHOLDS.find((each) => each.name === name))).plan);
}

function found<T>(value: T | null | undefined): T {
  if (value === null || value === undefined)
    throw new Error('the example has changed: its pictures are drawn of something else');
  return value;
}
