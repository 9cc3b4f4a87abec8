import { dialSheet } from '../../layout/dial-sheet.ts';
import { yearChart } from '../../layout/year-chart.ts';
import type { Plan } from '../../plan/plan.ts';
import { words } from '../../plan/words/words.ts';
import { paintSvg } from '../paint-svg.ts';

/** Returns the drawings of every dial that has settings, by path. */
export function drawings(plan: Plan): readonly { readonly path: string; readonly content: string }[] {
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
