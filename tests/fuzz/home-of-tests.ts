/** A household file and its folder of results in a temporary folder, compiled as the command line would. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { run } from '../../src/cli/compile-command.ts';
import { explainFault } from '../../src/cli/faults.ts';
import { type Disk, realDisk } from '../../src/cli/files.ts';
import type { World } from '../../src/cli/world.ts';

const GECKO = readFileSync(join(import.meta.dirname, '../../examples/one-gecko.yaml'), 'utf8').replace(
  'days: 365',
  'days: 20',
);
export const OLD = GECKO.replace(/^name: .*$/m, 'name: Old');
export const NEW = GECKO.replace(/^name: .*$/m, 'name: New');

export interface Asked {
  readonly disk?: Disk;
  /** A date, or a clock. */
  readonly today?: string | (() => number);
  readonly name?: string;
}

export interface Home {
  readonly folder: string;
  readonly out: string;
  /** Returns how it ends; throws where a stack trace was shown. */
  readonly compiled: (text: string, asked?: Asked) => Promise<number>;
  readonly remove: () => void;
}

export function newHome(): Home {
  const folder = mkdtempSync(join(tmpdir(), 'dewdial-faults-'));
  const out = join(folder, 'out');
  return {
    folder,
    out,
    compiled: async (text, { disk = realDisk, today = '2027-01-01', name = 'home.yaml' } = {}) => {
      const file = join(folder, name);
      writeFileSync(file, text);
      try {
        const options = { out, pdf: false, ...(typeof today === 'string' ? { today } : {}) };
        return await run([file], options, worldOn(folder, disk, typeof today === 'string' ? () => 0 : today), 'test');
      } catch (error) {
        const { text: words, exit } = explainFault(error, false);
        if (/\n {4}at /.test(words)) throw new Error(`a stack trace: ${words}`);
        return exit;
      }
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

function worldOn(cwd: string, disk: Disk, nowMs: () => number): World {
  return {
    disk,
    out: () => undefined,
    say: () => undefined,
    nowMs,
    env: {},
    isOutTerminal: false,
    isSayTerminal: false,
    isInTerminal: false,
    terminal: () => Promise.reject(new Error('there is no terminal')),
    columns: 80,
    cwd,
  };
}
