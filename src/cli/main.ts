/** The program from its command line to its exit code. */
import { type ImportModule, importBy } from './installed-module.ts';
import { program } from './program.ts';
import { EXIT, realWorld } from './world.ts';

declare const __VERSION__: string;

/**
 * Runs one command line on this machine, and leaves the exit code with the process.
 *
 * @param importModule imports what is installed and not bundled
 */
export async function main(argv: readonly string[], importModule: ImportModule): Promise<void> {
  importBy(importModule);
  process.stdout.on('error', endQuietlyOnClosedPipe);
  process.stderr.on('error', endQuietlyOnClosedPipe);
  try {
    process.exitCode = await program(argv, realWorld(), __VERSION__);
  } catch (error) {
    const { explainFault } = await import('./faults.ts');
    const { text, exit } = explainFault(error, argv.includes('--debug'));
    process.stderr.write(`dewdial: ${text}`);
    process.exitCode = exit;
  }
}

function endQuietlyOnClosedPipe(error: NodeJS.ErrnoException): void {
  if (error.code === 'EPIPE') process.exit(EXIT.done);
  throw error;
}
