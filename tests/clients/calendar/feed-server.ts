/** A server of one calendar on loopback that answers as the program's own does, and notes each answer. */
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { answerTo, type Gate } from '../../../src/serve/answer.ts';
import { ownNames } from '../../../src/serve/hosts.ts';
import { servedFile } from '../../../src/serve/served-file.ts';
import { tokenCheck } from '../../../src/serve/token.ts';

const TOKEN = 'mJ3rYx0h2kQ8vB5nW7tLzA';
/** One day for all that is served: the tag alone tells that it changed. */
const MODIFIED_MS = Date.UTC(2026, 0, 1);

export class FeedServer {
  /** What is served. */
  text = '';
  /** Path of it. */
  readonly path = `/c/${TOKEN}/care.ics`;
  /** Status of each answer so far. */
  readonly answers: number[] = [];
  readonly #server: Server;

  constructor() {
    const gate: Gate = {
      names: ownNames(null, null),
      isToken: tokenCheck(TOKEN),
      file: (name) => (name === 'care.ics' ? servedFile(name, this.text, MODIFIED_MS) : null),
    };
    this.#server = createServer(({ method = '', url = '', headers, socket }, response) => {
      const conditions = { ifNoneMatch: headers['if-none-match'], ifModifiedSince: headers['if-modified-since'] };
      const answer = answerTo(
        { method, target: url, host: headers.host, reached: socket.localAddress, ...conditions },
        gate,
      );
      this.answers.push(answer.status);
      response.writeHead(answer.status, [...answer.headers]);
      response.end(answer.body ?? undefined);
    });
  }

  /** Returns the port. */
  async start(): Promise<number> {
    await new Promise<void>((resolve) => this.#server.listen(0, '127.0.0.1', resolve));
    return (this.#server.address() as AddressInfo).port;
  }

  async stop(): Promise<void> {
    this.#server.closeAllConnections();
    await new Promise((resolve) => this.#server.close(resolve));
  }
}
