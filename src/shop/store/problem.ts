import type { Finding } from '../../finding/finding.js';

/**
 * Why the tracker cannot do what was asked: what, where, what to do. Nothing that was recorded is harmed by any of
 * them.
 */
export interface Problem extends Finding {
  readonly kind: ProblemKind;
}

export type ProblemKind =
  | 'no-folder'
  | 'read-only'
  | 'full'
  | 'busy'
  | 'damaged'
  | 'newer'
  | 'foreign'
  | 'moved'
  | 'orphan'
  | 'unreadable'
  /** Only of a server: it cannot be reached, lets this user not in, or was asked for in a way it cannot be. */
  | 'away'
  | 'not-let-in'
  | 'elsewhere';

/** A problem of this kind, about this place; `detail` is what the system said. */
export function problemAt(
  kind: ProblemKind,
  { what, remedy }: Pick<Finding, 'what' | 'remedy'>,
  where: string,
  detail?: string,
): Problem {
  return { kind, what: detail === undefined ? what : `${what} (${detail})`, where, remedy };
}
