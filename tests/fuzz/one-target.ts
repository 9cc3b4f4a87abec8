/** One target's share of a long run. */
import { campaign, type Target } from './campaign.ts';
import { earlierPlans } from './earlier-plans.ts';
import { households } from './households.ts';
import { profiles } from './profiles.ts';
import { readings } from './readings.ts';
import { requests } from './requests.ts';

const TARGETS: Readonly<Record<string, Target>> = { households, profiles, earlierPlans, readings, requests };
const MEMORY_MB = 512;

const [name = '', cases = '', seed = '1', only] = process.argv.slice(2);
const target = TARGETS[name];
if (!target) throw new Error(`no target is called ${name}`);
const count = Math.round(Number(cases) * target.share);
const indexes = only === undefined ? Array.from({ length: count }, (_, index) => index) : [Number(only)];

const counts = await campaign(target, Number(seed), indexes, {
  done: (index) => {
    if (index % 20 === 0) process.send?.(index);
  },
});
const endings = Object.entries(counts.endings).sort(([a], [b]) => (a < b ? -1 : 1));
console.log(
  `${target.name}: ${counts.cases} cases; ${endings.map(([ending, times]) => `${times} ${ending}`).join(', ')}; ${counts.faults.length} faults; slowest ${counts.slowestMs.toFixed(0)} ms; at most ${counts.mostMemoryMb.toFixed(0)} MB`,
);
for (const { index, what } of counts.faults)
  console.log(`  case ${index}: ${what.split('\n').slice(0, 6).join('\n    ')}`);
process.exit(counts.faults.length > 0 || counts.mostMemoryMb > MEMORY_MB ? 1 : 0);
