import { existsSync, statSync } from 'node:fs';
import { mkdir, rm, rmdir } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import words from '../../templates/disk.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';
import { say } from '../words/say.js';
import { diskFinding } from './diskFinding.js';
import { onDisk, takePlace } from './replace.js';
import { beginStage, type Staging } from './stage.js';
import { whatStandsThere } from './target.js';
import { hashOf, LIST, writeList, writtenIn, type WrittenFile } from './written.js';

/** What is written, where, and what must not be touched. */
export interface Output {
  readonly folder: string;
  /** The command that writes, and the board and the state of its job that it writes of. */
  readonly by: string;
  readonly job: string;
  readonly state: string;
  /** The files that were read for it: the job, its table, its tracker. */
  readonly inputs: readonly string[];
  /** What becomes of files that the same command wrote here before and does not write now: of this plan or another. */
  readonly earlier: 'removed' | 'named' | 'kept';
}

/** What became of it: where something is in the way, nothing in the folder has changed. */
export type Put =
  | {
      readonly ok: true;
      /**
       * Files of an earlier plan that are gone now, and those that still stand there (of an earlier plan, or edited
       * since).
       */
      readonly removed: readonly string[];
      readonly left: readonly string[];
    }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/**
 * The one way in which commands write files: all of them are made aside, and take their places together when every one
 * is whole. What they take the place of must be a file that we wrote ourselves and nobody has edited since; else
 * nothing is written.
 *
 * @param fill makes the files, one after the other
 * @returns why not, where the disk or a file of the builder's stands in the way
 * @throws what `fill` throws, unless it comes from the disk
 */
export async function writeTogether(output: Output, fill: (stage: Staging) => Promise<void>): Promise<Put> {
  const folder = resolve(output.folder);
  let made: string | undefined;
  let stage: Staging | undefined;
  let taking: string | undefined;
  const shown = (name?: string) => (name === undefined ? output.folder : join(output.folder, name));
  try {
    made = await madeFolder(folder);
    const begun = await beginStage(folder);
    if ('busy' in begun)
      return refused({
        where: output.folder,
        what: words.writing.busy.what,
        remedy: say(words.writing.busy.remedy, { stage: shown(begun.busy) }),
      });
    stage = begun;
    await fill(stage);
    const fresh = await hashed(stage, output);
    const list = await writtenIn(folder);
    if (!list) return refused({ where: shown(LIST), ...words.writing.list });
    const inTheWay = await whatStandsThere(output.folder, output.inputs, list, fresh);
    if (inTheWay.length > 0) return { ok: false, findings: inTheWay };
    const put = await inPlace(folder, output, list, fresh, stage, (name) => (taking = name));
    made = undefined;
    return put;
  } catch (error) {
    if (typeof (error as NodeJS.ErrnoException).code !== 'string') throw error;
    const { where, what } = diskFinding(shown(taking ?? stage?.latest()), error);
    return refused({ where, what, remedy: taking === undefined ? words.writing.place : words.writing.taking });
  } finally {
    await stage?.clear();
    if (made !== undefined) await removeEmpty(folder, dirname(made));
  }
}

const refused = (finding: Finding): Put => ({ ok: false, findings: [finding] });

/**
 * What was made, as it will stand in the list; on the disk for good, so that a loss of power leaves the old files or
 * the new ones.
 */
async function hashed(stage: Staging, { by, job, state }: Output): Promise<WrittenFile[]> {
  const all: WrittenFile[] = [];
  for (const name of stage.names()) {
    const path = stage.place(name);
    onDisk(path);
    all.push({ name, sha256: (await hashOf(path))!, by, job, state });
  }
  return all;
}

async function inPlace(
  folder: string,
  output: Output,
  list: readonly WrittenFile[],
  fresh: readonly WrittenFile[],
  stage: Staging,
  take: (name: string) => void,
): Promise<Put> {
  const names = new Set(fresh.map(({ name }) => name));
  const others = list.filter(({ name }) => !names.has(name));
  const release = stage.hold();
  try {
    // Until all is done, a file counts as ours as it was and as it will be: stopped at any point, the next run knows
    // it.
    await writeList(folder, [...list, ...fresh], stage.folder);
    for (const { name } of fresh) {
      take(name);
      takePlace(stage.place(name), join(folder, name));
    }
    const { removed, left, listed } = await earlier(folder, output, others);
    await writeList(folder, [...listed, ...fresh], stage.folder);
    return { ok: true, removed, left };
  } finally {
    release();
  }
}

/**
 * What becomes of the files that the list names beside those just written. Ours are those that still have the bytes we
 * wrote.
 */
async function earlier(folder: string, output: Output, others: readonly WrittenFile[]) {
  const removed: string[] = [];
  const left: string[] = [];
  const listed: WrittenFile[] = [];
  for (const entry of others) {
    const path = join(folder, entry.name);
    if (entry.by !== output.by || output.earlier === 'kept') {
      listed.push(entry);
      continue;
    }
    const there = await hashOf(path);
    if (there === undefined) continue;
    if (there !== entry.sha256) left.push(entry.name);
    else if (output.earlier === 'removed') {
      await rm(path);
      removed.push(entry.name);
    } else {
      if (entry.state !== output.state) left.push(entry.name);
      listed.push(entry);
    }
  }
  return { removed, left, listed };
}

/**
 * Makes a folder and those it stands in; gives the first that was not there. One by one: Node's own way never ends
 * where a folder takes no other, as in `/proc`.
 */
async function madeFolder(folder: string): Promise<string | undefined> {
  if (existsSync(folder)) {
    if (statSync(folder).isDirectory()) return undefined;
    throw Object.assign(new Error(folder), { code: 'ENOTDIR' });
  }
  const first = await madeFolder(dirname(folder));
  await mkdir(folder);
  return first ?? folder;
}

/** Takes the folders away again that were made for nothing: from `folder` up to, but not, `upTo`. */
async function removeEmpty(folder: string, upTo: string): Promise<void> {
  for (let at = folder; at !== upTo && at !== dirname(at); at = dirname(at)) {
    try {
      await rmdir(at);
    } catch {
      return;
    }
  }
}
