import type { JobFinding } from '../finding.js';

/** More than this nobody reads at once. */
export const MOST_FINDINGS = 200;

/**
 * The job file's findings first, each file's from its top to its end, nothing twice; what is too much is only counted.
 *
 * @param unsaid mistakes beside these that were not looked into
 */
export function inOrder(findings: readonly JobFinding[], fileName: string, unsaid: number): JobFinding[] {
  const known = new Set<string>();
  const once = findings.filter(({ where, what }) => {
    const name = [where.file, where.line, where.column, where.path, what].join('\n');
    return !known.has(name) && known.add(name);
  });
  const file = (finding: JobFinding): number => (finding.where.file === fileName ? 0 : 1);
  const at = ({ where }: JobFinding): number => (where.line ?? 0) * 1e6 + (where.column ?? 0);
  const sorted = once.sort((a, b) => file(a) - file(b) || at(a) - at(b));
  const more = Math.max(0, sorted.length - MOST_FINDINGS) + unsaid;
  if (more === 0) return sorted;
  const where = { file: fileName, path: '' };
  const rest = `${more} more mistakes like these`;
  return [
    ...sorted.slice(0, MOST_FINDINGS),
    { severity: 'error', where, what: rest, remedy: 'mend these first and read again' },
  ];
}
