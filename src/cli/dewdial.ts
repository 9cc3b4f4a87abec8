#!/usr/bin/env node
import { program } from './program.ts';
import { expectShortRun } from './short-run.ts';
import { EXIT, realWorld } from './world.ts';

declare const __VERSION__: string;

process.stdout.on('error', endQuietlyOnClosedPipe);
process.stderr.on('error', endQuietlyOnClosedPipe);

function endQuietlyOnClosedPipe(error: NodeJS.ErrnoException): void {
  if (error.code === 'EPIPE') process.exit(EXIT.done);
  throw error;
}

expectShortRun();
try {
  process.exitCode = await program(process.argv.slice(2), realWorld(), __VERSION__);
} catch (error) {
  const { explainFault } = await import('./faults.ts');
  const { text, exit } = explainFault(error, process.argv.includes('--debug'));
  process.stderr.write(`dewdial: ${text}`);
  process.exitCode = exit;
}
