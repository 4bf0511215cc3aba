/**
 * Something a builder set that cannot be printed as asked: what, where, and what to do about it. A value, not an
 * exception.
 */
export interface Finding {
  readonly where: string;
  readonly what: string;
  readonly remedy: string;
}
