/** Warnings of targets that no mists can meet in the room as it is. */
import type { MistAdvice } from '../../../plan/plan.ts';
import type { Care, CareEnclosure } from '../../../resolve/care.ts';
import { monthWords } from '../../light/temperature-check.ts';
import type { MistUnit } from '../mist-unit.ts';
import type { SetDay } from '../sets/member-sets.ts';
import type { LeversByWay } from './levers-by-way.ts';
import { monthsOf, ROUNDING_SHORTFALL } from './missed-targets.ts';
import { remedyWords } from './remedy-words.ts';
import { type OutOfReach, reachOfCase } from './target-reach.ts';
import { warned } from './water-notes.ts';
import { percentWords } from './water-quantities.ts';

/** Returns a warning for each target that no mists can meet in this room, with its months; all that is too humid in one. */
export function reachNotes(
  care: Care,
  unit: MistUnit,
  enclosure: CareEnclosure,
  days: readonly SetDay[],
  levers: LeversByWay,
): readonly MistAdvice[] {
  const found = new Map<string, { readonly miss: OutOfReach; readonly months: number[]; readonly room: number }>();
  for (const { span, day } of days) {
    if (day.shortfall <= ROUNDING_SHORTFALL) continue;
    for (const miss of reachOfCase(span.one, span.dayC, span.nightC).outOfReach) {
      const isDry = miss.settles < miss.edge;
      if (isDry && !unit.machine) continue;
      const key = isDry ? miss.target : 'humid';
      const known = found.get(key) ?? { miss, months: [], room: span.roomHumidity };
      known.months.push(...monthsOf(span.fromDay, span.toDay));
      found.set(key, known);
    }
  }
  return [...found].map(([key, { miss, months, room }]) => {
    const named = monthWords([...new Set(months)]);
    if (key === 'humid')
      return warned(
        'too-humid-unmisted',
        {
          enclosure: enclosure.id,
          settles: percentWords(miss.settles),
          room: percentWords(room),
          months: named,
          remedy: remedyWords(care, unit, enclosure, levers, true),
        },
        'room',
      );
    return warned(
      'out-of-reach',
      {
        enclosure: enclosure.id,
        target: `humidity.${miss.target}`,
        edge: percentWords(miss.edge),
        settles: percentWords(miss.settles),
        wet: miss.target === 'floor' ? 'dry' : 'wet',
        months: named,
        remedy: `${reachWords(miss)}${remedyWords(care, unit, enclosure, levers, false)}`,
      },
      `targets.humidity.${miss.target}`,
    );
  });
}

function reachWords({ openShare, remedy }: OutOfReach): string {
  return remedy === 'cover' && openShare !== null
    ? `it comes into reach with ${percentWords(Math.floor(openShare * 100) / 100)} of the mesh open or less; `
    : '';
}
