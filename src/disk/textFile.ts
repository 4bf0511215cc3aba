import { readFileSync, statSync } from 'node:fs';
import words from '../../templates/disk.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';
import { say } from '../words/say.js';
import { diskFinding } from './diskFinding.js';

/** Larger is no job and no table, bytes: such a file is not even read. */
export const MOST_BYTES = 4_000_000;

/** Two million triangles as text have this much, bytes; more would not fit into memory with what is made of them. */
export const MOST_MESH_BYTES = 600_000_000;

/** A text, or why it cannot be had. */
export type Text = string | Finding;

/** What a file holds, or why it cannot be had. */
export type Bytes = Uint8Array | Finding;

/** The text of a plain file of a job's or a table's size (UTF-8). */
export function textFile(file: string): Text {
  const bytes = fileBytes(file);
  return 'remedy' in bytes ? bytes : new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
}

/** The bytes of a plain file of a mesh's size. */
export function meshFile(file: string): Bytes {
  return fileBytes(file, MOST_MESH_BYTES);
}

/** The same as it lies on the disk. Pipes and devices, which may never end, are not opened. */
export function fileBytes(file: string, most = MOST_BYTES): Bytes {
  const { unreadable, device, tooLarge } = words.reading;
  try {
    const there = statSync(file);
    if (there.isDirectory()) return { where: file, ...words.reasons.EISDIR };
    if (!there.isFile()) return { where: file, ...device };
    if (there.size > most) {
      const size = there.size >= 1e9 ? `${(there.size / 1e9).toFixed(1)} GB` : `${Math.ceil(there.size / 1e6)} MB`;
      return { where: file, ...tooLarge, what: say(tooLarge.what, { size, most: most / 1e6 }) };
    }
    return readFileSync(file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    return code === 'EACCES' || code === 'EPERM' ? { where: file, ...unreadable } : diskFinding(file, error);
  }
}
