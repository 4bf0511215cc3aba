import { createHash } from 'node:crypto';
import { accessSync, constants, existsSync, statSync } from 'node:fs';
import { basename, dirname, extname, join, resolve } from 'node:path';
import words from '../../templates/command.json' with { type: 'json' };
import { writeTogether, type Output } from '../disk/output.js';
import { diskFinding } from '../disk/diskFinding.js';
import type { Staging } from '../disk/stage.js';
import type { Finding } from '../finding/finding.js';
import { sayFinding } from '../finding/say.js';
import { say } from '../words/say.js';
import type { Io } from './io.js';
import type { JobRead } from './jobFile.js';

/** Where a command writes, and what becomes of what it wrote there before. */
export type Where = Pick<Output, 'folder' | 'by' | 'earlier'>;

/** Writes files that go together, or says why not; then nothing has changed. */
export async function written(
  where: Where,
  { job, inputs }: JobRead,
  io: Io,
  fill: (stage: Staging) => Promise<void>,
): Promise<boolean> {
  const state = createHash('sha256').update(JSON.stringify(job, briefly)).digest('hex').slice(0, 12);
  const put = await writeTogether({ ...where, inputs, job: job.name, state }, fill);
  if (!put.ok) {
    for (const finding of put.findings) io.err(sayFinding(finding));
    io.err('Nothing was written.');
    return false;
  }
  const list = (names: readonly string[]) => names.map((name) => join(where.folder, name)).join(', ');
  if (put.removed.length > 0) io.out(`Removed, since they are of an earlier plan: ${list(put.removed)}`);
  if (put.left.length > 0)
    io.err(`Still there, of an earlier plan or edited since, do not work by them: ${list(put.left)}`);
  return true;
}

/** Long lists of numbers by their fingerprint. */
function briefly(_: string, value: unknown): unknown {
  if (!ArrayBuffer.isView(value)) return value;
  const bytes = new Uint8Array(value.buffer, value.byteOffset, value.byteLength);
  return createHash('sha256').update(bytes).digest('hex');
}

/** Writes one file. */
export function writtenAlone(file: string, by: string, read: JobRead, io: Io, contents: string | Uint8Array) {
  return written({ folder: dirname(file), by, earlier: 'kept' }, read, io, (stage) =>
    stage.put(basename(file), contents),
  );
}

/** What is wrong with the name of a file of this kind; nothing where it can be called so. */
export function misnamed(file: string, ...kinds: readonly string[]): Finding | undefined {
  const ending = extname(file).toLowerCase();
  if (kinds.includes(ending) && basename(file).length > ending.length) return undefined;
  const remedy = `${basename(file, extname(file)) || 'board'}${kinds[0]!}`;
  return { where: file, what: say(words.named.ending, { ending: kinds.join(words.named.or) }), remedy };
}

/** Looks, before any work, whether a folder can be written to or made; gives why not. Makes nothing yet. */
export function notWritable(folder: string): Finding | undefined {
  let there = resolve(folder);
  while (!existsSync(there) && there !== dirname(there)) there = dirname(there);
  try {
    if (!statSync(there).isDirectory()) throw Object.assign(new Error(), { code: 'ENOTDIR' });
    accessSync(there, constants.W_OK | constants.X_OK);
    return undefined;
  } catch (error) {
    return { ...diskFinding(folder, error), remedy: words.folder };
  }
}
