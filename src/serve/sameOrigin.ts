import words from '../../templates/serve.json' with { type: 'json' };
import type { IncomingMessage } from 'node:http';

/** Why a request is refused, or nothing. */
export interface Refusal {
  readonly status: number;
  readonly why: string;
}

/**
 * Whether a request was meant for this server and made by its own page. A name that an attacker's DNS points here
 * arrives with that name as Host; a foreign page's request arrives with its Origin; both are compared whole, port
 * included (RFC 9110, 7.2; RFC 6454, 7).
 *
 * @param hosts the names this server answers to, each with its port: `127.0.0.1:4747`
 */
export function foreignRequest(request: IncomingMessage, hosts: ReadonlySet<string>): Refusal | undefined {
  const hostLines = request.rawHeaders.filter((name, i) => i % 2 === 0 && name.toLowerCase() === 'host').length;
  const { host, origin } = request.headers;
  if (hostLines !== 1 || host === undefined || !hosts.has(host.toLowerCase())) {
    return { status: 421, why: words.otherName };
  }
  const reads = request.method === 'GET' || request.method === 'HEAD';
  if (origin === undefined ? !reads : origin !== `http://${host.toLowerCase()}`) {
    return { status: 403, why: words.otherPage };
  }
  const site = request.headers['sec-fetch-site'];
  if (isApi(request) && site !== undefined && site !== 'same-origin') {
    return { status: 403, why: words.otherPage };
  }
  return undefined;
}

/** The page itself may be reached by a link or a scanned label; what lies under `/api/` only from the page. */
function isApi(request: IncomingMessage): boolean {
  return (request.url ?? '').startsWith('/api/');
}
