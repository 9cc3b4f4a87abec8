/** Shares of feeders: of each stream of an enclosure, 100 %. */
import type { Findings, RawPart } from './raw-file.ts';

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
  findings.say('shares-sum', { food, percent, feeders: ids, open }, last.at('share').path);
}

function isStandIn(feeder: RawPart): boolean {
  return ['yes', 'on', true].includes(feeder.at('stand_in').data as string | boolean);
}
