import type { DialPlan } from '../plan/plan.ts';

/** The words of the charts in one language. */
export interface ChartWords {
  readonly yearTitle: (device: string) => string;
  readonly yearDescription: (dial: DialPlan) => string;
  readonly legendSetting: string;
  readonly legendTarget: string;
  readonly legendError: string;
  readonly legendSun: string;
  readonly legendEnvelope: string;
  /** Short name of a month, 0 for January. */
  readonly month: (index: number) => string;
  readonly hours: (hours: number) => string;
  readonly shortDate: (isoDate: string) => string;
}
