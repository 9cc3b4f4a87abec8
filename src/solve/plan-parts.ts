/** The parts of a plan that are told, not solved: who, where, what stands on the shelf. */

import { type EpochDay, isoDateOf } from '../basics/calendar-day.ts';
import { clockTimeOf } from '../basics/minute-of-day.ts';
import type { Device } from '../hardware/devices.ts';
import type { Absence, EnclosureSpan, PlanDevice, PlanEnclosure, PlanPerson } from '../plan/plan.ts';
import type { Care, CareEnclosure, Rest } from '../resolve/care.ts';
import { fergusonZone } from '../science/ferguson-zones.ts';

/** Returns the people as the plan keeps them. */
export function planPeople(care: Care): readonly PlanPerson[] {
  return care.people.map((person) => ({
    id: person.id,
    feedsAt: person.feedsAtMinutes.map(clockTimeOf),
    reminderMinutes: person.reminderMinutes,
    minutesADay: person.minutesADay,
  }));
}

/** Returns the absences as the plan keeps them. */
export function planAbsences(care: Care): readonly Absence[] {
  return care.away.map((absence) => ({
    from: isoDateOf(absence.from),
    to: isoDateOf(absence.to),
    sitter: absence.sitter ?? '',
    visits: absence.visits.map(isoDateOf),
  }));
}

/** Returns the enclosures as the plan keeps them, with targets and cautions. */
export function planEnclosures(care: Care): readonly PlanEnclosure[] {
  return care.enclosures.map((enclosure) => ({
    id: enclosure.id,
    name: enclosure.name,
    species: enclosure.species,
    speciesName: enclosure.speciesName,
    scientific: enclosure.scientific,
    activity: enclosure.activity,
    animals: enclosure.animalCount,
    animalNames: enclosure.animals.flatMap((animal) => (animal.name === null ? [] : [animal.name])),
    stages: enclosure.stages.map(({ from, stage }) => ({ from: isoDateOf(Math.max(from, care.plan.from)), stage })),
    sizeCm: [toCm(enclosure.sizeM.width), toCm(enclosure.sizeM.depth), toCm(enclosure.sizeM.height)],
    targets: enclosure.targetRecords,
    ...liveOf(enclosure),
    uvIndex: uvIndexOf(enclosure),
    cautions: enclosure.cautions,
    where: enclosure.where,
    spans: spansOf(enclosure, care.plan.from, care.plan.from + care.plan.days - 1),
  }));
}

function liveOf({ lamps }: CareEnclosure): Pick<PlanEnclosure, 'live'> {
  const live = lamps
    .filter(({ outlet }) => outlet === 'always')
    .map(({ id, powerW, thermostat }) => ({ lamp: id, powerW, isRegulated: thermostat !== 'none' }));
  return live.length === 0 ? {} : { live };
}

function toCm(metres: number): number {
  return Math.round(metres * 1000) / 10;
}

function uvIndexOf(enclosure: CareEnclosure): PlanEnclosure['uvIndex'] {
  const zone = enclosure.targets.uvb?.fergusonZone ?? null;
  return zone === null ? null : fergusonZone(zone);
}

function spansOf(enclosure: CareEnclosure, first: EpochDay, last: EpochDay): PlanEnclosure['spans'] {
  const rest = enclosure.rest
    ? [
        {
          kind: enclosure.rest.kind,
          from: enclosure.rest.from,
          to: enclosure.rest.from + enclosure.rest.weeks * 7 - 1,
          vet: null,
          ...restingOf(enclosure.rest),
        },
      ]
    : [];
  const states = enclosure.states.map((state) => ({ kind: state.is, from: state.from, to: state.to, vet: state.vet }));
  return [...rest, ...states]
    .filter((span) => span.from <= last && span.to >= first)
    .map((span) => ({ ...span, from: isoDateOf(span.from), to: isoDateOf(span.to) }));
}

function restingOf({ rampWeeks, temperature, humidity }: Rest): Pick<EnclosureSpan, 'resting'> {
  if (!temperature && !humidity) return {};
  return {
    resting: {
      rampDays: rampWeeks * 7,
      dayC: temperature?.dayC ?? null,
      nightC: temperature?.nightC ?? null,
      dayHumidity: humidity?.day ?? null,
      nightHumidity: humidity?.night ?? null,
      meanHumidity: humidity?.mean ?? null,
    },
  };
}

/** Returns the devices in file order; `drives` tells what hangs on each. */
export function planHardware(care: Care, drives: ReadonlyMap<string, readonly string[]>): readonly PlanDevice[] {
  return care.devices.map((device) => ({
    id: device.id,
    kind: device.kind,
    outlet: 'outlet' in device ? device.outlet : null,
    clock: 'clock' in device ? device.clock : null,
    keepsTime: 'keepsTime' in device ? device.keepsTime : null,
    drives: drives.get(device.id) ?? [],
    where: device.where,
    ...('entryForm' in device ? { lines: device.entryForm } : {}),
    ...tankOf(device),
  }));
}

function tankOf(device: Device): Pick<PlanDevice, 'tank'> {
  if (!('tank' in device) || device.tank === null) return {};
  const { holdsG, reserveG, refillEveryDays } = device.tank;
  return { tank: { holdsMl: holdsG, reserveMl: reserveG, refillEveryDays } };
}
