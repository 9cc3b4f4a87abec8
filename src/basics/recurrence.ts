/**
 * Recurrence rules of RFC 5545, expanded on dates that carry no time zone: a local date and minute stand in for UTC, so that
 * no zone table and no process setting can move an occurrence. The one home of rrule.
 */
import rrule from 'rrule';

export interface Recurrence {
  /** `YYYY-MM-DD` or `YYYY-MM-DDTHH:MM`, on one clock throughout; the same form for every date here. */
  readonly start: string;
  /** Without `RRULE:`; null for a single occurrence. */
  readonly rule: string | null;
  /** The last occurrence wanted, inclusive; null where the rule itself counts or ends. */
  readonly until: string | null;
  readonly exdates: readonly string[];
}

/**
 * Returns the occurrences in order, written like `start`. A rule without an end of its own must come with `until`.
 * Source: RFC 5545 (2009), sections 3.3.10 and 3.8.5.1.
 */
export function expandRecurrence({ start, rule, until, exdates }: Recurrence): readonly string[] {
  const left = new Set(exdates);
  if (rule === null) return left.has(start) ? [] : [start];
  const options = rrule.RRule.parseString(rule);
  const end = until === null ? {} : { until: pseudoUtc(until) };
  const dates = new rrule.RRule({ ...options, ...end, dtstart: pseudoUtc(start) }).all();
  return dates.map((date) => date.toISOString().slice(0, start.length)).filter((text) => !left.has(text));
}

function pseudoUtc(local: string): Date {
  return new Date(local.length === 10 ? `${local}T00:00Z` : `${local}Z`);
}
