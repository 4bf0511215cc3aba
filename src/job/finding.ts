import type { Finding, Place } from '../finding/finding.js';
import { sayFinding, sayWarning } from '../finding/say.js';

/** A place of which the file is told. */
export type FilePlace = Place & { readonly file: string };

/** Something wrong, or doubtful, in what a builder wrote: in which file, what, and what would be right. */
export interface JobFinding extends Finding<FilePlace> {
  readonly severity: 'error' | 'warning';
}

/**
 * The same finding where it repeats what was written with a tab or another character that has no sign: a space stands
 * for it.
 */
export function legible(finding: JobFinding): JobFinding {
  const plain = (text: string) => text.replace(/\p{Cc}/gu, ' ');
  return { ...finding, what: plain(finding.what), remedy: plain(finding.remedy) };
}

/** One line for a terminal or the page. Warnings say so. */
export const sayJobFinding = (finding: JobFinding): string =>
  finding.severity === 'warning' ? sayWarning(finding) : sayFinding(finding);

/**
 * Something that can be, but hardly is, in a job that is planned nevertheless: which key, in which line where that is
 * known, what, and what to do.
 */
export type Doubt = Finding<Place>;

/** Warnings of a reading as they go with the job. */
export function doubtsAmong(findings: readonly JobFinding[]): Doubt[] {
  return findings.flatMap(({ severity, where: { path, line }, what, remedy }) =>
    severity === 'warning' ? [{ where: { path, ...(line !== undefined && { line }) }, what, remedy }] : [],
  );
}
