import words from '../../templates/disk.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';

/** What went wrong with a file, and what to do where whoever asked for it knows nothing better. */
export function diskFinding(where: string, error: unknown): Finding {
  const { code, message } = error as NodeJS.ErrnoException;
  const known: Readonly<Partial<Record<string, Pick<Finding, 'what' | 'remedy'>>>> = words.reasons;
  return { where, ...((code !== undefined && known[code]) || { what: message, remedy: words.unnamed }) };
}
