import words from '../../../../templates/tracker.json' with { type: 'json' };
import { problemAt, type Problem, type ProblemKind } from '../problem.js';
import { NoPassword } from './password.js';

type ServerTrouble = Exclude<ProblemKind, 'no-folder' | 'orphan'>;

/** A problem of this kind, about this place; `detail` is what the server said. */
export function serverProblem(kind: ServerTrouble, where: string, detail?: string): Problem {
  return problemAt(kind, words.server[kind], where, detail);
}

/** What the server's codes (PostgreSQL 15 manual, appendix A) mean to a builder, by code or by class. */
const KIND_OF_STATE: readonly (readonly [start: string, kind: ServerTrouble])[] = [
  ['08', 'away'], //      connection exception
  ['57P', 'away'], //     shut down, crashed, starting
  ['25P03', 'away'], //   given up in the middle of writing
  ['28', 'not-let-in'], // invalid authorization
  ['3D000', 'not-let-in'], // no such database
  ['42501', 'read-only'], // no right to do that
  ['25006', 'read-only'], // a server that only follows another
  ['53100', 'full'],
  ['53', 'busy'], //      memory, connections
  ['55P03', 'busy'], //   a lock that was not to be had
  ['55006', 'busy'],
  ['40', 'busy'], //      given up in favour of another
  ['57014', 'busy'], //   took too long
  ['42P01', 'moved'], //  a table that is gone
  ['3F000', 'moved'], //  a schema that is gone
  ['XX001', 'damaged'],
  ['XX002', 'damaged'],
  ['58', 'unreadable'],
];

/** Refusals of the network (errno(3), getaddrinfo(3)), which have no code of the server's. */
const NETWORK = /ECONN|ENOTFOUND|EAI_AGAIN|ETIMEDOUT|EHOSTUNREACH|ENETUNREACH|EPIPE|ENOENT/;
/** The library's own words where the connection ended or nothing came back in time. */
const ENDED = /connection terminated|connection ended|timeout|not queryable|pool after calling end/i;

/** The problem behind an error of the server or the way there. Any other error is ours and is thrown on. */
export function serverProblemOf(error: unknown, where: string): Problem {
  const { code, message, errors } = error as { code?: unknown; message?: unknown; errors?: readonly unknown[] };
  // Several addresses of one name were tried.
  if (errors && errors.length > 0) return serverProblemOf(errors[0], where);
  const said = String(message);
  const state = typeof code === 'string' ? code : '';
  if (/^[0-9A-Z]{5}$/.test(state)) {
    const found = KIND_OF_STATE.find(([start]) => state.startsWith(start));
    if (found) return serverProblem(found[1], where, said);
  }
  if (error instanceof NoPassword) return serverProblem('not-let-in', where, said);
  if (NETWORK.test(state) || NETWORK.test(said) || ENDED.test(said)) return serverProblem('away', where, said);
  throw error;
}
