import { randomUUID } from 'node:crypto';
import { parseArgs } from 'node:util';
import { admitted } from './door.js';
import type { Happening, ShopEvent } from './event.js';
import { readList, writeList } from './listCsv.js';
import { refitsOf } from './refits.js';
import { serveShop, type ServeIo } from './serve.js';
import { paceOfShop } from './server/shopRoutes.js';
import { isStep, STEPS } from './step.js';
import { openStore, trackerPath } from './store/openStore.js';
import { sayProblem, type Problem } from './store/problem.js';
import type { ShopStore } from './store/shopStore.js';
import { blockReport, boardReport, refitReport } from './trackReport.js';
import type { TrackedBlock } from './trackedBlock.js';

/** What the command works on and talks to. */
export interface TrackIo extends ServeIo {
  readonly jobFile: string;
  readonly readText: (file: string) => string;
  readonly writeText: (file: string, text: string) => void;
}

export const TRACK_HELP = `chamberwright track JOB                       where the board stands
chamberwright track JOB BLOCK...              what is known about these blocks
chamberwright track JOB BLOCK... STEP         record a step: ${STEPS.join(', ')}
      --undo                                  take the step back
      --who NAME   --note TEXT                who did it; something to remember
chamberwright track JOB export FILE.csv       the tracking list with what is done
chamberwright track JOB import FILE.csv       take over what such a list says is done (adds, never takes back)
chamberwright track JOB serve                 the page for the shop, on this machine only
      --share [ADDRESS]                       let phones in the same network in, each by a code
      --port NUMBER
chamberwright track JOB forget-phones         shut out every phone let in so far`;

/**
 * The command `chamberwright track JOB`, from what follows the job.
 *
 * @returns 0 when it is done, 1 when something is in the way, 2 when it was not understood
 */
export async function trackCommand(args: readonly string[], io: TrackIo): Promise<number> {
  const read = readArgs(args);
  if (typeof read === 'string') {
    io.err(`${read}\n\n${TRACK_HELP}`);
    return 2;
  }
  const opened = openStore(trackerPath(io.jobFile));
  if (!opened.ok) return failed(io, opened.problem);
  const { store, notices } = opened;
  try {
    for (const notice of notices) io.err(notice);
    const recorded = store.recordPlan(io.job, io.blocks, Date.now());
    if (!recorded.ok) return failed(io, recorded.problem);
    return await run(read, store, recorded.value.number, io);
  } finally {
    store.close();
  }
}

interface TrackArgs {
  readonly words: readonly string[];
  readonly undo: boolean;
  readonly who: string;
  readonly note?: string;
  readonly share?: string | true;
  readonly port?: number;
}

async function run(args: TrackArgs, store: ShopStore, plan: number, io: TrackIo): Promise<number> {
  const [first, file] = args.words;
  switch (first) {
    case undefined:
      return showBoard(store, io);
    case 'export':
    case 'import':
      if (file === undefined || args.words.length > 2)
        return misunderstood(io, `${first} needs one file: track JOB ${first} FILE.csv`);
      return first === 'export' ? exportList(file, store, io) : importList(file, args, store, plan, io);
    case 'serve':
      return serveShop(store, {
        ...io,
        ...(args.share === undefined ? {} : { share: args.share }),
        ...(args.port === undefined ? {} : { port: args.port }),
      });
    case 'forget-phones': {
      const done = store.forgetSessions();
      if (!done.ok) return failed(io, done.problem);
      io.out(
        `${done.value} ${done.value === 1 ? 'phone' : 'phones'} shut out. Let them in again with track JOB serve --share.`,
      );
      return 0;
    }
    default:
      return blocksAndStep(args, store, plan, io);
  }
}

function showBoard(store: ShopStore, io: TrackIo): number {
  for (const line of boardReport(io.job, io.blocks, store.state, paceOfShop(store))) io.out(line);
  const refits = refitReport(
    refitsOf(io.blocks, store.state, (number) => store.plan(number)?.blocks),
    io.units,
  );
  if (refits.length > 0) ['', 'The plan has changed since these were made:', ...refits].forEach(io.out);
  return 0;
}

function blocksAndStep(args: TrackArgs, store: ShopStore, plan: number, io: TrackIo): number {
  const last = args.words.at(-1)!;
  const step = isStep(last) ? last : undefined;
  const ids = step ? args.words.slice(0, -1) : args.words;
  const blocks = ids.map((id) => io.blocks.find((block) => block.id.toLowerCase() === id.toLowerCase()));
  const unknown = ids.filter((_, i) => blocks[i] === undefined);
  if (unknown.length > 0) return misunderstood(io, sayUnknown(unknown, io.blocks));
  if (blocks.length === 0) return misunderstood(io, `Which block is ${last}? track JOB R2-07 ${last}`);
  if (args.undo && !step) return misunderstood(io, `--undo needs the step to take back: ${STEPS.join(', ')}`);
  const entries = (blocks as TrackedBlock[]).flatMap(({ id }): Happening[] => [
    ...(step ? [{ kind: 'step', block: id, step, done: !args.undo } as const] : []),
    ...(args.note === undefined ? [] : [{ kind: 'note', block: id, text: args.note } as const]),
  ]);
  if (entries.length > 0) {
    const failure = record(entries, 'command', args.who, plan, store, io);
    if (failure > 0) return failure;
  }
  for (const block of blocks as TrackedBlock[]) blockReport(block, store.state, io.units).forEach(io.out);
  return 0;
}

