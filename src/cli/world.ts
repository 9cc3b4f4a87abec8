/** What a command may see of the machine it runs on; tests hand in their own. */
import { type Disk, realDisk } from './files.ts';
import { openTerminal, type Terminal } from './terminal.ts';

export interface World {
  readonly disk: Disk;
  readonly out: (text: string) => void;
  readonly say: (text: string) => void;
  readonly nowMs: () => number;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly isOutTerminal: boolean;
  readonly isSayTerminal: boolean;
  readonly isInTerminal: boolean;
  readonly terminal: () => Promise<Terminal>;
  readonly columns: number;
  readonly cwd: string;
}

/** Returns the machine that the program runs on: its streams, disk, clock and environment. */
export function realWorld(): World {
  return {
    disk: realDisk,
    out: (text) => void process.stdout.write(text),
    say: (text) => void process.stderr.write(text),
    nowMs: () => Date.now(),
    env: process.env,
    isOutTerminal: process.stdout.isTTY === true,
    isSayTerminal: process.stderr.isTTY === true,
    isInTerminal: process.stdin.isTTY === true,
    terminal: openTerminal,
    columns: process.stdout.columns ?? 80,
    cwd: process.cwd(),
  };
}

/** Whether a terminal shows more than ASCII, by the locale's own word. */
export function showsUnicode(world: World): boolean {
  if (!world.isOutTerminal) return true;
  const locale = world.env.LC_ALL || world.env.LC_CTYPE || world.env.LANG || '';
  return /utf-?8/i.test(locale);
}

/** The ends of a run that a script can tell apart. */
export const EXIT = { done: 0, unusable: 1, usage: 2, strictWarnings: 3, fault: 70, cannotWrite: 73 } as const;
