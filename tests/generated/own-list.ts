/** The plan's own list of occurrences, made with a plain loop over days and nothing of the code under test. */
import type { PlanEvent } from '../../src/plan/plan.ts';

export interface Occurrence {
  readonly uid: string;
  /** Local: `2027-01-01` where all day, else `2027-01-01T08:15`. */
  readonly start: string;
  readonly title: string;
}

const WEEKDAYS = ['SU', 'MO', 'TU', 'WE', 'TH', 'FR', 'SA'];
const DAY_MS = 86_400_000;

/** Returns every occurrence of the events that stand, sorted. */
export function ownList(events: readonly PlanEvent[]): readonly Occurrence[] {
  const standing = events.filter(({ status }) => status === 'CONFIRMED');
  return sorted(
    standing.flatMap((event) => loopOverDays(event).map((start) => ({ uid: event.uid, start, title: event.title }))),
  );
}

export function sorted(list: readonly Occurrence[]): readonly Occurrence[] {
  const key = ({ uid, start }: Occurrence): string => `${start} ${uid}`;
  return [...list].sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
}

/** Walks day by day from the first to the last date and asks of each whether the rule holds on it. */
export function loopOverDays({
  start,
  rule,
  until,
  exdates,
}: Pick<PlanEvent, 'start' | 'rule' | 'until' | 'exdates'>): readonly string[] {
  if (rule === null) return [start];
  const time = start.slice(10);
  const first = Date.parse(`${start.slice(0, 10)}T00:00Z`);
  const last = Date.parse(`${(until ?? start).slice(0, 10)}T00:00Z`);
  const holds = ruleOn(rule, first);
  const found: string[] = [];
  for (let day = first; day <= last; day += DAY_MS) {
    const text = new Date(day).toISOString().slice(0, 10) + time;
    if (holds(day) && !exdates.includes(text)) found.push(text);
  }
  return found;
}

function ruleOn(rule: string, first: number): (day: number) => boolean {
  const part = (name: string): string | undefined => new RegExp(`(?:^|;)${name}=([^;]+)`).exec(rule)?.[1];
  const interval = Number(part('INTERVAL') ?? 1);
  const daysSince = (day: number): number => Math.round((day - first) / DAY_MS);
  switch (part('FREQ')) {
    case 'DAILY':
      return (day) => daysSince(day) % interval === 0;
    case 'WEEKLY':
      return (day) => WEEKDAYS[new Date(day).getUTCDay()] === part('BYDAY') && daysSince(day) % (7 * interval) === 0;
    case 'MONTHLY':
      return (day) => interval === 1 && new Date(day).getUTCDate() === Number(part('BYMONTHDAY'));
    default:
      throw new Error(`a rule that no plan writes: ${rule}`);
  }
}
