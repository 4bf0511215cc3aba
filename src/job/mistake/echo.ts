import type { JobFinding } from '../finding.js';
import type { Mistake } from './issues.js';
import { writePath } from './say.js';

/**
 * Tells findings that only repeat a mistake of shape: about what stands in for a value that could not be read, or in a
 * block whose key was misspelt and so left out. Warnings about a file that could be read in part only are echoes too.
 */
export function echoOf(mistakes: readonly Mistake[]): (finding: JobFinding) => boolean {
  const unread = new Set<string>();
  const misspelt = new Set<string>();
  for (const { path, unknownKey, meant } of mistakes) {
    unread.add(writePath(path));
    if (!unknownKey) continue;
    const block = path.slice(0, -1);
    misspelt.add(writePath(block));
    if (meant !== undefined) unread.add(writePath([...block, meant]));
  }
  return ({ severity, where: { path } }) => {
    if (severity === 'warning') return mistakes.length > 0;
    const around = blocksAround(path);
    return around.some((block) => unread.has(block)) || around.slice(0, 2).some((block) => misspelt.has(block));
  };
}

/**
 * `board.stations[2].thick`, `board.stations[2]`, `board.stations`, `board`: the place itself and every block around
 * it.
 */
function blocksAround(path: string): string[] {
  const blocks = [path];
  for (let i = path.length - 1; i > 0; i--) {
    if (path[i] === '.' || path[i] === '[') blocks.push(path.slice(0, i));
  }
  return blocks;
}
