/** What reading a person's writing gives: a value, or what is wrong with it and what would be right. */
export type Parsed<T = number> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly what: string; readonly remedy: string };

export const read = <T>(value: T): Parsed<T> => ({ ok: true, value });
export const unread = (what: string, remedy: string): Parsed<never> => ({ ok: false, what, remedy });
