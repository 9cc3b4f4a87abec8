import { summaryText } from '../emit/text/summary.ts';
import { compileHousehold } from './household-compile.ts';
import type { HouseholdOptions } from './household-options.ts';
import { type HouseholdRun, runHousehold } from './household-run.ts';
import { exitCodeOf, sayDiagnostics } from './run-messages.ts';
import { UsageError } from './usage.ts';
import { EXIT, type World } from './world.ts';

export interface CompileOptions extends HouseholdOptions {
  readonly show?: 'household' | 'care' | 'plan';
  /** `2/8`: the second of eight parts of the files. */
  readonly part?: string;
  /** Households compiled at once. */
  readonly jobs?: string;
}

/** Compiles one household or many, and writes what comes of it. Returns the exit code. */
export async function run(
  args: readonly string[],
  options: CompileOptions,
  world: World,
  version: string,
): Promise<number> {
  const [file = ''] = args;
  if (args.length > 1 || options.part !== undefined || isFolder(file, world)) {
    if (options.show) throw new UsageError('--show prints a stage of one file');
    const { compileMany } = await import('./compile-many.ts');
    return compileMany(args, options, world, version);
  }
  if (options.show) return show(options.show, runHousehold(file, options, world, version), options, world);
  return compileOne(file, options, world, version);
}

function isFolder(path: string, world: World): boolean {
  try {
    return world.disk.statSync(path).isDirectory();
  } catch {
    return false;
  }
}

async function compileOne(file: string, options: CompileOptions, world: World, version: string): Promise<number> {
  const compiled = await compileHousehold(file, options, world, version);
  if (!compiled) return EXIT.unusable;
  sayDiagnostics(compiled.run, world);
  if (!compiled.written) return EXIT.unusable;
  const { plan, products, published } = compiled.written;
  world.out(
    options.json
      ? `${JSON.stringify({ folder: published.folder, changed: published.changed, files: products.map(({ path }) => path), warnings: plan.warnings })}\n`
      : summaryText(plan, published.folder),
  );
  return exitCodeOf(compiled.run.compiled.diagnostics, options.strict === true);
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
