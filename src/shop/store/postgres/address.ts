import { createHash } from 'node:crypto';
import { userInfo } from 'node:os';
import type { ClientConfig } from 'pg';
import { parseIntoClientConfig } from 'pg-connection-string';
import type { Problem } from '../problem.js';
import type { Door } from './password.js';
import { serverProblem } from './serverProblem.js';

/** Where on a PostgreSQL server a board's log is kept. */
export interface ServerPlace {
  /** The address as it may be shown: no password is in it. */
  readonly shown: string;
  readonly config: ClientConfig;
  /** What the password is for. */
  readonly door: Door;
  /** The schema that holds the board and nothing else; also what changes are told on. */
  readonly schema: string;
}

/** A name in PostgreSQL has at most so many bytes (PostgreSQL 15 manual, 4.1.1). */
const LONGEST_NAME = 63;
const OURS = 'chamberwright ';

const USUAL_PORT = 5432;

/**
 * How long a connection, a lock and a statement are waited for, and after what idle time a connection that is in the
 * middle of writing is given up, ms.
 */
const CONNECT = 5000;
const LOCK = 3000;
const STATEMENT = 15_000;

/** Whether what was typed after `--store` is meant for a server. */
export const isServerAddress = (typed: string): boolean => /^postgres(ql)?:/i.test(typed);

/**
 * @param typed `postgres://USER@HOST:PORT/DATABASE`, as the PostgreSQL manual writes it (34.1.1.2)
 * @param board the name of the board: the job file's, without its ending
 */
export function serverPlace(typed: string, board: string): ServerPlace | { readonly problem: Problem } {
  let url: URL;
  try {
    url = new URL(typed);
  } catch {
    return { problem: serverProblem('elsewhere', typed.replace(/:[^:@/]*@/, '@')) };
  }
  const shown = `${url.protocol}//${url.username ? `${url.username}@` : ''}${url.host}${url.pathname}`;
  if (url.password !== '' || url.searchParams.has('password'))
    return {
      problem: serverProblem(
        'elsewhere',
        shown,
        'A password in the address is seen by everybody who sees the command.',
      ),
    };
  if (url.pathname.length < 2)
    return { problem: serverProblem('elsewhere', shown, 'The name of the database is missing.') };
  const [host, port] = [decodeURIComponent(url.hostname) || 'localhost', Number(url.port || USUAL_PORT)];
  const user = decodeURIComponent(url.username) || process.env.PGUSER || userInfo().username;
  const database = decodeURIComponent(url.pathname.slice(1));
  return {
    shown: `${shown}, board ${board}`,
    door: { host, port, user, database },
    schema: schemaOf(board),
    config: {
      ...parseIntoClientConfig(typed),
      host,
      port,
      user,
      database,
      application_name: 'chamberwright',
      connectionTimeoutMillis: CONNECT,
      query_timeout: STATEMENT + CONNECT,
      statement_timeout: STATEMENT,
      lock_timeout: LOCK,
      // A program that was cut off in the middle of writing must not hold up the others.
      idle_in_transaction_session_timeout: STATEMENT,
      keepAlive: true,
      // Whatever the server's own setting: acknowledged is on the disk (PostgreSQL 15 manual, 20.5.1).
      options: '-c synchronous_commit=on -c default_transaction_isolation=read\\ committed',
    },
  };
}

function schemaOf(board: string): string {
  const name = OURS + board;
  if (Buffer.byteLength(name) <= LONGEST_NAME) return name;
  const hash = createHash('sha256').update(board).digest('hex').slice(0, 12);
  // Cut between letters, wherever the bytes fall.
  let kept = '';
  for (const letter of board)
    if (Buffer.byteLength(OURS + kept + letter) <= LONGEST_NAME - hash.length - 1) kept += letter;
  return `${OURS}${kept} ${hash}`;
}

/** A name as SQL quotes it (PostgreSQL 15 manual, 4.1.1). */
export const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;
