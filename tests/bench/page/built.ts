import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
/** What the page is made of: the rooms that compute, and its own. */
const SOURCES = ['src', 'templates', 'vite.config.ts', 'package-lock.json'];

/** Builds the page as it is shipped, once for each state of the sources; gives its folder. */
export async function builtPage(): Promise<string> {
  const folder = join(ROOT, 'node_modules/.cache/chamberwright-bench', fingerprint());
  if (existsSync(folder)) return folder;
  const draft = `${folder}.${process.pid}`;
  await build({ configFile: join(ROOT, 'vite.config.ts'), mode: 'bench', logLevel: 'error', build: { outDir: draft } });
  mkdirSync(join(folder, '..'), { recursive: true });
  try {
    renameSync(draft, folder);
  } catch (error) {
    // Another test file was faster.
    rmSync(draft, { recursive: true, force: true });
    if (!existsSync(folder)) throw error;
  }
  return folder;
}

function fingerprint(): string {
  const hash = createHash('sha256');
  const add = (path: string): void => {
    if (statSync(path).isDirectory()) for (const name of readdirSync(path).sort()) add(join(path, name));
    else hash.update(path).update(readFileSync(path));
  };
  for (const source of SOURCES) add(join(ROOT, source));
  return hash.digest('hex').slice(0, 16);
}
