import pgpass from 'pgpass';

/** Where a password is needed, and for whom. */
export interface Door {
  readonly host: string;
  readonly port: number;
  readonly database: string;
  readonly user: string;
}

/**
 * From the environment (PGPASSWORD) or from the file .pgpass (PostgreSQL 15 manual, 34.15 and 34.16); asked for only
 * where the server wants one.
 */
export function passwordFor(door: Door): () => Promise<string> {
  return async () => {
    const known = process.env.PGPASSWORD ?? (await new Promise<string | undefined>((resolve) => pgpass(door, resolve)));
    if (known === undefined) throw new NoPassword('no password was given');
    return known;
  };
}

/** That the server wants a password and there is none. */
export class NoPassword extends Error {}
