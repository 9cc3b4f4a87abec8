import { emitAll } from '../emit/emitters.ts';
import { summaryText } from '../emit/text/summary.ts';
import { exitCodeOf, type HouseholdRun, runHousehold, sayDiagnostics } from './household-run.ts';
import { underLock } from './lock.ts';
import type { CommonOptions } from './program.ts';
import { otherFiles, publish } from './publish.ts';
import { EXIT, type World } from './world.ts';

export interface CompileOptions extends CommonOptions {
  readonly out: string;
  readonly show?: 'household' | 'care' | 'plan';
}

export async function run(
  args: readonly string[],
  options: CompileOptions,
  world: World,
  version: string,
): Promise<number> {
  const [file = ''] = args;
  if (options.show) return show(options.show, runHousehold(file, options, world, version), options, world);
  return underLock(options.out, world, () => compileOne(file, options, world, version));
}

async function compileOne(file: string, options: CompileOptions, world: World, version: string): Promise<number> {
  const run = runHousehold(file, { ...options, isWriting: true }, world, version);
  if (!run) return EXIT.unusable;
  sayDiagnostics(run, world);
  const { plan, diagnostics } = run.compiled;
  if (!plan) return EXIT.unusable;
  const products = await emitAll(plan, { pdf: true });
  const published = publish(
    options.out,
    run.name,
    [...products, ...otherFiles(options.out, run.name, world.disk)],
    world.disk,
  );
  world.out(
    options.json
      ? `${JSON.stringify({ folder: published.folder, changed: published.changed, files: products.map(({ path }) => path), warnings: plan.warnings })}\n`
      : summaryText(plan, published.folder),
  );
  return exitCodeOf(diagnostics, options.strict === true);
}

function show(
  stage: 'household' | 'care' | 'plan',
  run: HouseholdRun | null,
  options: CompileOptions,
  world: World,
): number {
  if (!run) return EXIT.unusable;
  sayDiagnostics(run, world);
  const product = { household: run.compiled.household?.tree, care: run.compiled.care, plan: run.compiled.plan }[stage];
  if (product) world.out(`${JSON.stringify(product, null, 2)}\n`);
  return exitCodeOf(run.compiled.diagnostics, options.strict === true);
}
