/** The server itself: bounded in headers, time and connections, so that no client can hold it up. */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import { answerTo, type Gate } from './answer.ts';

/** Largest header block, in bytes: room for a long list of entity tags and for what proxies add. */
const HEADER_BYTES = 16 * 1024;
/** A request's headers, and the whole of it, are in by then. */
const HEADERS_MS = 5_000;
const REQUEST_MS = 10_000;
/** A connection on which nothing moves is closed. */
const IDLE_MS = 15_000;
const KEEP_ALIVE_MS = 10_000;
const CHECK_EVERY_MS = 1_000;
const HEADERS = 100;
const CONNECTIONS = 256;
const CONNECTIONS_OF_ONE_ADDRESS = 128;
/** Requests that are let through on their way to an end. */
const GRACE_MS = 1_000;

export interface Listening {
  readonly port: number;
  /** Resolves when the last connection is closed. */
  readonly close: () => Promise<void>;
}

/**
 * Listens and answers until it is closed. Nothing about a request is kept or told.
 *
 * @param address to listen on; `::` for every one
 * @param port 0 for any that is free
 */
export async function listen(gate: () => Gate, address: string, port: number): Promise<Listening> {
  const server = createServer(
    {
      maxHeaderSize: HEADER_BYTES,
      headersTimeout: HEADERS_MS,
      requestTimeout: REQUEST_MS,
      keepAliveTimeout: KEEP_ALIVE_MS,
      connectionsCheckingInterval: CHECK_EVERY_MS,
    },
    (request, response) => respond(request, response, gate()),
  );
  server.maxConnections = CONNECTIONS;
  server.maxHeadersCount = HEADERS;
  server.timeout = IDLE_MS;
  server.on('clientError', refuse);
  limitByAddress(server);
  await listening(server, address, port);
  return { port: (server.address() as AddressInfo).port, close: () => closed(server) };
}

function respond(request: IncomingMessage, response: ServerResponse, gate: Gate): void {
  const { method = '', url = '', headers, socket } = request;
  const answer = answerTo(
    {
      method,
      target: url,
      host: isHostOne(request) ? headers.host : undefined,
      reached: socket.localAddress,
      ifNoneMatch: headers['if-none-match'],
      ifModifiedSince: headers['if-modified-since'],
    },
    gate,
  );
  if (hasBody(request)) response.shouldKeepAlive = false;
  response.writeHead(answer.status, answer.headers as string[]);
  response.end(answer.body ?? undefined);
}

/** Two hosts are none. Source: RFC 9112, section 3.2. */
function isHostOne({ rawHeaders }: IncomingMessage): boolean {
  let count = 0;
  for (let i = 0; i < rawHeaders.length; i += 2) if (rawHeaders[i]?.toLowerCase() === 'host') count += 1;
  return count === 1;
}

/** What a client sends along is never read. */
function hasBody({ headers }: IncomingMessage): boolean {
  return headers['transfer-encoding'] !== undefined || Number(headers['content-length'] ?? 0) > 0;
}

const ERRORS: Readonly<Record<string, string>> = {
  HPE_HEADER_OVERFLOW: '431 Request Header Fields Too Large',
  ERR_HTTP_REQUEST_TIMEOUT: '408 Request Timeout',
};

/** A request that is none, is too large or takes too long. */
function refuse(error: NodeJS.ErrnoException, socket: Socket | import('node:stream').Duplex): void {
  if (error.code === 'ECONNRESET' || !socket.writable) {
    socket.destroy();
    return;
  }
  socket.end(
    `HTTP/1.1 ${ERRORS[error.code ?? ''] ?? '400 Bad Request'}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`,
  );
  setTimeout(() => socket.destroy(), GRACE_MS).unref();
}

function limitByAddress(server: Server): void {
  const open = new Map<string, number>();
  server.on('connection', (socket) => {
    const from = socket.remoteAddress ?? '';
    const count = (open.get(from) ?? 0) + 1;
    open.set(from, count);
    socket.once('close', () => {
      const left = (open.get(from) ?? 1) - 1;
      if (left > 0) open.set(from, left);
      else open.delete(from);
    });
    if (count > CONNECTIONS_OF_ONE_ADDRESS) socket.destroy();
  });
}

/** Once it listens, an error is a connection that could not be taken: the next one may be. */
function listening(server: Server, address: string, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen({ port, host: address }, () => {
      server.off('error', reject);
      server.on('error', () => undefined);
      resolve();
    });
  });
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeIdleConnections();
    setTimeout(() => server.closeAllConnections(), GRACE_MS).unref();
  });
}
