declare module 'pgpass' {
  /** Looks a connection's password up in the file .pgpass, or in the one that PGPASSFILE names. */
  export default function pgpass(
    connection: { readonly host: string; readonly port: number; readonly database: string; readonly user: string },
    done: (password: string | undefined) => void,
  ): void;
}
