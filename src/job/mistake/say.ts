import type { JobFinding, FilePlace } from '../finding.js';

/** Keys and list places from the top of the file: `['board', 'stations', 2, 'thick']`. */
export type Path = readonly (string | number)[];

/** How a part of the reader says what it found, without knowing lines and files. Paths are relative to the part. */
export interface Say {
  error(path: Path, what: string, remedy: string): void;
  warning(path: Path, what: string, remedy: string): void;
  /** The same, for the part of the file at `path`. */
  at(...path: Path): Say;
}

/**
 * @param found takes each finding
 * @param placeOf where a path stands in the file
 */
export function sayTo(found: (finding: JobFinding) => void, placeOf: (path: Path) => FilePlace, base: Path = []): Say {
  const say =
    (severity: JobFinding['severity']) =>
    (path: Path, what: string, remedy: string): void =>
      found({ severity, where: placeOf([...base, ...path]), what, remedy });
  return {
    error: say('error'),
    warning: say('warning'),
    at: (...path) => sayTo(found, placeOf, [...base, ...path]),
  };
}

/** `board.stations[2].thick` */
export function writePath(path: Path): string {
  return path.map((step, i) => (typeof step === 'number' ? `[${step}]` : i === 0 ? step : `.${step}`)).join('');
}
