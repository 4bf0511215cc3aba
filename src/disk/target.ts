import { lstat, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import words from '../../templates/disk.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';
import { say } from '../words/say.js';
import { hashOf, LIST, type WrittenFile } from './written.js';

/**
 * What may not be written over: a file's own inputs, links, folders, files that are not ours or
 * were edited.
 */
export async function whatStandsThere(
  folder: string,
  inputs: readonly string[],
  list: readonly WrittenFile[],
  fresh: readonly WrittenFile[],
): Promise<Finding[]> {
  const inTheWay: Finding[] = [];
  const places = await Promise.all(inputs.map(placeOf));
  for (const { name } of fresh) {
    const path = join(folder, name);
    const found = await standsThere(path, name, list, (place) => {
      const i = places.findIndex((each) => each !== undefined && each === place);
      return i < 0 ? undefined : basename(inputs[i]!);
    });
    if (found) inTheWay.push({ where: path, ...found });
  }
  return inTheWay;
}

async function standsThere(
  path: string,
  name: string,
  list: readonly WrittenFile[],
  inputAt: (place: string) => string | undefined,
): Promise<Omit<Finding, 'where'> | undefined> {
  const there = await lstat(path, { bigint: true }).catch(() => undefined);
  if (!there) return undefined;
  const input = inputAt(`${there.dev}:${there.ino}`);
  if (input !== undefined) return { ...words.writing.input, what: say(words.writing.input.what, { input }) };
  if (there.isDirectory()) return words.writing.folder;
  if (!there.isFile()) return words.writing.link;
  if (name === LIST) return words.writing.ownList;
  const hash = await hashOf(path);
  // Its bytes, not its name, tell whose it is: so the name may differ in capitals on a disk that does not mind them.
  if (list.some(({ sha256 }) => sha256 === hash)) return undefined;
  return list.some((entry) => entry.name === name) ? words.writing.changed : words.writing.foreign;
}

/** What a path stands for on the disk, whatever it is called: device and number. Links are followed. */
async function placeOf(file: string): Promise<string | undefined> {
  const there = await stat(file, { bigint: true }).catch(() => undefined);
  return there && `${there.dev}:${there.ino}`;
}
