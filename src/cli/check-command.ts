import { renderJson } from '../diagnostics/render.ts';
import { countsText } from '../emit/text/summary.ts';
import { exitCodeOf, sayDiagnostics, type Told } from './run-messages.ts';
import { standingRun } from './standing-plan.ts';
import { todayOf } from './today-option.ts';
import type { CommonOptions } from './usage.ts';
import { EXIT, type World } from './world.ts';

/** Compiles without writing, and says all there is to say. Returns the exit code. */
export async function run(
  args: readonly string[],
  options: CommonOptions & { readonly out: string },
  world: World,
  version: string,
): Promise<number> {
  const [file = ''] = args;
  const run = await checked(file, options, world, version);
  if (!run) return EXIT.unusable;
  const { diagnostics } = run.compiled;
  if (options.json) world.out(`${renderJson(diagnostics)}\n`);
  else sayDiagnostics(run, world);
  if (!options.json) world.out(countsText(file, diagnostics, run.isPlanned));
  return exitCodeOf(diagnostics, options.strict === true);
}

/** The plan that stands where nothing has changed, else all of it anew; null where the file cannot be read, which has been said. */
async function checked(
  file: string,
  options: CommonOptions & { readonly out: string },
  world: World,
  version: string,
): Promise<(Told & { readonly isPlanned: boolean }) | null> {
  const standing = standingRun(file, options.out, todayOf(options.today, world), world, version);
  if (standing) return { ...standing, isPlanned: true };
  const { runHousehold } = await import('./household-run.ts');
  const run = runHousehold(file, options, world, version);
  return run && { ...run, isPlanned: run.compiled.plan !== null };
}
