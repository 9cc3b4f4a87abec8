/** Puts the problems that the schemas found into the log, each where it stands. */
import type { Log } from '../diagnostics/log.ts';
import { isRawMap, type Problem } from './field.ts';
import { keyMeant } from './meant.ts';
import type { FilePath } from './placed-file.ts';
import type { YamlTree } from './yaml-tree.ts';

/** Reports problems of a file, each with its place; a key that stands there misspelt, with the nearest spelling, and not as missing too. */
export function reportProblems(problems: readonly Problem[], tree: YamlTree, log: Log): void {
  const told = problems.map((problem) => {
    const unknown = problem.code === 'unknown-key' ? spelled(problem, tree.data) : null;
    return { ...problem, values: unknown ?? problem.values, nearest: unknown?.nearest ?? null };
  });
  const misspelt = new Set(
    told.flatMap(({ path, nearest }) => (nearest === null ? [] : [JSON.stringify([...path.slice(0, -1), nearest])])),
  );
  for (const problem of told) {
    if (problem.code === 'key-missing' && misspelt.has(JSON.stringify(problem.path))) continue;
    log.report(problem.code, problem.values as never, placeOf(problem, tree));
  }
}

function placeOf({ code, path }: Problem, tree: YamlTree) {
  if (code === 'key-missing') return tree.placeOfKey(path.slice(0, -1));
  return code === 'unknown-key' ? tree.placeOfKey(path) : tree.placeOf(path);
}

/** Keys that stand beside it already are not what was meant. */
function spelled({ values, path }: Problem, data: unknown) {
  const { key, of, known } = values as { readonly key: string; readonly of: string; readonly known: readonly string[] };
  const beside = at(data, path.slice(0, -1));
  const free = known.filter((each) => !(isRawMap(beside) && Object.hasOwn(beside, each)));
  return { key, of, known: free, nearest: keyMeant(key, free) };
}

function at(data: unknown, path: FilePath): unknown {
  let here = data;
  for (const step of path) here = Array.isArray(here) ? here[Number(step)] : isRawMap(here) ? here[step] : undefined;
  return here;
}
