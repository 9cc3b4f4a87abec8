/** Shares of feeders: of each stream of an enclosure, 100 %. */
import type { Findings, RawPart } from './raw-file.ts';

/** Finds shares of feeders that do not come to a whole, stream by stream. */
export function checkShares(root: RawPart, findings: Findings): void {
  for (const enclosure of root.at('enclosures').items) {
    const feeders = enclosure.at('feeders').items;
    const foodOf = (feeder: RawPart): string => feeder.at('food').text ?? 'insects';
    for (const food of new Set(feeders.map(foodOf))) {
      checkStream(
        food,
        feeders.filter((feeder) => foodOf(feeder) === food),
        findings,
      );
    }
  }
}

/** Feeders without a share take what is left; a stand-in without one takes nothing. */
function checkStream(food: string, feeders: readonly RawPart[], findings: Findings): void {
  const said = feeders.filter((feeder) => feeder.at('share').stands);
  const shares = said.map((feeder) => feeder.at('share').quantity('share'));
  const last = said.at(-1);
  if (!last || shares.includes(null)) return;
  const sum = shares.reduce<number>((total, share) => total + (share ?? 0), 0);
  const open = feeders.some((feeder) => !feeder.at('share').stands && !isStandIn(feeder));
  if (open ? sum < 1 - 1e-6 : Math.abs(sum - 1) < 1e-3) return;
  const percent = String(Math.round(sum * 1000) / 10);
  const ids = said.map((feeder) => feeder.at('id').text ?? 'a feeder');
  const corrected = wholePercents(shares.map((share) => share ?? 0)).map((share, i) => `${ids[i] ?? ''} ${share} %`);
  findings.say('shares-sum', { food, percent, feeders: ids, open, corrected }, last.at('share').path);
}

/** Returns shares in the same proportions as whole percents that come to 100; none where they come to nothing. */
function wholePercents(shares: readonly number[]): readonly number[] {
  const sum = shares.reduce((total, share) => total + share, 0);
  if (sum <= 0) return [];
  const exact = shares.map((share) => (share / sum) * 100);
  const left = 100 - exact.reduce((total, share) => total + Math.floor(share), 0);
  const raised = exact
    .map((share, i) => ({ i, rest: share - Math.floor(share) }))
    .sort((a, b) => b.rest - a.rest || a.i - b.i)
    .slice(0, left)
    .map(({ i }) => i);
  return exact.map((share, i) => Math.floor(share) + (raised.includes(i) ? 1 : 0));
}

function isStandIn(feeder: RawPart): boolean {
  return ['yes', 'on', true].includes(feeder.at('stand_in').data as string | boolean);
}
