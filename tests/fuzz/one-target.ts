/** A process's share of one target's cases; what came of them goes to the parent. */
import { campaign, type Target } from './campaign.ts';
import { earlierPlans } from './earlier-plans.ts';
import { households } from './households.ts';
import { profiles } from './profiles.ts';
import { readings } from './readings.ts';
import { requests } from './requests.ts';

const TARGETS: Readonly<Record<string, Target>> = { households, profiles, earlierPlans, readings, requests };
/** Cases are dealt out in blocks, so that each process gets some of every kind. */
const BLOCK = 20;

const [name = '', cases = '', seed = '1', share = '0', shares = '1', only] = process.argv.slice(2);
const target = TARGETS[name];
if (!target) throw new Error(`no target is called ${name}`);
const count = Math.round(Number(cases) * target.share);

function* indexes(): Generator<number> {
  if (only !== undefined) yield Number(only);
  else
    for (let index = 0; index < count; index++)
      if (Math.floor(index / BLOCK) % Number(shares) === Number(share)) yield index;
}

let done = 0;
const counts = await campaign(target, Number(seed), indexes(), {
  done: (index) => {
    if (++done % BLOCK === 0) process.send?.({ index, done });
  },
});
process.send?.({ name: target.name, counts }, () => process.exit(0));
