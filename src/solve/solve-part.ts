/** One part of the plan: solved, or taken over with what was said of it. */
import { catalogue } from '../diagnostics/catalogue.ts';
import type { Diagnostic, Place } from '../diagnostics/diagnostic.ts';
import { Log } from '../diagnostics/log.ts';
import type { Parts } from '../plan/parts.ts';
import type { PartMessage } from '../plan/plan.ts';
import type { Care } from '../resolve/care.ts';

interface Stage {
  readonly care: Care;
  readonly parts: Parts;
  readonly log: Log;
}

/**
 * Returns a part. Where one stands it is copied, and what was said when it was solved is said again, at the places where the file has it
 * now; else it is solved, and what that says is kept in the plan.
 *
 * @param part its name among the digests
 * @param standing what the earlier plan has, null where it does not stand
 * @param solve reports to the log, and finds places by the household, that it is handed
 */
export function solvePart<T>(stage: Stage, part: string, standing: T | null, solve: (care: Care, log: Log) => T): T {
  const { care, parts, log } = stage;
  if (standing !== null) {
    const said = parts.saidBefore(part);
    parts.say(part, said);
    log.add(said.flatMap((message) => saidAgain(care, message)));
    return standing;
  }
  const own = new Log();
  const places = new Map<Place, PartMessage['about']>();
  const solved = solve(withPlacesNoted(care, places), own);
  const messages = own.sorted();
  log.add(messages);
  parts.say(
    part,
    messages.map(({ code, weight, because, instead, place }) => ({
      code,
      weight,
      because,
      instead,
      about: (place && places.get(place)) ?? null,
    })),
  );
  return solved;
}

/** The household, noting of each place that is asked for what it is the place of. */
function withPlacesNoted(care: Care, places: Map<Place, PartMessage['about']>): Care {
  return {
    ...care,
    placeOf: (path) => {
      const place = { ...care.placeOf(path) };
      places.set(place, { path });
      return place;
    },
    placeOfTarget: (enclosure, target) => {
      const found = care.placeOfTarget(enclosure, target);
      if (!found) return null;
      const place = { ...found };
      places.set(place, { enclosure, target });
      return place;
    },
  };
}

/** A message of an earlier version whose code is no longer known is left out. */
function saidAgain(care: Care, { code, weight, because, instead, about }: PartMessage): readonly Diagnostic[] {
  if (!Object.hasOwn(catalogue, code)) return [];
  const { kind } = catalogue[code as keyof typeof catalogue];
  return [{ code, kind, weight, place: about && placeOf(care, about), because, instead }];
}

function placeOf(care: Care, about: NonNullable<PartMessage['about']>): Place | null {
  return 'path' in about ? care.placeOf(about.path) : care.placeOfTarget(about.enclosure, about.target);
}
