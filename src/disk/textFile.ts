import { readFileSync, statSync } from 'node:fs';
import { reason } from './reason.js';

/** Larger is no job and no table, bytes: such a file is not even read. */
export const MOST_BYTES = 4_000_000;

/** A text, or in words why it cannot be had. */
export type Text = string | { readonly why: string };

/** What a file holds, or in words why it cannot be had. */
export type Bytes = Uint8Array | { readonly why: string };

/** The text of a plain file of a job's or a table's size (UTF-8). */
export function textFile(file: string): Text {
  const bytes = fileBytes(file);
  return 'why' in bytes ? bytes : new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
}

/** The same as it lies on the disk. Pipes and devices, which may never end, are not opened. */
export function fileBytes(file: string): Bytes {
  try {
    const there = statSync(file);
    if (there.isDirectory()) return { why: 'this is a folder' };
    if (!there.isFile()) return { why: 'this is a pipe or a device, not a file' };
    if (there.size > MOST_BYTES) {
      const size = there.size >= 1e9 ? `${(there.size / 1e9).toFixed(1)} GB` : `${Math.ceil(there.size / 1e6)} MB`;
      return { why: `${size} is too large, at most ${MOST_BYTES / 1e6} MB are read` };
    }
    return readFileSync(file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    return { why: code === 'EACCES' || code === 'EPERM' ? 'it may not be read by you' : reason(error) };
  }
}
