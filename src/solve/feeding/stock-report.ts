/** Says when feeders run out, spoil, or cannot be bought in time, and the nearest thing that would do. */
import { type EpochDay, isoDateOf, WEEKDAYS } from '../../basics/calendar-day.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { Care, CareAbsence } from '../../resolve/care.ts';
import { evenWeekdays } from './feed-days.ts';
import { longestShoppingGap, type StockFeeder } from './feeder-stock.ts';
import type { StockCourse } from './stock-course.ts';

/** Reports what the stock of all feeders falls short of. */
export function reportStock(care: Care, courses: readonly StockCourse[], from: EpochDay, log: Log): void {
  const ids = courses.map(({ feeder }) => feeder.id);
  if (care.shopping.days.length === 0) {
    if (ids.length > 0) log.report('no-shopping-day', { feeders: ids }, care.placeOf(['shopping']));
    for (const course of courses) reportRunOut(care, course, from, log);
    return;
  }
  reportUncounted(care, courses, log);
  for (const course of courses) {
    reportRunOut(care, course, from, log);
    reportShelfLife(care, course, log);
    reportMissing(care, course, courses, from, log);
  }
}

function reportUncounted(care: Care, courses: readonly StockCourse[], log: Log): void {
  const uncounted = courses.filter(({ feeder }) => feeder.inStock === null).map(({ feeder }) => feeder);
  const feeders = uncounted.map(({ id }) => id);
  const [first] = uncounted;
  if (first) log.report('stock-not-counted', { feeders }, care.placeOf([...first.path, 'in_stock']));
}

function reportRunOut(care: Care, { feeder, runsOut }: StockCourse, from: EpochDay, log: Log): void {
  if (runsOut === null || feeder.inStock === null) return;
  const values = { feeder: feeder.id, inStock: feeder.inStock, counted: isoDateOf(from), date: isoDateOf(runsOut) };
  log.report('stock-runs-out', values, care.placeOf([...feeder.path, 'in_stock']));
}

function reportShelfLife(care: Care, { feeder, keeping }: StockCourse, log: Log): void {
  if (feeder.shelfLifeDays !== null) return;
  const values = { feeder: feeder.id, days: keeping.shelfLifeDays };
  log.report('shelf-life-missing', values, care.placeOf(feeder.path));
}

type Missing = StockCourse['missing'];

function reportMissing(
  care: Care,
  course: StockCourse,
  courses: readonly StockCourse[],
  from: EpochDay,
  log: Log,
): void {
  const first = course.shoppingDays[0] ?? null;
  const early = course.missing.filter(({ demand }) => first === null || demand.buyBy < first);
  const later = course.missing.filter((each) => !early.includes(each));
  if (early.length > 0) {
    const values = { feeder: course.feeder.id, missing: total(early), dates: datesOf(early) };
    const shopping = first === null ? null : isoDateOf(first);
    log.report('stock-before-shopping', { ...values, shopping }, care.placeOf([...course.feeder.path, 'in_stock']));
  }
  const reached = new Set<Missing[number]>();
  for (const absence of care.away.filter(({ to }) => to >= from)) {
    const due = later.filter(({ demand }) => waitsFor(course, absence, demand.buyBy, demand.day));
    for (const each of due) reached.add(each);
    if (due.length > 0) reportAbsence(care, course, courses, absence, due, log);
  }
  for (const each of reportShortages(
    care,
    course,
    later.filter((each) => !reached.has(each)),
    log,
  ))
    reached.add(each);
  const rest = later.filter((each) => !reached.has(each));
  if (rest.length > 0) reportSpoils(care, course, rest, log);
}

/** Whether an absence lies between the last purchase before a feed and the feed. */
function waitsFor({ shoppingDays }: StockCourse, absence: CareAbsence, buyBy: EpochDay, day: EpochDay): boolean {
  const bought = shoppingDays.findLast((each) => each <= buyBy) ?? Number.NEGATIVE_INFINITY;
  return bought < absence.from && absence.from <= day;
}

