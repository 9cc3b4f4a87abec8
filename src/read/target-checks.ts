/** Targets that contradict themselves, in a profile or a household alike. */
import type { Dimension } from '../basics/quantity.ts';
import type { Findings, RawPart } from './raw-file.ts';

/** Finds targets whose ends are swapped, and stages that take each other's values in a circle. */
export function checkTargets(targets: RawPart, findings: Findings): void {
  const photoperiod = plain(targets.at('photoperiod'));
  ordered(photoperiod, 'shortest', 'longest', 'time', findings);
  ordered(photoperiod, 'at_least', 'at_most', 'time', findings);
  ordered(plain(targets.at('temperature')), 'never_below', 'never_above', 'temperature', findings);
  ordered(plain(targets.at('humidity')), 'floor', 'ceiling', 'share', findings);
  checkLike(plain(targets.at('stages')), findings);
}

/** Out of `{ value: … }`, where it stands in one. */
export function plain(part: RawPart): RawPart {
  return part.at('value').stands ? part.at('value') : part;
}

function ordered(map: RawPart, lowKey: string, highKey: string, dimension: Dimension, findings: Findings): void {
  const [low, high] = [plain(map.at(lowKey)), plain(map.at(highKey))];
  const [least, most] = [low.quantity(dimension), high.quantity(dimension)];
  if (least === null || most === null || least <= most) return;
  findings.say('lengths-out-of-order', { low: low.text ?? '', high: high.text ?? '', lowKey, highKey }, low.path);
}

/** Each circle is said once, at its first stage in the file. */
function checkLike(stages: RawPart, findings: Findings): void {
  const likeOf = new Map(stages.entries.map(([name, stage]) => [name, plain(stage).at('like')] as const));
  const said = new Set<string>();
  for (const name of likeOf.keys()) {
    const chain = said.has(name) ? null : circle(name, likeOf);
    if (!chain) continue;
    for (const each of chain) said.add(each);
    findings.say('like-circle', { chain: [...chain, name] }, likeOf.get(name)?.path ?? stages.path);
  }
}

function circle(start: string, likeOf: ReadonlyMap<string, RawPart>): readonly string[] | null {
  const chain = [start];
  for (let name = likeOf.get(start)?.text; name; name = likeOf.get(name)?.text) {
    if (name === start) return chain;
    if (chain.includes(name)) return null;
    chain.push(name);
  }
  return null;
}
