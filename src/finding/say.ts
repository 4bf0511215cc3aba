import type { Finding, Place } from './finding.js';

/**
 * A finding in one line, for a terminal or a page: `--date: 2026-02-31 is no day of the calendar → like 2026-05-01`,
 * `tarn.yaml:31:5: chambers.web: 14 in is … → less than …`, `line 23, board.outline[8][1]: … → measure again`.
 */
export const sayFinding = ({ where, what, remedy }: Finding<string | Place>): string =>
  `${typeof where === 'string' ? `${where}: ` : sayPlace(where)}${what} → ${remedy}`;

/** The same of one that does not stand in the way, in what a builder wrote. */
export const sayWarning = ({ where, what, remedy }: Finding<Place>): string =>
  `${sayPlace({ ...where, path: '' })}warning: ${sayPlace({ path: where.path })}${what} → ${remedy}`;

/** A finding as lines of their own, for what takes whole sentences: what, where, what to do. */
export const sayInLines = ({ where, what, remedy }: Finding): string => `${what}\n  ${where}\n  ${remedy}`;

function sayPlace({ file, line, column, path }: Place): string {
  const key = path === '' ? '' : `${path}: `;
  if (file === undefined) return `${line === undefined ? '' : `line ${line}, `}${key}`;
  return `${[file, line, column].filter((part) => part !== undefined).join(':')}: ${key}`;
}
