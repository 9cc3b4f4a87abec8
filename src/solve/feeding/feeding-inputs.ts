/** Everything that feeds and orders are solved from, for the digests that tell whether a part of a plan still stands. */
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import type { EnclosureHours } from './enclosure-hours.ts';

/** Returns what an enclosure's feeds depend on: the lights count where an hour is chosen by them. */
export function feedingInputs(care: Care, enclosure: CareEnclosure, hours: EnclosureHours): unknown {
  const { from, days } = care.plan;
  const stages = enclosure.stages.map(({ stage }) => stage);
  const asked = care.people.flatMap(({ feedsAtMinutes }) => feedsAtMinutes);
  return {
    from,
    days,
    stages: enclosure.stages,
    targets: stages.map((stage) => enclosure.targets.stages[stage] ?? null),
    animals: enclosure.animalCount,
    feeders: enclosure.feeders.map(({ path: _, inStock: __, ...feeder }) => feeder),
    supplements: enclosure.supplements.map(({ id, contains, said }) => ({ id, contains, said })),
    mayGoWithout: enclosure.targets.mayGoWithoutDays,
    states: enclosure.states.map(({ path: _, ...state }) => state),
    rest: enclosure.rest && [enclosure.rest.from, enclosure.rest.weeks, enclosure.rest.lastFeedDays],
    last: enclosure.last,
    people: care.people.map(({ id, feedsAtMinutes }) => ({ id, feedsAtMinutes })),
    away: care.away.map(({ path: _, ...absence }) => absence),
    shortages: care.shortages.map(({ path: _, ...short }) => short),
    hours:
      asked.length > 0
        ? asked.map((minute) => hours.daysInside(minute))
        : Array.from({ length: days }, (_, i) => hours.firstOn(from + i)),
  };
}

/** Returns what the orders depend on, besides the feeds. */
export function stockInputs(care: Care): unknown {
  return {
    from: care.plan.from,
    days: care.plan.days,
    shopping: care.shopping,
    away: care.away.map(({ from, to }) => ({ from, to })),
    shortages: care.shortages.map(({ path: _, ...short }) => short),
    feeders: care.enclosures.flatMap(({ feeders }) => feeders.map(({ path: _, ...feeder }) => feeder)),
  };
}
