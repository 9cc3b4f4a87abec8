/** What one line of a profile says about another. */
import { nearestSpelling } from '../basics/nearest-spelling.ts';
import type { Log } from '../diagnostics/log.ts';
import { mustExist } from './id-checks.ts';
import { Findings, RawPart } from './raw-file.ts';
import { checkTargets, plain } from './target-checks.ts';
import type { YamlTree } from './yaml-tree.ts';

/** Sources that need no citation. */
const PLAIN_SOURCES = ['practice', 'ours'] as const;

/** Reports every such problem; false where there is one. */
export function checkProfileReferences(yaml: YamlTree, log: Log): boolean {
  const root = new RawPart(yaml.data);
  const findings = new Findings(yaml, log);
  checkTargets(root, findings);
  checkSources(root, findings);
  const stages = plain(root.at('stages'));
  const names = stages.entries.map(([name]) => name).filter((name) => name !== 'source' && name !== 'why');
  for (const name of names) mustExist(plain(stages.at(name)).at('like'), names, 'stage', [], findings);
  return findings.sound;
}

function checkSources(root: RawPart, findings: Findings): void {
  const known = [...root.at('sources').entries.map(([key]) => key), ...PLAIN_SOURCES];
  for (const [key, part] of root.entries) if (key !== 'sources') checkSource(part, key, known, findings);
}

function checkSource(part: RawPart, key: string, known: readonly string[], findings: Findings): void {
  const source = key === 'source' ? part.text : null;
  if (source !== null && !known.includes(source)) {
    findings.say('source-unknown', { source, known, nearest: nearestSpelling(source, known) }, part.path);
  }
  for (const [below, inner] of part.entries) checkSource(inner, below, known, findings);
  for (const inner of part.items) checkSource(inner, '', known, findings);
}
