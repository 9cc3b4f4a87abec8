/** Says where nobody is there to feed, and the latest day on which a sitter would have to come. */
import { type EpochDay, epochDay, isoDateOf } from '../../basics/calendar-day.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { Care, CareAbsence, CareEnclosure } from '../../resolve/care.ts';
import type { EnclosureRotation, RotationPart } from './enclosure-rotation.ts';
import { feedTimes } from './feed-days.ts';
import { fastingSpans, isWithin, someoneThere } from './pauses.ts';

/** Reports, once an absence, the feeds for which nobody is there, with the longest time without. */
export function reportAbsences(care: Care, enclosure: CareEnclosure, rotated: EnclosureRotation, log: Log): void {
  const fed = [...new Set(rotated.feeds.map(({ day }) => day))].toSorted((a, b) => a - b);
  for (const absence of care.away) {
    const missed = missedDays(care, enclosure, rotated, absence);
    if (missed.length === 0) continue;
    const without = longestWithout(fed, missed);
    const allowed = mayGoWithout(enclosure, absence.from);
    const latest = allowed === null ? null : without.after + allowed;
    log.report(
      'nobody-feeds',
      {
        enclosure: enclosure.id,
        from: isoDateOf(absence.from),
        to: isoDateOf(absence.to),
        feeds: missed.length,
        days: without.days,
        allowed,
        visit: latest === null ? null : isoDateOf(latest),
      },
      care.placeOf(absence.path),
      allowed !== null && without.days <= allowed ? 'note' : undefined,
    );
  }
}

/** The feed days of an absence on which nobody comes. */
function missedDays(
  care: Care,
  enclosure: CareEnclosure,
  rotated: EnclosureRotation,
  absence: CareAbsence,
): readonly EpochDay[] {
  const days = new Set<EpochDay>();
  for (const part of rotated.parts) {
    const fasting = fastingSpans(enclosure, part.food);
    for (const day of unvisited(care, absence, part)) if (!isWithin(fasting, day)) days.add(day);
  }
  return [...days].toSorted((a, b) => a - b);
}

function unvisited(care: Care, absence: CareAbsence, { stage, food, rotated, to }: RotationPart): readonly EpochDay[] {
  const began = epochDay(rotated.state.order.began);
  const rules = stage.feeds.filter((rule) => rule.food === food);
  return feedTimes(rules, began, Math.min(to, absence.to), null)
    .map(({ day }) => day)
    .filter((day) => day >= absence.from && !someoneThere(care, day));
}

/** The longest distance between feeds around the missed days, with the feed before it. */
function longestWithout(
  fed: readonly EpochDay[],
  missed: readonly EpochDay[],
): { readonly after: EpochDay; readonly days: number } {
  return missed.reduce(
    (longest, day) => {
      const after = fed.findLast((each) => each < day) ?? day;
      const until = fed.find((each) => each > day) ?? (missed.at(-1) ?? day) + 1;
      return until - after > longest.days ? { after, days: until - after } : longest;
    },
    { after: missed[0] ?? 0, days: 0 },
  );
}

/** Returns the days that the animal may go without feed in the stage of a day, or null where the profile does not say. */
function mayGoWithout(enclosure: CareEnclosure, day: EpochDay): number | null {
  const stage = enclosure.stages.findLast(({ from }) => from <= day)?.stage ?? enclosure.stages[0]?.stage ?? '';
  return enclosure.targets.mayGoWithoutDays[stage] ?? null;
}
