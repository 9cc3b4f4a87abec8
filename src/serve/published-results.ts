/** The results that stand in a household's folder, read as one: all of one compile, whatever another run does meanwhile. */
import type * as fs from 'node:fs';
import { join } from 'node:path';
import type { Plan } from '../plan/plan.ts';
import { readPlan } from '../plan/read-plan.ts';

export type ResultsDisk = Pick<typeof fs, 'readFileSync' | 'readdirSync' | 'realpathSync'>;

export interface Results {
  readonly plan: Plan;
  /** Bytes by path relative to the folder; plan.json and what no phone asks for are left out. */
  readonly files: ReadonlyMap<string, Buffer>;
}

export type ResultsRead =
  | { readonly ok: true; readonly results: Results }
  | { readonly ok: false; readonly reason: string };

const SERVED =
  /^(settings\.txt|changes\.txt|[a-z0-9-]+\.pdf|(dials|charts)\/[^/]+\.svg|calendar\/[^/]+\.ics|handover\/[^/]+\.(pdf|ics))$/;
/** The folder is a link that another run may turn to new results at any moment. */
const TRIES = 4;

/** Returns the results of a folder, or why there are none. */
export function readResults(folder: string, disk: ResultsDisk): ResultsRead {
  let reason = '';
  for (let tries = 0; tries < TRIES; tries++) {
    try {
      return readOnce(disk.realpathSync(folder), disk);
    } catch (error) {
      reason = error instanceof Error ? error.message : String(error);
    }
  }
  return { ok: false, reason };
}

function readOnce(folder: string, disk: ResultsDisk): ResultsRead {
  const plan = readPlan(disk.readFileSync(join(folder, 'plan.json'), 'utf8'));
  if (!plan.ok) return { ok: false, reason: `plan.json cannot be used: ${plan.reason}` };
  const files = new Map(pathsIn(folder, '', disk).map((path) => [path, disk.readFileSync(join(folder, path))]));
  return { ok: true, results: { plan: plan.plan, files } };
}

function pathsIn(folder: string, prefix: string, disk: ResultsDisk): readonly string[] {
  return disk
    .readdirSync(join(folder, prefix), { withFileTypes: true })
    .flatMap((entry) => {
      const path = `${prefix}${entry.name}`;
      if (entry.isDirectory()) return prefix === '' ? pathsIn(folder, `${path}/`, disk) : [];
      return entry.isFile() && SERVED.test(path) ? [path] : [];
    })
    .sort();
}
