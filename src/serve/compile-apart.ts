/** Compiles in a process of its own: the server goes on answering meanwhile, and nothing that fails there reaches it. */
import { spawn } from 'node:child_process';

export interface CompileOutcome {
  readonly exitCode: number;
  /** Whether results were written, or stand unchanged. */
  readonly isWritten: boolean;
  /** The messages, as for a terminal. */
  readonly said: string;
}

const KEPT_CHARACTERS = 64 * 1024;

/**
 * Runs this very program with other arguments, under the same options of Node.
 *
 * @param ended stops it
 */
export function compileApart(args: readonly string[], ended: AbortSignal): Promise<CompileOutcome> {
  const program = process.argv[1] ?? '';
  const child = spawn(process.execPath, [...process.execArgv, program, 'compile', ...args, '--json'], {
    stdio: ['ignore', 'pipe', 'pipe'],
    signal: ended,
    killSignal: 'SIGTERM',
  });
  const [result, said] = [gathered(child.stdout), gathered(child.stderr)];
  return new Promise((resolve) => {
    child.on('error', (error) => {
      if (child.pid === undefined) resolve({ exitCode: 70, isWritten: false, said: `${error.message}\n` });
    });
    child.on('close', (code) => resolve({ exitCode: code ?? 70, isWritten: result().startsWith('{'), said: said() }));
  });
}

function gathered(stream: NodeJS.ReadableStream): () => string {
  let text = '';
  stream.setEncoding('utf8');
  stream.on('data', (part: string) => {
    if (text.length < KEPT_CHARACTERS) text += part;
  });
  return () => text;
}
