/** Who said a target, in words. */
import type { TargetRecord } from '../../plan/plan.ts';

/** Returns for instance `from the profile: profiles/x.yaml:12, common practice, no source`. */
export function originWords({ origin }: TargetRecord): string {
  const where =
    origin.file === undefined ? '' : `${origin.file}${origin.line === undefined ? '' : `:${origin.line}`}, `;
  const source =
    origin.citation ??
    (origin.source === 'practice'
      ? 'common practice, no source'
      : origin.source === 'ours'
        ? 'chosen for this tool'
        : origin.source);
  const read = origin.read === 'memory' ? ' (from memory, not opened)' : '';
  const said = { file: 'said by your file', profile: 'from the profile', default: 'a default' }[origin.kind];
  return `${said}: ${where}${source === undefined ? 'your own value' : `${source}${read}`}`;
}
