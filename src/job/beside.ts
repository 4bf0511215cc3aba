import type { Finding } from '../finding/finding.js';

/** The text of a file beside the job; why it cannot be had; or undefined where there is none. */
export type Beside = string | Finding | undefined;

/** Finds the texts of files by their names. No name means anything else, not even one like `constructor`. */
export function besideIn(texts: Readonly<Record<string, Beside>>): (name: string) => Beside {
  return (name) => (Object.hasOwn(texts, name) ? texts[name] : undefined);
}
