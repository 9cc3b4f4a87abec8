/** Lamps that the file puts on one timer: which of them can share it. */
import type { Log } from '../../diagnostics/log.ts';
import type { NotPlanned } from '../../plan/plan.ts';
import type { Care } from '../../resolve/care.ts';
import {
  type DialGroup,
  type Disagreement,
  dialGroup,
  disagreementOf,
  type LampTimer,
  placementWords,
} from './dial-group.ts';
import type { ShelfLamp } from './shelf-lamp.ts';

export interface GroupsByTimer {
  /** Groups of the timers that may drive lamps, also those without any yet, by timer id. */
  readonly groups: ReadonlyMap<string, DialGroup>;
  readonly notPlanned: readonly NotPlanned[];
}

/** Returns the group of each timer that is not refused; lamps that cannot share theirs are left out, all of them. */
export function agreeingGroups(
  care: Care,
  lamps: readonly ShelfLamp[],
  refused: ReadonlyMap<string, string>,
  log: Log,
): GroupsByTimer {
  const groups = new Map<string, DialGroup>();
  const notPlanned: NotPlanned[] = [];
  for (const timer of care.devices) {
    if ((timer.kind !== 'pin-dial' && timer.kind !== 'programmable-timer') || refused.has(timer.id)) continue;
    const group = dialGroup(
      timer,
      lamps.filter(({ lamp }) => lamp.outlet === timer.id),
    );
    const why = refusalOf(care, group, log);
    if (why === null) groups.set(timer.id, group);
    else notPlanned.push(...group.lamps.map(({ id }) => ({ lamp: id, device: timer.id, why })));
  }
  return { groups, notPlanned };
}

function refusalOf(care: Care, group: DialGroup, log: Log): string | null {
  const conflict = disagreementOf(group);
  if (conflict) return conflictWords(care, group.timer, conflict, log);
  const needed = entriesNeeded(group);
  if (group.timer.kind === 'programmable-timer' && needed > group.timer.entries) {
    log.report(
      'entries-too-few',
      { timer: group.timer.id, entries: group.timer.entries, needed },
      care.placeOf([...group.timer.path, 'entries']),
    );
    return `${group.timer.id} has ${group.timer.entries} entries`;
  }
  return null;
}

/** Returns the entries that a programmable timer needs for its lamps: one a window, one at least for a day. */
function entriesNeeded({ lamps, kind }: Pick<DialGroup, 'lamps' | 'kind'>): number {
  if (kind === 'idle') return 0;
  if (kind !== 'spans') return 1;
  return Math.max(...lamps.map(({ target }) => (target.kind === 'spans' ? target.spans.length : 0)));
}

function conflictWords(care: Care, timer: LampTimer, { kind, one, other }: Disagreement, log: Log): string {
  if (kind === 'spans') {
    log.report(
      'spans-do-not-share',
      { timer: timer.id, one: one.id, other: other.id },
      care.placeOf([...other.lamp.path, 'outlet']),
    );
    return `${timer.id} has one set of windows`;
  }
  const values = {
    timer: timer.id,
    one: one.enclosure.id,
    oneDay: saidWhere(care, one),
    other: other.enclosure.id,
    otherDay: saidWhere(care, other),
  };
  log.report('day-placement-differs', values, placeOfDay(care, other) ?? care.placeOf(other.lamp.path));
  return `its enclosures differ in when the day lies`;
}

function saidWhere(care: Care, shelf: ShelfLamp): string {
  const place = placeOfDay(care, shelf);
  return `${placementWords(shelf.enclosure.targets.day)}${place ? ` (${place.file}:${place.line})` : ' (the default)'}`;
}

function placeOfDay(care: Care, { enclosure }: ShelfLamp) {
  const key = enclosure.targets.day.anchor.kind.replace('-', '_');
  return care.placeOfTarget(enclosure.id, `day.${key}`) ?? care.placeOfTarget(enclosure.id, 'day');
}

/** Returns the heaters on timers that drive no lamp whose hours they could follow. */
export function reportLonelyHeaters(
  care: Care,
  groups: ReadonlyMap<string, DialGroup>,
  log: Log,
): readonly NotPlanned[] {
  return [...groups.values()]
    .filter(({ kind }) => kind === 'idle')
    .flatMap(({ timer, lamps }) =>
      lamps.map(({ id, lamp }) => {
        log.report('heat-without-hours', { lamp: id, timer: timer.id }, care.placeOf([...lamp.path, 'outlet']));
        return { lamp: id, device: timer.id, why: `${timer.id} drives no lamp whose hours it could follow` };
      }),
    );
}
