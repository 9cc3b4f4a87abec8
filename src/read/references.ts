/** What one line of a household says about another: ids that exist, once each; outlets that reach the wall; dates in order; sums. */
import type { Log } from '../diagnostics/log.ts';
import { checkDates } from './date-checks.ts';
import { checkDevices } from './device-checks.ts';
import { checkIds } from './id-checks.ts';
import { Findings, RawPart } from './raw-file.ts';
import { checkShares } from './share-checks.ts';
import type { YamlTree } from './yaml-tree.ts';

/** Reports every such problem that the household's text alone can show; false where there is one. */
export function checkHouseholdReferences(yaml: YamlTree, log: Log): boolean {
  const root = new RawPart(yaml.data);
  const findings = new Findings(yaml, log);
  for (const check of [checkIds, checkDevices, checkDates, checkShares]) check(root, findings);
  return findings.sound;
}
