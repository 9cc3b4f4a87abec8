/** What is misted together: a pump with every enclosure on its nozzles, a person with one enclosure, or an enclosure that is not misted. */
import type { MistPump, Timer } from '../../hardware/devices.ts';
import type { MinuteWindow } from '../../plan/dial-day.ts';
import type { ClockKind } from '../../plan/plan.ts';
import type { CareEnclosure } from '../../resolve/care.ts';
import type { MistCase, MistMachine } from './day/day-problem.ts';
import type { EnclosureAir } from './enclosure-air.ts';

/** How the water is switched. */
export type MistMeans = 'timer' | 'dial' | 'repeat-cycle' | 'by-hand' | 'none';

export interface MistUnit {
  readonly means: MistMeans;
  /** null where a person mists, or nothing does. */
  readonly pump: MistPump | null;
  readonly timer: Timer | null;
  /** The timer before that one; null on a live outlet. */
  readonly supply: Timer | null;
  /** The clock that entries are read on. */
  readonly clock: ClockKind;
  /** null where nothing is misted. */
  readonly machine: MistMachine | null;
  readonly waterAtMostG: number | null;
  /** In the file's order, each with its air. */
  readonly members: readonly UnitMember[];
}

export interface UnitMember {
  readonly enclosure: CareEnclosure;
  readonly air: EnclosureAir;
}

/** One enclosure over days that are alike for it, on the mist timer's clock; both days inclusive. */
export interface EnclosureSpan {
  readonly fromDay: number;
  readonly toDay: number;
  readonly one: MistCase;
  readonly dayC: number;
  readonly nightC: number;
  readonly roomDayC: number;
  readonly roomHumidity: number;
}

/** Days that are alike for every enclosure of a unit; spans in the order of its members. */
export interface UnitSpan {
  readonly fromDay: number;
  readonly toDay: number;
  readonly spans: readonly EnclosureSpan[];
  /** When its timer has power, on the mist timer's clock; null: always. */
  readonly powered: readonly MinuteWindow[] | null;
}
