import type { Finding } from '../finding/finding.js';
import { sayFinding } from '../finding/say.js';
import { REFUSED, type Io } from './io.js';
import { USAGE } from './usage.js';

/** Says why a command is refused, and how it is called where it was called in another way; gives its exit code. */
export function refuse(io: Io, finding: Finding, command?: keyof typeof USAGE): number {
  io.err(sayFinding(finding) + (command === undefined ? '' : `\n\n  chamberwright ${USAGE[command]}`));
  return REFUSED;
}
