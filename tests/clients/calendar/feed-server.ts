/** A server of one calendar on loopback: a strong ETag, 304 where nothing has changed. */
import { createHash } from 'node:crypto';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';

export class FeedServer {
  /** What is served. */
  text = '';
  /** Status of each answer so far. */
  readonly answers: number[] = [];
  readonly #server: Server;

  constructor() {
    this.#server = createServer((request, response) => {
      const tag = `"${createHash('sha256').update(this.text).digest('hex')}"`;
      const status = request.headers['if-none-match'] === tag ? 304 : 200;
      this.answers.push(status);
      response.writeHead(status, { 'Content-Type': 'text/calendar; charset=utf-8', ETag: tag });
      response.end(status === 304 ? undefined : this.text);
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
