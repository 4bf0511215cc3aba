import type { IncomingMessage, ServerResponse } from 'node:http';

/** Who asks: the builder at this machine, a phone that was let in, or somebody without either. */
export type Role = 'owner' | 'phone' | 'nobody';

/** One thing the server can be asked. */
export interface Route {
  readonly method: 'GET' | 'POST' | 'PUT';
  /** The whole path, or its beginning where it ends in `*`. */
  readonly path: string;
  readonly allowed: readonly Role[];
  readonly answer: (asked: Asked, response: ServerResponse) => void | Promise<void>;
}

export interface Asked {
  readonly request: IncomingMessage;
  readonly role: Role;
  /** What the request showed for itself; empty where it showed nothing. */
  readonly token: string;
  readonly query: URLSearchParams;
  /** What stood in place of the `*`, still percent-encoded. */
  readonly rest: string;
  /** The address the request came from. */
  readonly from: string;
}

export const EVERYBODY: readonly Role[] = ['owner', 'phone', 'nobody'];
export const LET_IN: readonly Role[] = ['owner', 'phone'];
export const OWNER: readonly Role[] = ['owner'];

/** The route for a path, and what its `*` stands for. */
export function routeFor(routes: readonly Route[], path: string): readonly { route: Route; rest: string }[] {
  return routes.flatMap((route) => {
    if (!route.path.endsWith('*')) return route.path === path ? [{ route, rest: '' }] : [];
    const start = route.path.slice(0, -1);
    return path.startsWith(start) ? [{ route, rest: path.slice(start.length) }] : [];
  });
}
