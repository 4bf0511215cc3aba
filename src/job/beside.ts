import type { Finding } from '../finding/finding.js';

/** The text of a file beside the job; why it cannot be had; or undefined where there is none. */
export type Beside = string | Finding | undefined;

/** The bytes of a file beside the job; why they cannot be had; or undefined where there is none. */
export type BytesBeside = Uint8Array | Finding | undefined;

/** Finds the texts of files by their names. No name means anything else, not even one like `constructor`. */
export function besideIn(texts: Readonly<Record<string, Beside>>): (name: string) => Beside {
  return (name) => (Object.hasOwn(texts, name) ? texts[name] : undefined);
}
