import { dayChart } from '../../layout/day-chart.ts';
import { dialSheet } from '../../layout/dial-sheet.ts';
import { yearChart } from '../../layout/year-chart.ts';
import type { Plan } from '../../plan/plan.ts';
import { words } from '../../plan/words/words.ts';
import { paintSvg } from '../paint-svg.ts';

export interface SvgFile {
  readonly path: string;
  readonly content: string;
}

/** Returns the drawings of every dial that has settings and of every enclosure's day, by path. */
export function drawings(plan: Plan): readonly SvgFile[] {
  return [...dialDrawings(plan), ...dayDrawings(plan)];
}

/** A chart of a dial keeps its name where an enclosure has the same id. */
function dayDrawings(plan: Plan): readonly SvgFile[] {
  const taken = new Set(plan.lighting.map(({ device }) => device));
  const [, date = plan.from] = [plan.from, plan.made, plan.to].sort();
  return plan.misting.flatMap((mist) => {
    const drawing = dayChart(plan, mist, date);
    if (!drawing) return [];
    const name = taken.has(mist.enclosure) ? `${mist.enclosure}-air` : mist.enclosure;
    return [{ path: `charts/${name}.svg`, content: paintSvg(drawing) }];
  });
}

function dialDrawings(plan: Plan): readonly SvgFile[] {
  return plan.lighting
    .filter(({ settings }) => settings.length > 0)
    .flatMap((dial) => [
      { path: `dials/${dial.device}.svg`, content: paintSvg(dialSheet(plan, dial)) },
      ...(dial.targetMinutes.length === 0
        ? []
        : [
            {
              path: `charts/${dial.device}.svg`,
              content: paintSvg(yearChart(plan, dial, words(plan.language).pictures)),
            },
          ]),
    ]);
}
