/** Says where a tank runs dry or a tray runs over while nobody is there. */
import { type EpochDay, epochDay, isoDateOf } from '../../basics/calendar-day.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { MistPump } from '../../hardware/devices.ts';
import type { Chore, MistPlan } from '../../plan/plan.ts';
import type { Care, CareAbsence, CareEnclosure } from '../../resolve/care.ts';
import { tankDays } from '../chores/water-jobs.ts';

/** Reports, once an absence, each tank and tray whose water does not last from one visit to the next. */
export function reportAbsenceWater(care: Care, chores: readonly Chore[], misting: readonly MistPlan[], log: Log): void {
  for (const absence of care.away) {
    for (const device of care.devices)
      if (device.kind === 'mist-pump' || device.kind === 'fogger')
        reportTank(care, absence, device, chores, misting, log);
    for (const enclosure of care.enclosures) reportTray(care, absence, enclosure, chores, misting, log);
  }
}

const ML_A_LITRE = 1000;

function reportTank(
  care: Care,
  absence: CareAbsence,
  { id, tank }: MistPump,
  chores: readonly Chore[],
  misting: readonly MistPlan[],
  log: Log,
): void {
  const lasts = tankDays(misting, id);
  if (!tank || lasts === null || lasts <= 0) return;
  const gap = longestGap(datesOf(chores, `${id}/refill`), absence);
  if (gap === null || gap.days <= lasts) return;
  const perDay = (tank.holdsG - tank.reserveG) / lasts;
  log.report(
    'tank-runs-dry',
    {
      pump: id,
      lasts: Math.floor(lasts),
      from: isoDateOf(gap.after),
      to: isoDateOf(gap.after + gap.days),
      gap: gap.days,
      refill: isoDateOf(gap.after + Math.floor(lasts)),
      needs: Math.ceil((gap.days * perDay + tank.reserveG) / ML_A_LITRE),
    },
    care.placeOf(absence.path),
  );
}

function reportTray(
  care: Care,
  absence: CareAbsence,
  { id, tray }: CareEnclosure,
  chores: readonly Chore[],
  misting: readonly MistPlan[],
  log: Log,
): void {
  const runoff = Math.max(0, ...runoffs(misting, id));
  if (!tray || runoff <= 0) return;
  const lasts = tray.holdsG / runoff;
  const gap = longestGap(datesOf(chores, `${id}/empty-tray`), absence);
  if (gap === null || gap.days <= lasts) return;
  log.report(
    'tray-runs-over',
    {
      enclosure: id,
      lasts: Math.floor(lasts),
      from: isoDateOf(gap.after),
      to: isoDateOf(gap.after + gap.days),
      gap: gap.days,
      empty: isoDateOf(gap.after + Math.floor(lasts)),
    },
    care.placeOf(absence.path),
  );
}

function runoffs(misting: readonly MistPlan[], enclosure: string): readonly number[] {
  return misting
    .filter((mist) => mist.enclosure === enclosure)
    .flatMap(({ sets }) =>
      sets.flatMap(({ conditions }) => conditions.map(({ predicted }) => predicted.runoffMlPerDay)),
    );
}

/** The dates of a chore, whoever does it. */
function datesOf(chores: readonly Chore[], id: string): readonly EpochDay[] {
  return chores
    .filter((chore) => chore.id === id || chore.id === `${id}/${chore.who}`)
    .flatMap(({ dates }) => dates.map(epochDay));
}

/** The longest time between two dates about an absence; the day before leaving counts, as tanks are filled and trays emptied then. */
function longestGap(
  dates: readonly EpochDay[],
  { from, to }: CareAbsence,
): { readonly after: EpochDay; readonly days: number } | null {
  if (dates.length === 0) return null;
  const all = [...new Set([...dates, from - 1])].sort((a, b) => a - b);
  const next = all.find((day) => day > to) ?? to + 1;
  const about = [...all.filter((day) => day >= from - 1 && day <= to), next];
  return about.slice(1).reduce<{ after: EpochDay; days: number } | null>((most, day, index) => {
    const after = about[index] ?? day;
    return most === null || day - after > most.days ? { after, days: day - after } : most;
  }, null);
}
