/** Serves the feeds and the page of one household, and compiles it again whenever its file changes. */
import * as fs from 'node:fs';
import { homedir, hostname, networkInterfaces } from 'node:os';
import { basename, join } from 'node:path';
import { Log } from '../diagnostics/log.ts';
import { readHousehold } from '../read/household.ts';
import { profilesNeeded } from '../resolve/resolve.ts';
import type { Gate } from '../serve/answer.ts';
import { type CompileOutcome, compileApart } from '../serve/compile-apart.ts';
import { followChanges } from '../serve/follow-changes.ts';
import { ownNames } from '../serve/hosts.ts';
import { type Feeds, HouseholdSite } from '../serve/household-site.ts';
import { type Listening, listen } from '../serve/http-server.ts';
import { readResults } from '../serve/published-results.ts';
import { authorityOf, isLoopback, reachableAddresses } from '../serve/reachable.ts';
import { freshState, readState, type ServeState, stateFolder, writeState } from '../serve/serve-state.ts';
import { freshToken, tokenCheck } from '../serve/token.ts';
import { markOfAll } from '../serve/watch-files.ts';
import { fittedPath, loadText, profilePath, reasonOf, resultFolderName } from './files.ts';
import { checkNamedDate } from './named-date.ts';
import { servedWords } from './served-words.ts';
import { expectLongRun } from './short-run.ts';
import { type CommonOptions, UsageError } from './usage.ts';
import { EXIT, type World } from './world.ts';

export interface ServeOptions extends CommonOptions {
  readonly out: string;
  readonly host?: string;
  readonly port: string;
  readonly newToken?: boolean;
}

const LOOPBACK = '127.0.0.1';

/** Serves the page and the feeds of a household until it is stopped. Returns the exit code. */
export async function run(args: readonly string[], options: ServeOptions, world: World): Promise<number> {
  const port = portOf(options);
  expectLongRun();
  const ending = new AbortController();
  const end = (): void => ending.abort();
  process.once('SIGINT', end).once('SIGTERM', end);
  try {
    return await serve(args[0] ?? '', port, options, world, ending.signal);
  } finally {
    process.off('SIGINT', end).off('SIGTERM', end);
  }
}

async function serve(
  file: string,
  port: number,
  options: ServeOptions,
  world: World,
  ended: AbortSignal,
): Promise<number> {
  const today = options.today === undefined ? [] : ['--today', options.today];
  const compile = (): Promise<CompileOutcome> => compileApart([file, '--out', options.out, ...today], ended);
  const folder = join(options.out, resultFolderName(file));
  const inputs = (): readonly string[] => inputsOf(file, world);
  const firstMark = markOfAll(inputs());
  const first = await compile();
  world.say(first.said);
  const read = readResults(folder, fs);
  if (ended.aborted) return EXIT.done;
  if (!read.ok || !fs.existsSync(file)) return first.exitCode === EXIT.done ? EXIT.unusable : first.exitCode;
  const { plan } = read.results;
  const state = stateOf({ path: fs.realpathSync(file), planId: plan.id }, options.newToken === true, world);
  let site: HouseholdSite | null = null;
  const server = await open(
    gateOf(state.token, options.host, (name) => site?.file(name) ?? null),
    options.host,
    port,
  );
  const addresses = addressesOf(options.host);
  const [address = LOOPBACK] = addresses;
  site = new HouseholdSite(
    {
      authority: authorityOf(address, server.port),
      isReachable: !isLoopback(address),
      token: state.token,
      nowMs: world.nowMs,
      today: options.today ?? null,
    },
    read.results,
    state.feeds,
  );
  const keep = feedKeeper(state, world);
  const following = followChanges({ site, folder, inputs, compile, first, firstMark, keep, say: world.say }, ended);
  world.out(servedWords({ name: plan.name, site, addresses, port: server.port }, options.json === true, world));
  await endOf(ended);
  following.close();
  await server.close();
  return EXIT.done;
}

function portOf({ port, today }: ServeOptions): number {
  if (today !== undefined) checkNamedDate('--today', today);
  const number = Number(port);
  if (!/^\d{1,5}$/.test(port) || number > 65_535)
    throw new UsageError(`--port ${port}: a whole number from 0 to 65535; 0 takes any that is free`);
  return number;
}

/** Returns what is kept for the household, or a new state where there is none or a new token is asked for. */
function stateOf(household: { path: string; planId: string }, isRenewed: boolean, world: World): ServeState {
  const folder = stateFolder(world.env, homedir(), process.platform);
  const kept = readState(folder, household, fs) ?? freshState(household);
  const state = isRenewed ? { ...kept, token: freshToken() } : kept;
  writeState(folder, state, fs);
  return state;
}

/** Keeps when each feed last changed; a disk that cannot be written to is said and does not stop the server. */
function feedKeeper(state: ServeState, world: World): (feeds: Feeds) => void {
  let written = JSON.stringify(state.feeds);
  return (feeds) => {
    if (JSON.stringify(feeds) === written) return;
    written = JSON.stringify(feeds);
    try {
      writeState(stateFolder(world.env, homedir(), process.platform), { ...state, feeds }, fs);
    } catch (error) {
      world.say(`dewdial: cannot keep when the calendars changed: ${reasonOf(error)}\n`);
    }
  };
}

function gateOf(token: string, host: string | undefined, file: Gate['file']): Gate {
  const isOpen = host !== undefined && !isLoopback(host);
  const names = ownNames(isOpen ? hostname() : null, host === undefined || host === 'all' ? null : host);
  return { names, isToken: tokenCheck(token), file };
}

/** `all` is every address of both kinds, or of the older where the machine knows that alone. */
async function open(gate: Gate, host: string | undefined, port: number): Promise<Listening> {
  const tries = host === 'all' ? ['::', '0.0.0.0'] : [host ?? LOOPBACK];
  for (const [index, address] of tries.entries()) {
    try {
      return await listen(() => gate, address, port);
    } catch (error) {
      if (index === tries.length - 1 || codeOf(error) === 'EADDRINUSE')
        throw cannotListen(error, host ?? LOOPBACK, port);
    }
  }
  throw new UsageError('no address to listen on');
}

function cannotListen(error: unknown, host: string, port: number): Error {
  switch (codeOf(error)) {
    case 'EADDRINUSE':
      return new UsageError(`port ${port} is taken by another program; give another with --port`);
    case 'EACCES':
      return new UsageError(`port ${port} is not for every program; give one above 1023 with --port`);
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
    case 'EAI_AGAIN': {
      const own = reachableAddresses(networkInterfaces()).join(', ') || 'none that a phone could reach';
      return new UsageError(`--host ${host}: not an address of this machine; it has ${own}`);
    }
    default:
      return error instanceof Error ? error : new Error(String(error));
  }
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

/** Returns the addresses to name, the one for links first. */
function addressesOf(host: string | undefined): readonly string[] {
  return host === 'all' ? reachableAddresses(networkInterfaces()) : [host ?? LOOPBACK];
}

function inputsOf(file: string, world: World): readonly string[] {
  const loaded = loadText(file, world.disk);
  const household = loaded.ok ? readHousehold(basename(file), loaded.text, new Log()) : null;
  const profiles =
    household === null ? [] : profilesNeeded(household).map(({ idOrPath }) => profilePath(idOrPath, file));
  return [...new Set([file, fittedPath(file), ...profiles])];
}

function endOf(ended: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (ended.aborted) resolve();
    else ended.addEventListener('abort', () => resolve(), { once: true });
  });
}
