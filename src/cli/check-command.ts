import { renderJson } from '../diagnostics/render.ts';
import { countsText } from '../emit/text/summary.ts';
import { exitCodeOf, runHousehold, sayDiagnostics } from './household-run.ts';
import type { CommonOptions } from './program.ts';
import { EXIT, type World } from './world.ts';

export async function run(
  args: readonly string[],
  options: CommonOptions & { readonly out: string },
  world: World,
  version: string,
): Promise<number> {
  const [file = ''] = args;
  const run = runHousehold(file, options, world, version);
  if (!run) return EXIT.unusable;
  const { diagnostics, plan } = run.compiled;
  if (options.json) world.out(`${renderJson(diagnostics)}\n`);
  else sayDiagnostics(run, world);
  if (!options.json) world.out(countsText(file, diagnostics, plan !== null));
  return exitCodeOf(diagnostics, options.strict === true);
}
