/** Questions at a terminal, one line an answer. Lines that arrive early (pasted, or piped in) wait for their question. */
import type * as Readline from 'node:readline';
import { installedModule } from './installed-module.ts';

export interface Terminal {
  /** Asks, and returns the line that is typed; rejects with an AbortError where the input ends (Ctrl-D, Ctrl-C). */
  readonly question: (text: string) => Promise<string>;
  readonly close: () => void;
}

/** Opens the terminal of this process; what is asked goes to standard error, so that results alone go to standard output. */
export async function openTerminal(): Promise<Terminal> {
  const { createInterface } = (await installedModule('node:readline')) as typeof Readline;
  const reader = createInterface({ input: process.stdin, output: process.stderr });
  const lines: string[] = [];
  let hasEnded = false;
  let wake = (): void => undefined;
  reader.on('line', (line) => {
    lines.push(line);
    wake();
  });
  reader.on('close', () => {
    hasEnded = true;
    wake();
  });
  return {
    question: async (text) => {
      const lastLine = text.lastIndexOf('\n') + 1;
      process.stderr.write(text.slice(0, lastLine));
      reader.setPrompt(text.slice(lastLine));
      if (!hasEnded) reader.prompt();
      while (lines.length === 0 && !hasEnded)
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      const line = lines.shift();
      if (line === undefined) throw Object.assign(new Error('the input has ended'), { name: 'AbortError' });
      return line;
    },
    close: () => reader.close(),
  };
}
