/** What may be said on the command line about printed pages. */
import { parseIsoDate } from '../basics/calendar-day.ts';
import { type CareWish, MOST_WEEKS } from '../layout/care-document.ts';
import { monthOf } from '../layout/page-span.ts';
import type { Plan } from '../plan/plan.ts';
import { reasonOf } from './files.ts';
import { UsageError } from './usage.ts';
import type { World } from './world.ts';

export interface PageOptions {
  readonly weeks?: string;
  readonly month?: string;
  readonly largePrint?: boolean;
  readonly per?: 'enclosure';
  /** Paths of font files. */
  readonly font?: readonly string[];
}

/** @throws UsageError where an option cannot be taken, whatever the plan */
export function checkPageOptions({ weeks, month }: PageOptions): void {
  if (weeks !== undefined && !(/^\d$/.test(weeks) && Number(weeks) >= 1 && Number(weeks) <= MOST_WEEKS))
    throw new UsageError(`--weeks ${weeks}: a whole number from 1 to ${MOST_WEEKS}`);
  if (month !== undefined && (!/^\d{4}-\d{2}$/.test(month) || parseIsoDate(`${month}-01`) === null))
    throw new UsageError(`--month ${month}: months are written YYYY-MM, for instance 2027-05`);
  if (weeks !== undefined && month !== undefined) throw new UsageError('--weeks and --month: give one of the two');
}

/**
 * Returns what the page for the door is to show.
 * @throws UsageError where the month lies outside the plan
 */
export function pageWish({ weeks, month, largePrint, per }: PageOptions, plan: Plan): CareWish {
  if (month !== undefined && monthOf(plan, month) === null)
    throw new UsageError(`--month ${month} lies outside the plan (${plan.from} to ${plan.to})`);
  return {
    weeks: weeks === undefined ? null : Number(weeks),
    month: month ?? null,
    largePrint: largePrint === true,
    perEnclosure: per === 'enclosure',
  };
}

/**
 * Returns the contents of font files.
 * @throws UsageError where one cannot be read
 */
export function fontFiles(paths: readonly string[], world: World): readonly Uint8Array[] {
  return paths.map((path) => {
    try {
      return world.disk.readFileSync(path);
    } catch (error) {
      throw new UsageError(`--font ${path}: ${reasonOf(error)}`);
    }
  });
}
