/** What a plan says of people's work: chores, absences, and the events of their calendars. */
import type { IsoDate } from '../basics/civil.ts';

/** A chore with all its dates. */
export interface Chore {
  /** `ENCLOSURE/CHORE`; without the first part where it is the household's. */
  readonly id: string;
  readonly title: string;
  readonly kind: string;
  readonly who: string;
  readonly minutes: number;
  readonly enclosure: string | null;
  /** Who says so: `household`, `practice` (common practice, no source), `ours`, or a citation. */
  readonly source?: string;
  readonly dates: readonly IsoDate[];
  /** Those that do not stand on the date they are due. */
  readonly moved: readonly { readonly due: IsoDate; readonly on: IsoDate }[];
}

/** Days on which the keeper is away, and those on which the sitter comes. */
export interface Absence {
  readonly from: IsoDate;
  readonly to: IsoDate;
  /** Empty where nobody comes. */
  readonly sitter: string;
  readonly visits: readonly IsoDate[];
}

/** One event of a person's calendar, single or recurring. */
export interface PlanEvent {
  /** Never given twice, whatever becomes of the event. */
  readonly uid: string;
  /** How often it has been changed (RFC 5545 SEQUENCE). */
  readonly sequence: number;
  /** When it was last changed, `YYYY-MM-DDTHH:MM:SSZ`. */
  readonly stamp: string;
  readonly status: 'CONFIRMED' | 'CANCELLED';
  readonly title: string;
  readonly description: string;
  readonly category: string;
  /** `YYYY-MM-DDTHH:MM` in the plan's zone, `YYYY-MM-DD` where all day. */
  readonly start: string;
  readonly minutes: number;
  readonly allDay: boolean;
  /** An RFC 5545 recurrence rule without its end; null: a single event. */
  readonly rule: string | null;
  /** The last start that the rule may give, in the form of `start`; null: a single event. */
  readonly until: string | null;
  /** Starts of the rule that are left out, in the form of `start`. */
  readonly exdates: readonly string[];
  /** Before the start; null: no alarm. */
  readonly alarmMinutes: number | null;
  /** Id of the person. */
  readonly for: string;
  readonly kind: string;
  readonly task: string;
  readonly slot: number;
}
