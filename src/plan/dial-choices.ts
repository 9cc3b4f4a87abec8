/** What a dial would come to if one thing about it were otherwise: the rows of the table that `why` prints. */

export type DialChoiceKind =
  | 'as-planned'
  | 'one-more-setting'
  | 'any-day'
  | 'any-spacing'
  | 'any-jump'
  | 'any-hour'
  | 'finer-pins'
  | 'to-the-minute'
  | 'own-dial';

export interface DialChoice {
  readonly kind: DialChoiceKind;
  /** The lamp that gets a dial of its own as `ENCLOSURE/LAMP`; else empty. */
  readonly lamp: string;
  /** Length of a pin. */
  readonly stepMinutes: number;
  /** Settings in the plan. */
  readonly settings: number;
  /** Worst and mean error of the day length; null where no daylight or plant lamp hangs on the dial. */
  readonly day: { readonly worstMinutes: number; readonly meanMinutes: number } | null;
  /** Worst error of the basking and UV hours that the dial's other lamps have; null where it has none. */
  readonly insetWorstMinutes: number | null;
}
