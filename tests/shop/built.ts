import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/** The tracker as it runs outside the tests: the page as browsers load it, and programs to be started and killed. */
export interface Built {
  readonly pageFolder: string;
  /** Path of a program of `tests/shop/child`, by its name. */
  readonly program: (name: string) => string;
}

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const SOURCES = ['src/shop', 'src/length', 'tests/shop/child', 'tests/shop/rescueBoard.ts', 'vite.config.ts'];

let ready: Promise<Built> | undefined;

/** Builds both, once for each state of the sources; several test files may ask at the same time. */
export function built(): Promise<Built> {
  return (ready ??= buildOnce());
}

async function buildOnce(): Promise<Built> {
  const folder = join(ROOT, 'node_modules/.cache/chamberwright-shop', fingerprint());
  if (!existsSync(folder)) await buildInto(folder);
  return { pageFolder: join(folder, 'page'), program: (name) => join(folder, 'programs', `${name}.mjs`) };
}

async function buildInto(folder: string): Promise<void> {
  const draft = `${folder}.${process.pid}`;
  const programs = readdirSync(join(ROOT, 'tests/shop/child')).map((name) => join(ROOT, 'tests/shop/child', name));
  await build({
    configFile: join(ROOT, 'vite.config.ts'),
    mode: 'shop',
    logLevel: 'warn',
    build: { outDir: join(draft, 'page') },
  });
  await build({
    configFile: false,
    logLevel: 'warn',
    root: ROOT,
    build: {
      ssr: true,
      outDir: join(draft, 'programs'),
      target: 'node20',
      rollupOptions: { input: programs, output: { entryFileNames: '[name].mjs' } },
    },
  });
  mkdirSync(join(folder, '..'), { recursive: true });
  try {
    renameSync(draft, folder);
  } catch (error) {
    // Another test file was faster.
    rmSync(draft, { recursive: true, force: true });
    if (!existsSync(folder)) throw error;
  }
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
