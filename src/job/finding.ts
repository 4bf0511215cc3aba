/** Where in which file something was found. Lines and columns count from 1. */
export interface Place {
  readonly file: string;
  readonly line?: number;
  readonly column?: number;
  /** The key, as in `chambers.web` or `board.stations[2].thick`. */
  readonly path: string;
}

/** Something wrong, or doubtful, in what a builder wrote: where, what, and what would be right. */
export interface Finding {
  readonly severity: 'error' | 'warning';
  readonly where: Place;
  readonly what: string;
  readonly instead: string;
}

/**
 * The same finding where it repeats what was written with a tab or another character that has no sign: a space stands
 * for it.
 */
export function legible(finding: Finding): Finding {
  const plain = (text: string) => text.replace(/\p{Cc}/gu, ' ');
  return { ...finding, what: plain(finding.what), instead: plain(finding.instead) };
}

/** One line for a terminal: `tarn.yaml:31:5: chambers.web: 14 in is … → less than …`. Warnings say so. */
export function printFinding({ severity, where, what, instead }: Finding): string {
  const place = [where.file, where.line, where.column].filter((part) => part !== undefined).join(':');
  const key = where.path === '' ? '' : `${where.path}: `;
  return `${place}: ${severity === 'warning' ? 'warning: ' : ''}${key}${what} → ${instead}`;
}

/**
 * Something that can be, but hardly is, in a job that is planned nevertheless: which key, in which line where that is
 * known, what, and what to do.
 */
export interface Doubt {
  readonly path: string;
  readonly line?: number;
  readonly what: string;
  readonly instead: string;
}

/** `line 23, board.outline[8][1]: half of the width at 66 in … → measure and read it again` */
export function sayDoubt({ path, line, what, instead }: Doubt): string {
  return `${line === undefined ? '' : `line ${line}, `}${path}: ${what} → ${instead}`;
}

/** Warnings of a reading as they go with the job. */
export function doubtsAmong(findings: readonly Finding[]): Doubt[] {
  return findings.flatMap(({ severity, where, what, instead }) =>
    severity === 'warning'
      ? [{ path: where.path, ...(where.line !== undefined && { line: where.line }), what, instead }]
      : [],
  );
}
