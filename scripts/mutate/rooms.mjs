// The rooms that compute, their source files, and the tests that hold them.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

const COMPUTING = ['contour', 'board', 'layup', 'chamber', 'wall', 'dot', 'rout', 'block', 'weigh', 'fin', 'finish'];
/** Asked when a room's own tests have seen nothing: the proof by the published figures, then by a kernel. */
export const PROOFS = ['tests/proof/stands.test.ts', 'tests/proof/samples.test.ts'];

export const ROOMS = COMPUTING.filter((room) => existsSync(`src/${room}`));

export const sourcesOf = (room) => filesIn(`src/${room}`).filter((file) => !file.endsWith('.d.ts'));
export const testsOf = (room) =>
  [`tests/${room}`, `tests/whole/${room}`].flatMap(filesIn).filter((file) => file.endsWith('.test.ts'));

function filesIn(folder) {
  if (!existsSync(folder)) return [];
  const all = readdirSync(folder, { recursive: true }).map((name) => join(folder, String(name)));
  return all.filter((name) => name.endsWith('.ts')).sort();
}

/** The files of the project that a file imports by itself; with `all`, those that they import too. */
export function importsOf(file, all = false, found = new Set()) {
  for (const [, name] of readFileSync(file, 'utf8').matchAll(
    /^(?:import|export)\b(?! type)[^;]*?from '(\.[^']+)'/gms,
  )) {
    const path = join(dirname(file), name.replace(/\.js$/, '.ts'));
    if (found.has(path) || !existsSync(path)) continue;
    found.add(path);
    if (all) importsOf(path, true, found);
  }
  return found;
}

/** One word for what some files say, so that a change of any is noticed. */
export function hashOf(files) {
  const hash = createHash('sha256');
  for (const file of files) hash.update(`${file}\n${readFileSync(resolve(file), 'utf8')}\n`);
  return hash.digest('hex').slice(0, 16);
}
