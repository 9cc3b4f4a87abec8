/** How far the mists of an enclosure's day lie outside the cadence that it asks for, to either side. */
import type { SetDay } from './member-sets.ts';

/** 0 and 0 where the cadence holds, or none is asked for. */
export interface CadenceOff {
  readonly under: number;
  readonly over: number;
}

type Asked = Pick<SetDay, 'runs'> & { readonly span: { readonly one: Pick<SetDay['span']['one'], 'cadence'> } };

/** Returns the mists that a day has too few or too many. */
export function countOff({ span, runs }: Asked): CadenceOff {
  const { cadence } = span.one;
  if (!cadence) return { under: 0, over: 0 };
  const [least, most] = cadence.perDay;
  return { under: Math.max(0, least - runs.length), over: Math.max(0, runs.length - most) };
}

/** Returns the seconds by which mists of a day are too short and too long, of each the most. */
export function lengthOff({ span, runs }: Asked): CadenceOff {
  const { cadence } = span.one;
  if (!cadence) return { under: 0, over: 0 };
  const [least, most] = cadence.seconds;
  return {
    under: Math.max(0, ...runs.map(({ seconds }) => least - seconds)),
    over: Math.max(0, ...runs.map(({ seconds }) => seconds - most)),
  };
}
