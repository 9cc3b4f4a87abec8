/** Keys that are read and checked while nothing is computed from them; each gets a note, never an error. */
import type { Log } from '../diagnostics/log.ts';
import { isRawMap } from './field.ts';
import type { FilePath } from './placed-file.ts';
import type { YamlTree } from './yaml-tree.ts';

/** Key paths, `*` for any entry of a list: `enclosures.*.rest`. */
export const notYetComputed: readonly string[] = [];

/** Notes each key of the list that stands in the file. */
export function noteNotYetComputed(yaml: YamlTree, log: Log, list: readonly string[] = notYetComputed): void {
  for (const pattern of list) {
    const steps = pattern.split('.');
    for (const path of standing(yaml.data, steps, [])) {
      log.report('not-computed-yet', { key: steps.at(-1) ?? '' }, yaml.placeOfKey(path));
    }
  }
}

function standing(data: unknown, steps: readonly string[], path: FilePath): readonly FilePath[] {
  const [step, ...rest] = steps;
  if (step === undefined) return [path];
  if (step === '*')
    return Array.isArray(data) ? data.flatMap((item, index) => standing(item, rest, [...path, index])) : [];
  return isRawMap(data) && Object.hasOwn(data, step) ? standing(data[step], rest, [...path, step]) : [];
}
