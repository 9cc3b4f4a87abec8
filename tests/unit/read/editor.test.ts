/** A YAML language server, as editors run it, driven over its standard streams with the published schema. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { householdSchema } from '../../../src/read/json-schema.ts';

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: {
    readonly uri?: string;
    readonly diagnostics?: readonly Diagnostic[];
    readonly items?: readonly unknown[];
  };
  readonly result?: unknown;
}
interface Diagnostic {
  readonly message: string;
  readonly range: { readonly start: { readonly line: number; readonly character: number } };
}
interface Completion {
  readonly items: readonly { readonly label: string; readonly documentation?: unknown }[];
}

class Server {
  readonly #child: ChildProcess;
  readonly #answers = new Map<number, (message: Message) => void>();
  readonly #diagnosed = new Map<string, (found: readonly Diagnostic[]) => void>();
  #buffer = Buffer.alloc(0);
  #next = 1;

  constructor() {
    const main = createRequire(import.meta.url).resolve('yaml-language-server');
    const program = join(dirname(main), '..', '..', '..', 'bin', 'yaml-language-server');
    this.#child = spawn(process.execPath, [program, '--stdio'], { stdio: ['pipe', 'pipe', 'ignore'] });
    this.#child.stdout?.on('data', (chunk: Buffer) => this.#take(chunk));
  }

  async ask(method: string, params: unknown): Promise<unknown> {
    const id = this.#next++;
    const answer = new Promise<Message>((resolve) => this.#answers.set(id, resolve));
    this.#write({ id, method, params });
    return (await answer).result;
  }

  tell(method: string, params: unknown): void {
    this.#write({ method, params });
  }

  /** Opens a text and waits for what the server says of it. */
  open(uri: string, text: string): Promise<readonly Diagnostic[]> {
    const found = new Promise<readonly Diagnostic[]>((resolve) => this.#diagnosed.set(uri, resolve));
    this.tell('textDocument/didOpen', { textDocument: { uri, languageId: 'yaml', version: 1, text } });
    return found;
  }

  stop(): void {
    this.#child.kill();
  }

  #write(message: object): void {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    this.#child.stdin?.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  }

  #take(chunk: Buffer): void {
    this.#buffer = Buffer.concat([this.#buffer, chunk]);
    for (;;) {
      const head = this.#buffer.indexOf('\r\n\r\n');
      const length = Number(/Content-Length: (\d+)/u.exec(this.#buffer.subarray(0, Math.max(head, 0)).toString())?.[1]);
      if (head < 0 || this.#buffer.length < head + 4 + length) return;
      const body = this.#buffer.subarray(head + 4, head + 4 + length).toString();
      this.#buffer = this.#buffer.subarray(head + 4 + length);
      this.#hear(JSON.parse(body) as Message);
    }
  }

  #hear(message: Message): void {
    if (message.method === 'textDocument/publishDiagnostics') {
      this.#diagnosed.get(message.params?.uri ?? '')?.(message.params?.diagnostics ?? []);
    } else if (message.method !== undefined && message.id !== undefined) {
      // The server asks for settings: none but its own.
      this.#write({ id: message.id, result: message.params?.items?.map(() => ({})) ?? null });
    } else if (message.id !== undefined) this.#answers.get(message.id)?.(message);
  }
}

const folder = mkdtempSync(join(tmpdir(), 'schema-'));
const schemaUri = pathToFileURL(join(folder, 'household.schema.json')).href;
const uri = (name: string): string => pathToFileURL(join(folder, name)).href;
const HEAD = `# yaml-language-server: $schema=${schemaUri}\nformat: 1\nname: One gecko\n`;
let server: Server;

beforeAll(async () => {
  writeFileSync(join(folder, 'household.schema.json'), JSON.stringify(householdSchema()));
  server = new Server();
  const capabilities = { textDocument: { completion: {}, publishDiagnostics: {} } };
  await server.ask('initialize', { processId: process.pid, rootUri: null, capabilities });
  server.tell('initialized', {});
});
afterAll(() => {
  server.stop();
  rmSync(folder, { recursive: true });
});

async function completed(name: string, text: string): Promise<readonly string[]> {
  await server.open(uri(name), text);
  const lines = text.split('\n');
  const position = { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
  const found = (await server.ask('textDocument/completion', {
    textDocument: { uri: uri(name) },
    position,
  })) as Completion;
  return found.items.map((item) => item.label);
}

describe('an editor with the published schema', () => {
  it('completes the keys of the file', async () => {
    const labels = await completed('keys.yaml', `${HEAD}e`);
    expect(labels).toContain('enclosures');
    expect(labels).toContain('hardware');
  });

  it('completes the words of a key', async () => {
    const labels = await completed('words.yaml', `${HEAD}units: `);
    expect(labels).toEqual(expect.arrayContaining(['metric', 'us']));
  });

  it('underlines a length without its unit', async () => {
    const text = `${HEAD}enclosures:\n  - size: { width: 90, depth: 45 cm, height: 45 cm }\n`;
    const found = await server.open(uri('unit.yaml'), text);
    const at = text.split('\n').findIndex((line) => line.includes('width'));
    expect(found.some(({ range }) => range.start.line === at && range.start.character === 19)).toBe(true);
  });

  it('says nothing of the shipped example', async () => {
    const { readFileSync } = await import('node:fs');
    const example = readFileSync(new URL('../../../examples/reading-room.yaml', import.meta.url), 'utf8');
    expect(await server.open(uri('example.yaml'), `# yaml-language-server: $schema=${schemaUri}\n${example}`)).toEqual(
      [],
    );
  });
});
