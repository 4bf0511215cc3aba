import { lstat, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { hashOf, LIST, type Written } from './written.js';

/**
 * What may not be written over, each said in a line: a file's own inputs, links, folders, files that are not ours or
 * were edited.
 */
export async function whatStandsThere(
  folder: string,
  inputs: readonly string[],
  list: readonly Written[],
  fresh: readonly Written[],
): Promise<string[]> {
  const inTheWay: string[] = [];
  const places = await Promise.all(inputs.map(placeOf));
  for (const { name } of fresh) {
    const path = join(folder, name);
    const why = await standsThere(path, name, list, (place) => {
      const i = places.findIndex((each) => each !== undefined && each === place);
      return i < 0 ? undefined : basename(inputs[i]!);
    });
    if (why) inTheWay.push(`${path}: ${why}`);
  }
  return inTheWay;
}

async function standsThere(
  path: string,
  name: string,
  list: readonly Written[],
  inputAt: (place: string) => string | undefined,
): Promise<string | undefined> {
  const there = await lstat(path, { bigint: true }).catch(() => undefined);
  if (!there) return undefined;
  const input = inputAt(`${there.dev}:${there.ino}`);
  if (input !== undefined) return `this is ${input} itself, from which the plan is made → name another file`;
  if (there.isDirectory()) return 'this is a folder → name another file, or choose another folder';
  if (!there.isFile()) return 'this is a link or a device, not a plain file → name another file';
  if (name === LIST) return 'chamberwright keeps its own list there → name another file';
  const hash = await hashOf(path);
  // Its bytes, not its name, tell whose it is: so the name may differ in capitals on a disk that does not mind them.
  if (list.some(({ sha256 }) => sha256 === hash)) return undefined;
  return list.some((entry) => entry.name === name)
    ? 'it was changed since chamberwright wrote it → keep it under another name, or choose another folder'
    : 'chamberwright did not write this file → move it away, or choose another name or folder';
}

/** What a path stands for on the disk, whatever it is called: device and number. Links are followed. */
async function placeOf(file: string): Promise<string | undefined> {
  const there = await stat(file, { bigint: true }).catch(() => undefined);
  return there && `${there.dev}:${there.ino}`;
}
