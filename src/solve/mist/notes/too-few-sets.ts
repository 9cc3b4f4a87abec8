/** What fewer sets of mists than the days ask for leave undone, in words. */

/** Exceeded limits weigh a thousand each; one of shortfall is ten points of humidity. */
const LIMIT_WEIGHT = 1000;
const POINTS = 10;

export interface TooFewSets {
  /** What the worst days do, for instance `miss their humidity targets by 6.9 points`. */
  readonly worst: string;
  /** What they would do with a set of their own. */
  readonly alone: string;
}

/** Points of humidity under which no more sets are worth the work: half a point. */
const LEAST_POINTS = 0.5;

/** Returns both in words; null where a set of their own would not keep more limits or come nearer by half a point. */
export function tooFewSets(worst: number, alone: number): TooFewSets | null {
  const [is, could] = [partsOf(worst), partsOf(alone)];
  const isNearer = is.points - could.points >= LEAST_POINTS - 1e-9;
  if (is.limits < could.limits || (is.limits === could.limits && !isNearer)) return null;
  return { worst: wordsOf(is, false), alone: wordsOf(could, true) };
}

interface Undone {
  readonly limits: number;
  readonly points: number;
}

function partsOf(weight: number): Undone {
  const limits = Math.floor(weight / LIMIT_WEIGHT);
  return { limits, points: Math.round((weight - limits * LIMIT_WEIGHT) * POINTS * 10) / 10 };
}

function wordsOf({ limits, points }: Undone, isAgain: boolean): string {
  const [target, amount] = [isAgain ? 'them' : 'their humidity targets', points === 1 ? '1 point' : `${points} points`];
  const words = [
    ...(limits > 0 ? [`exceed ${limits === 1 ? '1 limit' : `${limits} limits`}`] : []),
    ...(points > 0 ? [`miss ${target} by ${amount}`] : []),
  ];
  return words.length === 0 ? 'meet everything' : words.join(' and ');
}
