/**
 * Loads the bundled program. Beside it the build leaves what the runtime has made of its code: where that is at hand, and from this very
 * version of the runtime, the code is neither parsed nor compiled again, which takes a fifth off a short run. Elsewhere it is loaded like
 * any module. The runtime itself tells the code of one program from that of another by the length of the text alone, so both end with the
 * digest of the text that they are of.
 */
import { readFileSync } from 'node:fs';
import { createRequire, Module } from 'node:module';
import { dirname } from 'node:path';
import vm from 'node:vm';
import type * as Main from './main.ts';

export type Program = typeof Main;

/** Loads the program that stands at a path. */
export function loadProgram(path: string): Program {
  const made = madeCode(path);
  if (made === null) return createRequire(path)(path) as Program;
  return evaluate(programScript(path, made), path);
}

/** Hexadecimal digits that the build puts at the end of the program. */
const DIGEST_LENGTH = 64;

/** Compiles the program, or takes over what was made of its code before where that is of the same text. */
export function programScript(path: string, made?: Buffer): vm.Script {
  const text = readFileSync(path, 'utf8');
  const isOfText = made?.subarray(-DIGEST_LENGTH).toString('latin1') === text.slice(-DIGEST_LENGTH);
  return new vm.Script(Module.wrap(text), {
    filename: path,
    ...(made && isOfText ? { cachedData: made.subarray(0, -DIGEST_LENGTH) } : {}),
  });
}

/** Returns what the runtime has made of the program at a path by now, for a later run to take over. */
export function madeOf(script: vm.Script, path: string): Buffer {
  const digest = readFileSync(path, 'latin1').slice(-DIGEST_LENGTH);
  return Buffer.concat([script.createCachedData(), Buffer.from(digest, 'latin1')]);
}

/** Runs a compiled program up to where its functions stand ready. */
export function evaluate(script: vm.Script, path: string): Program {
  const module = { exports: {} as Program };
  const load = script.runInThisContext() as (...scope: readonly unknown[]) => void;
  load(module.exports, createRequire(path), module, path, dirname(path));
  return module.exports;
}

/** Returns where the code made of a program stands: valid for one version of the runtime, on one kind of processor. */
export function madeCodePath(path: string): string {
  return `${path}.${process.version}-${process.arch}.code`;
}

function madeCode(path: string): Buffer | null {
  try {
    return readFileSync(madeCodePath(path));
  } catch {
    return null;
  }
}
