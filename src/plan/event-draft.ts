import type { PlanEvent } from './plan.ts';

/** An event that has no identity yet: what it says and when, before it is matched with the earlier plan's. */
export type EventDraft = Omit<PlanEvent, 'uid' | 'sequence' | 'stamp' | 'status'>;