function reportAbsence(
  care: Care,
  course: StockCourse,
  courses: readonly StockCourse[],
  absence: CareAbsence,
  due: Missing,
  log: Log,
): void {
  const bought = course.shoppingDays.findLast((day) => day < absence.from) ?? absence.from;
  const good = bought + course.keeping.shelfLifeDays;
  const longer = courses.find(({ feeder, keeping }) => {
    return (
      feeder.id !== course.feeder.id &&
      sharesEnclosure(care, feeder, course.feeder) &&
      keeping.shelfLifeDays > course.keeping.shelfLifeDays
    );
  });
  const missing = total(due);
  const instead = longer
    ? `, or feed ${longer.feeder.id}, which keeps ${longer.keeping.shelfLifeDays} days, from then on`
    : '';
  const values = {
    feeder: course.feeder.id,
    from: isoDateOf(absence.from),
    to: isoDateOf(absence.to),
    good: isoDateOf(good),
    missing,
    dates: datesOf(due),
    nearest: `${purchases(course, due, absence.to)}${instead}`,
  };
  log.report('absence-outlasts-food', values, care.placeOf(absence.path));
}

/** Whether some enclosure eats both, as the same food. */
function sharesEnclosure(care: Care, one: StockFeeder, other: StockFeeder): boolean {
  return care.enclosures.some(({ feeders }) => {
    const foods = (id: string) => feeders.filter((feeder) => feeder.id === id).map(({ food }) => food);
    return foods(one.id).some((food) => foods(other.id).includes(food));
  });
}

/** The fewest purchases that would cover what is missing, each as late as it may be: by the sitter, then by the household. */
function purchases({ feeder, keeping }: StockCourse, due: Missing, awayTo: EpochDay): string {
  const bought: { by: EpochDay; pieces: number }[] = [];
  for (const { demand, pieces } of due) {
    const last = bought.at(-1);
    if (last && demand.day <= last.by + keeping.shelfLifeDays) last.pieces += pieces;
    else bought.push({ by: demand.buyBy, pieces });
  }
  const words = (wanted: typeof bought): string =>
    wanted.map(({ by, pieces }) => `${pieces} of ${feeder.id} by ${isoDateOf(by)}`).join(' and ');
  const [sitters, own] = [bought.filter(({ by }) => by <= awayTo), bought.filter(({ by }) => by > awayTo)];
  return [
    ...(sitters.length > 0 ? [`let the sitter buy ${words(sitters)}`] : []),
    ...(own.length > 0 ? [`buy ${words(own)} when you are back`] : []),
  ].join(', ');
}

/** Reports, and returns, what is missing because a shortage ended after the last day to shop for it. */
function reportShortages(care: Care, course: StockCourse, missing: Missing, log: Log): Missing {
  return care.shortages
    .filter(({ feeder }) => feeder === course.feeder.id)
    .flatMap(({ from, to, path }) => {
      const bought = (buyBy: EpochDay): EpochDay =>
        course.shoppingDays.findLast((each) => each <= buyBy) ?? Number.NEGATIVE_INFINITY;
      const due = missing.filter(({ demand }) => demand.day > to && bought(demand.buyBy) < from);
      if (due.length === 0) return [];
      const next = course.shoppingDays.find((day) => day > to);
      const values = {
        feeder: course.feeder.id,
        to: isoDateOf(to),
        shopping: next === undefined ? null : isoDateOf(next),
      };
      log.report('stock-after-shortage', { ...values, missing: total(due), dates: datesOf(due) }, care.placeOf(path));
      return due;
    });
}

function reportSpoils(care: Care, course: StockCourse, rest: Missing, log: Log): void {
  const gap = longestShoppingGap(care.shopping.days);
  const lead = Math.max(1, ...rest.map(({ demand }) => demand.day - demand.buyBy));
  const usable = course.keeping.shelfLifeDays - lead + 1;
  const times = usable > 0 ? Math.ceil(7 / usable) : 8;
  const days = evenWeekdays(Math.min(7, times)).map((day) => WEEKDAYS[day] ?? 'mon');
  const nearest =
    times <= 7
      ? `shop ${times === 1 ? 'every week' : `${times} times a week`}, for instance [${days.join(', ')}], or feed what keeps longer`
      : 'feed what keeps longer, or keep a culture of it';
  const values = {
    feeder: course.feeder.id,
    shelfLife: course.keeping.shelfLifeDays,
    gap,
    dates: datesOf(rest),
    nearest,
  };
  log.report('shelf-life-too-short', values, care.placeOf([...course.feeder.path, 'shelf_life']));
}

function total(missing: Missing): number {
  return missing.reduce((all, { pieces }) => all + pieces, 0);
}

function datesOf(missing: Missing): readonly string[] {
  return missing.map(({ demand }) => isoDateOf(demand.day));
}
