import type { ServerResponse } from 'node:http';

/** Sent with everything: no page but ours may frame, load or read what this server says. */
const GUARDED: Readonly<Record<string, string>> = {
  'Content-Security-Policy':
    "default-src 'none'; script-src 'self'; worker-src 'self' blob:; style-src 'self'; img-src 'self' blob: data:; font-src 'self'; " +
    "connect-src 'self'; media-src 'self' blob:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(self), geolocation=(), microphone=()',
};

/** Answers with JSON. */
export function sendJson(
  response: ServerResponse,
  status: number,
  value: unknown,
  headers: Record<string, string> = {},
): void {
  send(response, status, 'application/json; charset=utf-8', Buffer.from(JSON.stringify(value)), headers);
}

/** Refuses, saying why and what to do. */
export function refuse(
  response: ServerResponse,
  status: number,
  why: string,
  headers: Record<string, string> = {},
): void {
  // The rest of a refused body is never read, so the connection cannot be used again.
  sendJson(response, status, { error: why }, { Connection: 'close', ...headers });
}

/** Answers with bytes. */
export function send(
  response: ServerResponse,
  status: number,
  type: string,
  body: Uint8Array,
  headers: Record<string, string> = {},
): void {
  response.writeHead(status, {
    ...GUARDED,
    'Cache-Control': 'no-store',
    'Content-Type': type,
    'Content-Length': String(body.byteLength),
    ...headers,
  });
  response.end(response.req.method === 'HEAD' ? undefined : body);
}

/** Begins an answer that goes on as long as the client listens (text/event-stream, WHATWG HTML, section 9.2). */
export function beginStream(response: ServerResponse): void {
  response.writeHead(200, {
    ...GUARDED,
    'Cache-Control': 'no-store',
    'Content-Type': 'text/event-stream; charset=utf-8',
  });
  response.flushHeaders();
}
