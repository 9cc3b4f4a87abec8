import { reasonOf } from './files.ts';
import { CannotWrite } from './publish.ts';
import { UsageError } from './usage.ts';
import { EXIT } from './world.ts';

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

/** Returns what was thrown in words, one line (more with `debug`), and the exit code that it asks for. */
export function explainFault(error: unknown, debug: boolean): { readonly text: string; readonly exit: number } {
  if (error instanceof UsageError) return { text: `${error.message}\n`, exit: EXIT.usage };
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const isWriteFault = error instanceof CannotWrite || SYSTEM_WRITE_FAULTS.has(code);
  const path = error instanceof Error && 'path' in error ? ` ${String(error.path)}` : '';
  const words = isWriteFault
    ? `cannot write${path}: ${reasonOf(error)}; what stood there before stands unchanged\n`
    : `a fault of this program, not of your file: ${reasonOf(error)}\n  run it again with --debug for details, and report them\n`;
  const stack = debug && error instanceof Error ? `${error.stack ?? ''}\n` : '';
  return { text: `${words}${stack}`, exit: isWriteFault ? EXIT.cannotWrite : EXIT.fault };
}
