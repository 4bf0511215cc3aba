import type { Problem, ProblemKind } from '../problem.js';
import { NoPassword } from './password.js';

type ServerTrouble = Exclude<ProblemKind, 'no-folder' | 'orphan'>;

const KEPT = 'What was recorded is safe, and phones keep what they could not send and send it later.';

const SAID: Readonly<Record<ServerTrouble, readonly [what: string, remedy: string]>> = {
  away: [
    'The PostgreSQL server cannot be reached.',
    `Look whether it runs and whether this machine is in its network, then try again. ${KEPT}`,
  ],
  'not-let-in': [
    'The PostgreSQL server does not let this user in.',
    'Put the password into the environment (PGPASSWORD) or into the file .pgpass, and ask whoever runs the server which user and database are yours.',
  ],
  elsewhere: [
    'That is not an address the tracker can be kept at.',
    'Write --store postgres://USER@HOST/DATABASE, without a password: that is taken from the environment (PGPASSWORD) or the file .pgpass.',
  ],
  'read-only': [
    'The PostgreSQL server lets nothing be written here.',
    'Ask whoever runs it for the right to create and write in this database, or for the address of the server that takes writes.',
  ],
  full: ['The disk of the PostgreSQL server is full: nothing more can be recorded.', `Have space freed there. ${KEPT}`],
  busy: [
    'The PostgreSQL server is busy.',
    'Wait a moment and try again. Another program may hold the board, or there are too many connections.',
  ],
  damaged: [
    'The PostgreSQL server finds its data damaged.',
    'Stop, and let whoever runs it restore its last copy: entries that it lacks come back from any tracker that ran, by copying.',
  ],
  newer: ['The board was kept there by a newer chamberwright.', 'Use that newer one. This one leaves it as it is.'],
  foreign: [
    'What goes by the name of this board there is something else.',
    'Rename the job or use another database. It was left as it is.',
  ],
  moved: [
    'The board on the PostgreSQL server is another than it was, or gone, while the tracker was running.',
    'Have the server’s data put back, or stop and copy the rescued file to it: track JOB --store … take FILE. ' +
      'Nothing more is recorded until then; phones keep what they could not send.',
  ],
  unreadable: [
    'The PostgreSQL server could not read or write its data.',
    'Let whoever runs it look at its disk and its log.',
  ],
};

/** A problem of this kind, about this place; `detail` is what the server said. */
export function serverProblem(kind: ServerTrouble, where: string, detail?: string): Problem {
  const [what, remedy] = SAID[kind];
  return { kind, what: detail === undefined ? what : `${what} (${detail})`, where, remedy };
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
