import { Log } from '../diagnostics/log.ts';
import { emitAll } from '../emit/emitters.ts';
import type { Plan } from '../plan/plan.ts';
import { resultFolderName } from './files.ts';
import type { HouseholdOptions } from './household-options.ts';
import { earlierDigest, type HouseholdRun, runHousehold } from './household-run.ts';
import { notingDisk } from './kept-results.ts';
import { underLock } from './lock.ts';
import { checkPageOptions, fontFiles, pageWish } from './page-options.ts';
import { guardName, otherFiles, type Product, type Published, publish } from './publish.ts';
import { keepPlan } from './standing-plan.ts';
import type { World } from './world.ts';

export interface CompiledHousehold {
  readonly run: HouseholdRun;
  /** null where the household cannot be used; then nothing was written. */
  readonly written: {
    readonly plan: Plan;
    readonly products: readonly Product[];
    readonly published: Published;
  } | null;
}

/**
 * Compiles one household file and puts its results in place. The folder is locked only while they are put there: where another run has
 * changed the plan that this one began from, this one begins again.
 *
 * @returns null where the file cannot be read, which has been said
 */
export async function compileHousehold(
  file: string,
  options: HouseholdOptions,
  world: World,
  version: string,
): Promise<CompiledHousehold | null> {
  checkPageOptions(options);
  const fonts = fontFiles(options.font ?? [], world);
  for (;;) {
    const { disk, inputs } = notingDisk(world, options.out, resultFolderName(file));
    const read = runHousehold(file, { ...options, isWriting: true }, { ...world, disk }, version);
    if (!read) return null;
    const { plan } = read.compiled;
    if (!plan) return { run: read, written: null };
    guardName(read.name);
    const log = new Log();
    const products = await emitAll(plan, { pdf: options.pdf, page: pageWish(options, plan), fonts, log });
    const run = withMessages(read, log);
    const published = await underLock(options.out, run.name, world, async () =>
      earlierDigest(options.out, run.name, world) === run.earlierDigest
        ? publish(options.out, run.name, [...products, ...otherFiles(options.out, run.name, world.disk)], world.disk)
        : null,
    );
    if (!published) continue;
    const planFile = products.find(({ path }) => path === 'plan.json');
    if (planFile && options.language === undefined)
      keepPlan(options.out, read.name, { content: planFile.content, plan }, read, inputs(), world, version);
    return { run, written: { plan, products, published } };
  }
}

/** What there is to say of the pages stands behind what there is to say of the household. */
function withMessages(run: HouseholdRun, log: Log): HouseholdRun {
  const diagnostics = [...run.compiled.diagnostics, ...log.sorted()];
  return { ...run, compiled: { ...run.compiled, diagnostics } };
}