function exportList(file: string, store: ShopStore, io: TrackIo): number {
  try {
    io.writeText(file, writeList(io.blocks, store.state, io.units));
  } catch (error) {
    io.err(`The list could not be written (${(error as Error).message}). Choose another place.`);
    return 1;
  }
  io.out(`${io.blocks.length} blocks written to ${file}`);
  return 0;
}

function importList(file: string, args: TrackArgs, store: ShopStore, plan: number, io: TrackIo): number {
  let text: string;
  try {
    text = io.readText(file);
  } catch (error) {
    io.err(`The list could not be read (${(error as Error).message}). Check its name.`);
    return 1;
  }
  const list = readList(text, io.blocks, store.state);
  if (!list.ok) {
    for (const { line, what } of list.findings) io.err(`${file}${line > 0 ? `, line ${line}` : ''}: ${what}`);
    io.err('Nothing was taken over.');
    return 1;
  }
  const failure = list.entries.length === 0 ? 0 : record(list.entries, 'csv', args.who, plan, store, io);
  if (failure > 0) return failure;
  io.out(`${list.entries.length} ${list.entries.length === 1 ? 'entry' : 'entries'} taken over from ${file}`);
  list.differences.forEach(io.out);
  return 0;
}

/** Records what one command enters, all or nothing: a client of its own, that lives no longer than the command. Gives the exit code. */
function record(
  entries: readonly Happening[],
  via: ShopEvent['via'],
  who: string,
  plan: number,
  store: ShopStore,
  io: TrackIo,
): number {
  const now = Date.now();
  const client = `${via}-${randomUUID()}`;
  const events = entries.map((what, i): ShopEvent => ({
    client,
    seq: i + 1,
    seen: store.state.last,
    plan,
    at: now,
    who,
    via,
    what,
  }));
  const { refused } = admitted(events, store.places());
  for (const { index, why } of refused) io.err(`${sayEntry(entries[index]!)}: ${why}`);
  if (refused.length > 0) {
    io.err('Nothing was recorded.');
    return 2;
  }
  const done = store.append(events, now, now);
  if (!done.ok) return failed(io, done.problem);
  store.refresh();
  return 0;
}

function readArgs(args: readonly string[]): TrackArgs | string {
  try {
    // `--share` stands alone or with an address.
    const withShare = args.map((arg, i) =>
      arg === '--share' && !/^\d+(\.\d+){3}$/.test(args[i + 1] ?? '') ? '--share=' : arg,
    );
    const { values, positionals } = parseArgs({
      args: withShare,
      allowPositionals: true,
      options: {
        undo: { type: 'boolean', default: false },
        who: { type: 'string', default: '' },
        note: { type: 'string' },
        share: { type: 'string' },
        port: { type: 'string' },
      },
    });
    const port = values.port === undefined ? undefined : Number(values.port);
    if (port !== undefined && !(Number.isInteger(port) && port >= 1024 && port <= 65535))
      return '--port: a number from 1024 to 65535.';
    if (values.who.length > 60) return '--who: at most 60 letters.';
    if (values.note !== undefined && (values.note === '' || values.note.length > 2000))
      return '--note: 1 to 2000 letters.';
    return {
      words: positionals,
      undo: values.undo,
      who: values.who,
      ...(values.note === undefined ? {} : { note: values.note }),
      ...(values.share === undefined ? {} : { share: values.share === '' ? true : values.share }),
      ...(port === undefined ? {} : { port }),
    };
  } catch (error) {
    return (error as Error).message;
  }
}

function sayEntry(what: Happening): string {
  return `${what.kind === 'timer' ? what.batch : what.block}, ${what.kind === 'step' ? what.step : what.kind}`;
}

function sayUnknown(unknown: readonly string[], blocks: readonly TrackedBlock[]): string {
  const rows = [...new Set(blocks.map(({ row }) => row))].join(', ');
  const first = blocks[0]?.id ?? 'R2-07';
  return `Not a block of this plan: ${unknown.join(', ')}. Numbers look like ${first}; the rows are ${rows}. Steps: ${STEPS.join(', ')}.`;
}

function failed(io: TrackIo, problem: Problem): number {
  io.err(sayProblem(problem));
  return 1;
}

function misunderstood(io: TrackIo, what: string): number {
  io.err(`${what}\n\n${TRACK_HELP}`);
  return 2;
}
