#!/usr/bin/env node
import { program, UsageError } from './program.ts';
import { CannotWrite } from './publish.ts';
import { EXIT, realWorld } from './world.ts';

declare const __VERSION__: string;

process.stdout.on('error', endQuietlyOnClosedPipe);
process.stderr.on('error', endQuietlyOnClosedPipe);

function endQuietlyOnClosedPipe(error: NodeJS.ErrnoException): void {
  if (error.code === 'EPIPE') process.exit(EXIT.done);
  throw error;
}

const SYSTEM_WRITE_FAULTS = new Set([
  'ENOSPC',
  'EACCES',
  'EPERM',
  'EROFS',
  'EIO',
  'EDQUOT',
  'ENOTDIR',
  'EEXIST',
  'ELOOP',
  'EMFILE',
  'ENAMETOOLONG',
  'ENOTEMPTY',
  'EISDIR',
  'ELOCKED',
]);

try {
  process.exitCode = await program(process.argv.slice(2), realWorld(), __VERSION__);
} catch (error) {
  process.exitCode = await explain(error);
}

async function explain(error: unknown): Promise<number> {
  if (error instanceof UsageError) {
    process.stderr.write(`dewdial: ${error.message}\n`);
    return EXIT.usage;
  }
  const { reasonOf } = await import('./files.ts');
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const isWriteFault = error instanceof CannotWrite || SYSTEM_WRITE_FAULTS.has(code);
  const path = error instanceof Error && 'path' in error ? ` ${String(error.path)}` : '';
  process.stderr.write(
    isWriteFault
      ? `dewdial: cannot write${path}: ${reasonOf(error)}; what stood there before stands unchanged\n`
      : `dewdial: a fault of this program, not of your file: ${reasonOf(error)}\n  run it again with --debug for details, and report them\n`,
  );
  if (process.argv.includes('--debug') && error instanceof Error) process.stderr.write(`${error.stack ?? ''}\n`);
  return isWriteFault ? EXIT.cannotWrite : EXIT.fault;
}
