/**
 * What outlasts a run of the server: the token, and when each feed last changed. It stands in the keeper's own state folder and never beside
 * the results, which people copy to other machines and to the web.
 */
import { createHash } from 'node:crypto';
import type * as fs from 'node:fs';
import { join } from 'node:path';
import { freshToken, isToken } from './token.ts';

export interface FeedState {
  readonly etag: string;
  readonly modifiedSecond: number;
}

export interface ServeState {
  /** Absolute path of the household file. */
  readonly household: string;
  readonly planId: string;
  readonly token: string;
  /** By file name. */
  readonly feeds: Readonly<Record<string, FeedState>>;
}

export type StateDisk = Pick<
  typeof fs,
  'readFileSync' | 'writeFileSync' | 'renameSync' | 'mkdirSync' | 'readdirSync' | 'chmodSync' | 'existsSync'
>;

const OWNER_FILE = 0o600;
const OWNER_FOLDER = 0o700;

/** Returns the folder for state by the system's own custom: XDG_STATE_HOME, LOCALAPPDATA on Windows, else ~/.local/state. */
export function stateFolder(
  env: Readonly<Record<string, string | undefined>>,
  home: string,
  platform: NodeJS.Platform,
): string {
  const base = env.XDG_STATE_HOME || (platform === 'win32' ? env.LOCALAPPDATA : undefined);
  return join(base || join(home, '.local', 'state'), 'dewdial');
}

/** A household is known by its path; where it was moved, by its plan's id. */
export interface Household {
  readonly path: string;
  readonly planId: string;
}

/** Returns the state that is kept for a household; null where there is none, or none that can be read. */
export function readState(folder: string, household: Household, disk: StateDisk): ServeState | null {
  const own = parsedState(join(folder, stateName(household.path)), disk);
  if (own) return { ...own, household: household.path, planId: household.planId };
  const moved = stateNames(folder, disk)
    .map((name) => parsedState(join(folder, name), disk))
    .find((state) => state?.planId === household.planId && !disk.existsSync(state.household));
  return moved ? { ...moved, household: household.path } : null;
}

/** Returns a state with a token of its own and no feed yet. */
export function freshState({ path, planId }: Household): ServeState {
  return { household: path, planId, token: freshToken(), feeds: {} };
}

/** Writes the state so that its owner alone can read it. */
export function writeState(folder: string, state: ServeState, disk: StateDisk): void {
  disk.mkdirSync(folder, { recursive: true, mode: OWNER_FOLDER });
  disk.chmodSync(folder, OWNER_FOLDER);
  const path = join(folder, stateName(state.household));
  const fresh = `${path}.new`;
  disk.writeFileSync(fresh, `${JSON.stringify(state, null, 2)}\n`, { mode: OWNER_FILE });
  disk.chmodSync(fresh, OWNER_FILE);
  disk.renameSync(fresh, path);
}

function stateName(household: string): string {
  return `${createHash('sha256').update(household).digest('hex').slice(0, 16)}.json`;
}

function stateNames(folder: string, disk: StateDisk): readonly string[] {
  if (!disk.existsSync(folder)) return [];
  return disk
    .readdirSync(folder)
    .map(String)
    .filter((name) => name.endsWith('.json'))
    .sort();
}

function parsedState(path: string, disk: StateDisk): ServeState | null {
  try {
    const value: unknown = JSON.parse(disk.readFileSync(path, 'utf8'));
    return isState(value) ? value : null;
  } catch {
    return null;
  }
}

function isState(value: unknown): value is ServeState {
  if (typeof value !== 'object' || value === null) return false;
  const { household, planId, token, feeds } = value as Record<string, unknown>;
  return (
    typeof household === 'string' &&
    typeof planId === 'string' &&
    isToken(token) &&
    typeof feeds === 'object' &&
    feeds !== null &&
    Object.values(feeds).every(isFeedState)
  );
}

function isFeedState(value: unknown): value is FeedState {
  if (typeof value !== 'object' || value === null) return false;
  const { etag, modifiedSecond } = value as Record<string, unknown>;
  return typeof etag === 'string' && Number.isInteger(modifiedSecond);
}
