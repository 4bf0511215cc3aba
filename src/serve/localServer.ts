import words from '../../templates/serve.json' with { type: 'json' };
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { refuse } from './answer.js';
import { routeFor, type Role, type Route } from './route.js';
import { foreignRequest } from './sameOrigin.js';

export interface LocalServer {
  readonly port: number;
  readonly close: () => Promise<void>;
}

export interface LocalServerOptions {
  readonly routes: readonly Route[];
  /** Addresses to listen at; always 127.0.0.1, with `--share` one of this machine's in the network too. */
  readonly addresses: readonly string[];
  /** 0 for any free one. */
  readonly port: number;
  /** Who a token belongs to. */
  readonly roleOf: (token: string, request: IncomingMessage) => Role | Promise<Role>;
  /** Told what went wrong on our side. Never told what a request carried. */
  readonly failed: (error: unknown) => void;
  /** What the builder must act on, in words, where an error tells of that: nothing went wrong on our side then. */
  readonly troubleIn?: (error: unknown) => string | undefined;
}

/** A request that takes longer to arrive than this is dropped, ms. */
const PATIENCE = 30_000;
const MOST_CONNECTIONS = 300;
/**
 * Of these, so many from one address in the network: a phone with several pages open, not a machine that holds the door
 * shut.
 */
export const MOST_FROM_ONE = 30;
/** How often connections are looked at that take too long, ms. */
const CHECK_EVERY = 2000;

/**
 * Serves the routes to this machine's own page, and to nobody who cannot show who he is.
 *
 * @throws the system's error where a port is taken (`EADDRINUSE`) or an address is not ours (`EADDRNOTAVAIL`)
 */
export async function startLocalServer(options: LocalServerOptions): Promise<LocalServer> {
  const hosts = new Set<string>();
  const servers: Server[] = [];
  let port = options.port;
  try {
    for (const address of options.addresses) {
      const server = createServer({ connectionsCheckingInterval: CHECK_EVERY }, (request, response) => {
        answer(request, response, hosts, options).catch((error: unknown) => {
          const trouble = options.troubleIn?.(error);
          if (trouble !== undefined && !response.headersSent) return refuse(response, 503, trouble);
          options.failed(error);
          if (!response.headersSent) refuse(response, 500, words.broken);
          else response.destroy();
        });
      });
      server.requestTimeout = PATIENCE;
      server.headersTimeout = PATIENCE / 3;
      server.maxConnections = MOST_CONNECTIONS;
      if (address !== '127.0.0.1') limitEach(server);
      port = await listen(server, port, address);
      servers.push(server);
      hosts.add(`${address}:${port}`);
      if (address === '127.0.0.1') hosts.add(`localhost:${port}`);
    }
  } catch (error) {
    await Promise.all(servers.map(closeServer));
    throw error;
  }
  return { port, close: async () => void (await Promise.all(servers.map(closeServer))) };
}

async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  hosts: ReadonlySet<string>,
  { routes, roleOf }: LocalServerOptions,
): Promise<void> {
  const foreign = foreignRequest(request, hosts);
  if (foreign) return refuse(response, foreign.status, foreign.why);
  const target = request.url ?? '';
  const [path, search = ''] = split(target);
  const found = target.startsWith('/') ? routeFor(routes, path) : [];
  const method = request.method === 'HEAD' ? 'GET' : request.method;
  const match = found.find(({ route }) => route.method === method);
  const [, token = ''] = /^Bearer ([\w-]{1,200})$/.exec(request.headers.authorization ?? '') ?? [];
  const role = token === '' ? 'nobody' : await roleOf(token, request);
  if (!match) {
    // Without a token nobody learns what there is.
    if (role === 'nobody' && path.startsWith('/api/')) return refuse(response, 401, words.noToken);
    if (found.length === 0) return refuse(response, 404, words.nothing);
    return refuse(response, 405, words.notHere, {
      Allow: found.map(({ route }) => route.method).join(', '),
    });
  }
  if (!match.route.allowed.includes(role)) {
    return role === 'nobody'
      ? refuse(response, 401, words.noToken, { 'WWW-Authenticate': 'Bearer' })
      : refuse(response, 403, words.onlyHere);
  }
  await match.route.answer(
    {
      request,
      role,
      token,
      query: new URLSearchParams(search),
      rest: match.rest,
      from: request.socket.remoteAddress ?? '',
    },
    response,
  );
}

/**
 * The path and what follows its question mark. Not the URL class: it would resolve `..` before anybody could refuse it.
 */
function split(target: string): readonly [path: string, search?: string] {
  const at = target.indexOf('?');
  return at < 0 ? [target] : [target.slice(0, at), target.slice(at + 1)];
}

/** Hangs up on an address that has too many connections open already. */
function limitEach(server: Server): void {
  const open = new Map<string, number>();
  server.on('connection', (socket) => {
    const from = socket.remoteAddress ?? '';
    const count = open.get(from) ?? 0;
    if (count >= MOST_FROM_ONE) return socket.destroy();
    open.set(from, count + 1);
    socket.once('close', () => {
      const left = open.get(from)! - 1;
      if (left > 0) open.set(from, left);
      else open.delete(from);
    });
  });
}

function listen(server: Server, port: number, address: string): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen({ port, host: address, exclusive: true }, () => resolve((server.address() as AddressInfo).port));
  });
}

function closeServer(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
