import words from '../../templates/command.json' with { type: 'json' };
import { counted } from '../length/counted.js';
import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import type { Bytes } from '../disk/textFile.js';
import { typed } from '../typed/args.js';
import { admitted } from './log/door.js';
import { MOST_NAME, MOST_NOTE, type Happening, type ShopEvent } from './log/event.js';
import { readList, writeList, type ListEntry, type ListOf } from './list/listCsv.js';
import { listText } from './list/listText.js';
import type { Misfit } from './fit/refit.js';
import { refitsOf } from './fit/refits.js';
import { serveShop, type ServeIo } from './serve.js';
import { paceOfShop } from './server/shopRoutes.js';
import { answersTo, isAnswer, settled, type Answer } from './fit/settle.js';
import { UNTOUCHED } from './log/state.js';
import { isStep, STEPS, type Step } from './log/step.js';
import { openSource, openStore } from './openStore.js';
import type { Finding } from '../finding/finding.js';
import { sayFinding, sayInLines } from '../finding/say.js';
import { say } from '../words/say.js';
import type { Problem } from './store/problem.js';
import type { PlanRecord } from './store/planRecord.js';
import type { Done, ShopStore } from './store/shopStore.js';
import { trackerPath } from './store/trackerPath.js';
import { blockReport, boardReport, refitReport } from './report/trackReport.js';
import type { TrackedBlock } from './log/trackedBlock.js';
import { TRACK_HELP } from './trackHelp.js';

/** What the command is called with. */
export interface TrackCall extends Omit<ServeIo, 'blocks'> {
  readonly jobFile: string;
  /** Plans the job; asked for only where the tracker does not know the plan of just this job already. */
  readonly plan: () => Promise<readonly TrackedBlock[]>;
  /**
   * What the plan depends on, in short: the job and the program. Absent where the program cannot be told from another
   * of the same version.
   */
  readonly planMark?: string;
  readonly readBytes: (file: string) => Bytes;
  /** Writes a list, unless something stands in the way, which it says. */
  readonly writeList: (file: string, text: string) => Promise<boolean>;
}

/** What the command works on and talks to, once the plan is known. */
interface TrackIo extends TrackCall {
  readonly blocks: readonly TrackedBlock[];
}

/**
 * The command `chamberwright track JOB`, from what follows the job.
 *
 * @returns 0 when it is done, 1 when blocks in hand no longer fit the plan, 2 when it was not understood or something
 *   is in the way
 */
export async function trackCommand(args: readonly string[], io: TrackCall): Promise<number> {
  const read = readArgs(args);
  if ('remedy' in read) return misunderstood(io, read);
  // What was mistyped is found before a tracker is begun.
  const isBegun = read.store !== undefined || existsSync(trackerPath(io.jobFile));
  const planned = isBegun ? undefined : await io.plan();
  const early = planned && notUnderstood(read, planned);
  if (early !== undefined) return misunderstood(io, early);
  const opened = await openStore(io.jobFile, read.store);
  if (!opened.ok) return failed(io, opened.problem);
  const { store, notices } = opened;
  try {
    for (const notice of notices) io.err(notice);
    const known = planned ? undefined : await knownPlan(store, io);
    const blocks = planned ?? known?.blocks ?? (await io.plan());
    const late = notUnderstood(read, blocks);
    if (late !== undefined) return misunderstood(io, late);
    const recorded = known ? ({ ok: true, value: known } as const) : await recordPlan(store, blocks, io);
    if (!recorded.ok) return failed(io, recorded.problem);
    return await run(read, store, recorded.value.number, { ...io, blocks });
  } finally {
    await store.close();
  }
}

/** The setting that says of which job and program the newest plan is. */
const PLANNED = 'planned';

/**
 * The newest plan recorded, where it is that of just this job and this program: planning it again would give the same.
 */
async function knownPlan(store: ShopStore, { planMark }: TrackCall): Promise<PlanRecord | undefined> {
  if (planMark === undefined) return undefined;
  const newest = (await store.plans()).at(-1);
  return newest && (await store.setting(PLANNED)) === `${planMark} ${newest.number}` ? newest : undefined;
}

async function recordPlan(
  store: ShopStore,
  blocks: readonly TrackedBlock[],
  { job, planMark }: TrackCall,
): Promise<Done<PlanRecord>> {
  const recorded = await store.recordPlan(job, blocks, Date.now());
  if (!recorded.ok || planMark === undefined) return recorded;
  const marked = await store.setSetting(PLANNED, `${planMark} ${recorded.value.number}`);
  return marked.ok ? recorded : marked;
}

interface TrackArgs {
  readonly words: readonly string[];
  readonly undo: boolean;
  readonly who: string;
  readonly note?: string;
  readonly share?: string | true;
  readonly port?: number;
  readonly store?: string;
}

async function run(args: TrackArgs, store: ShopStore, plan: number, io: TrackIo): Promise<number> {
  const [first, file] = args.words;
  switch (first) {
    case undefined:
      return showBoard(store, io);
    case 'export':
    case 'import':
      return first === 'export' ? exportList(file!, store, io) : importList(file!, args, store, plan, io);
    case 'take':
      return takeFrom(file!, store, io);
    case 'serve':
      return serveShop(store, {
        ...io,
        ...(args.share === undefined ? {} : { share: args.share }),
        ...(args.port === undefined ? {} : { port: args.port }),
      });
    case 'forget-phones': {
      const done = await store.forgetSessions();
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

/** What is wrong with the words, found before a tracker is begun. */
function notUnderstood({ words: typed, undo }: TrackArgs, blocks: readonly TrackedBlock[]): Finding | undefined {
  const [first, ...others] = typed;
  const { word, file, take, unknown, which, undo: undone } = words.track;
  if (first === undefined || first === 'serve' || first === 'forget-phones')
    return others.length > 0 ? { where: others.join(' '), ...word } : undefined;
  if (first === 'export' || first === 'import' || first === 'take') {
    const { what, remedy } = first === 'take' ? take : file;
    return others.length === 1 ? undefined : { where: first, what, remedy: say(remedy, { word: first }) };
  }
  const { ids, step, answer } = blocksAndStepOf(typed);
  const strange = ids.filter((id) => !blocks.some((block) => isCalled(block, id)));
  const like = blocks[0]?.id ?? 'R2-07';
  if (strange.length > 0) {
    const rows = [...new Set(blocks.map(({ row }) => row))].join(', ');
    const remedy = say(unknown.remedy, { like, rows, steps: STEPS.join(', ') });
    return { where: strange.join(', '), what: unknown.what, remedy };
  }
  const last = step ?? answer;
  if (ids.length === 0 && last)
    return { where: last, what: which.what, remedy: say(which.remedy, { like, word: last }) };
  return undo && !step
    ? { where: '--undo', what: undone.what, remedy: say(undone.remedy, { steps: STEPS.join(', ') }) }
    : undefined;
}

function blocksAndStepOf(words: readonly string[]): { ids: readonly string[]; step?: Step; answer?: Answer } {
  const last = words.at(-1)!.toLowerCase();
  const ids = words.slice(0, -1);
  if (isStep(last)) return { ids, step: last };
  return isAnswer(last) ? { ids, answer: last } : { ids: words };
}

const isCalled = ({ id }: TrackedBlock, typed: string): boolean => id.toLowerCase() === typed.toLowerCase();

async function showBoard(store: ShopStore, io: TrackIo): Promise<number> {
  const refits = await misfits(store, io);
  for (const line of boardReport(io.job, io.blocks, store.state, await paceOfShop(store), refits)) io.out(line);
  refitReport(refits, io.units).forEach(io.out);
  return refits.size > 0 ? 1 : 0;
}

async function misfits(store: ShopStore, { blocks }: TrackIo): Promise<ReadonlyMap<string, Misfit>> {
  return refitsOf(blocks, store.state, await store.plans());
}

async function blocksAndStep(args: TrackArgs, store: ShopStore, plan: number, io: TrackIo): Promise<number> {
  const { ids, step, answer } = blocksAndStepOf(args.words);
  const blocks = ids.map((id) => io.blocks.find((block) => isCalled(block, id))!);
  const before = await misfits(store, io);
  const refused = blocks.flatMap(({ id }) => whyNot(id, step, answer, args.undo, before.get(id), io));
  if (refused.length > 0) {
    [...refused, 'Nothing was recorded.'].forEach(io.err);
    return 2;
  }
  const entries = blocks.flatMap(({ id }): Happening[] => [
    ...(step ? [{ kind: 'step', block: id, step, done: !args.undo } as const] : []),
    ...(answer ? settled(answer, id, store.state.blocks.get(id) ?? UNTOUCHED) : []),
    ...(args.note === undefined ? [] : [{ kind: 'note', block: id, text: args.note } as const]),
  ]);
  if (entries.length > 0) {
    const said = entries.map((what) => ({ what }));
    const failure = await record(said, 'command', args.who, plan, store, io);
    if (failure > 0) return failure;
  }
  const after = await misfits(store, io);
  for (const block of blocks) blockReport(block, store.state, io.units, after.get(block.id)).forEach(io.out);
  return 0;
}

/**
 * Why a step or an answer cannot be recorded for a block as the plan is now: work on a block that does not fit would be
 * told as done.
 */
function whyNot(
  id: string,
  step: Step | undefined,
  answer: Answer | undefined,
  undo: boolean,
  misfit: Misfit | undefined,
  io: TrackIo,
): readonly string[] {
  if (answer && !misfit)
    return [sayFinding({ where: id, ...words.track.fits, remedy: say(words.track.fits.remedy, { answer }) })];
  if (!misfit || undo) return [];
  if (answer ? answersTo(misfit).includes(answer) : !step) return [];
  return refitReport(new Map([[id, misfit]]), io.units).slice(-1);
}

async function exportList(file: string, store: ShopStore, io: TrackIo): Promise<number> {
  if (!(await io.writeList(file, writeList(await listOf(store, io), Date.now())))) return 2;
  io.out(`${counted(io.blocks.length, 'block')} written to ${file}`);
  return 0;
}

async function importList(file: string, args: TrackArgs, store: ShopStore, plan: number, io: TrackIo): Promise<number> {
  const bytes = io.readBytes(file);
  if ('remedy' in bytes) {
    io.err(sayFinding({ ...bytes, where: file, remedy: words.track.list }));
    return 2;
  }
  const { text, removed } = listText(bytes);
  const list = readList(text, await listOf(store, io), Date.now());
  if (!list.ok) {
    for (const finding of list.findings) io.err(sayFinding({ ...finding, where: { ...finding.where, file } }));
    io.err('Nothing was taken over.');
    return 2;
  }
  const failure = list.entries.length === 0 ? 0 : await record(list.entries, 'csv', args.who, plan, store, io);
  if (failure > 0) return failure;
  io.out(`${counted(list.entries.length, 'entry', 'entries')} taken over from ${file}`);
  if (removed > 0) io.out(`${counted(removed, 'control character')} in it left out.`);
  list.differences.forEach(io.out);
  return 0;
}

/** Adds everything that another store holds and this one does not, as often as one likes. */
async function takeFrom(typed: string, store: ShopStore, io: TrackIo): Promise<number> {
  const source = await openSource(typed, io.jobFile);
  if (!source.ok) return failed(io, source.problem);
  try {
    source.notices.forEach(io.err);
    const done = await store.takeOver(await source.store.content());
    if (!done.ok) return failed(io, done.problem);
    const { events, photos, missing } = done.value;
    const also = photos > 0 ? `, ${counted(photos, 'photo')}` : '';
    io.out(`${counted(events, 'entry', 'entries')}${also} taken over from ${source.store.path} to ${store.path}`);
    if (missing.length > 0) io.out(`Lost there already: ${counted(missing.length, 'entry', 'entries')}.`);
    return 0;
  } finally {
    await source.store.close();
  }
}

async function listOf(store: ShopStore, { job, blocks, units }: TrackIo): Promise<ListOf> {
  return { job, blocks, units, plans: await store.plans(), state: store.state };
}

/**
 * Records what one command enters, all or nothing: a client of its own, that lives no longer than the command. Gives
 * the exit code.
 */
async function record(
  entries: readonly (Omit<ListEntry, 'plan'> & { readonly plan?: number })[],
  via: ShopEvent['via'],
  who: string,
  plan: number,
  store: ShopStore,
  io: TrackIo,
): Promise<number> {
  const now = Date.now();
  const client = `${via}-${randomUUID()}`;
  const events = entries.map((entry, i): ShopEvent => ({
    client,
    seq: i + 1,
    seen: store.state.last,
    plan: entry.plan ?? plan,
    at: entry.at ?? now,
    who: entry.who ?? who,
    via,
    what: entry.what,
  }));
  const { refused } = admitted(events, await store.places());
  for (const { index, why } of refused) io.err(`${sayEntry(entries[index]!.what)}: ${why}`);
  if (refused.length > 0) {
    io.err('Nothing was recorded.');
    return 2;
  }
  const done = await store.append(events, now, now);
  if (!done.ok) return failed(io, done.problem);
  await store.refresh();
  return 0;
}

const OPTIONS = {
  undo: { type: 'boolean', default: false },
  who: { type: 'string', default: '' },
  note: { type: 'string' },
  share: { type: 'string' },
  port: { type: 'string' },
  store: { type: 'string' },
} as const;

function readArgs(args: readonly string[]): TrackArgs | Finding {
  // `--share` stands alone or with an address.
  const withShare = args.map((arg, i) =>
    arg === '--share' && !/^\d+(\.\d+){3}$/.test(args[i + 1] ?? '') ? '--share=' : arg,
  );
  const read = typed(withShare, OPTIONS);
  if ('remedy' in read) return read;
  const { values, positionals } = read;
  const port = values.port === undefined ? undefined : Number(values.port);
  if (port !== undefined && !(Number.isInteger(port) && port >= 1024 && port <= 65535))
    return { where: '--port', what: say(words.track.noPort, { port: values.port! }), remedy: words.track.port };
  if (values.who.length > MOST_NAME)
    return {
      where: '--who',
      what: say(words.track.who.what, { most: MOST_NAME }),
      remedy: say(words.track.who.remedy, { most: MOST_NAME }),
    };
  if (values.note !== undefined && (values.note === '' || values.note.length > MOST_NOTE))
    return {
      where: '--note',
      what: say(words.track.note.what, { count: values.note.length }),
      remedy: say(words.track.note.remedy, { most: MOST_NOTE }),
    };
  return {
    words: positionals,
    undo: values.undo,
    who: values.who,
    ...(values.note === undefined ? {} : { note: values.note }),
    ...(values.share === undefined ? {} : { share: values.share === '' ? true : values.share }),
    ...(port === undefined ? {} : { port }),
    ...(values.store === undefined ? {} : { store: values.store }),
  };
}

function sayEntry(what: Happening): string {
  return `${what.kind === 'timer' ? what.batch : what.block}, ${what.kind === 'step' ? what.step : what.kind}`;
}

function failed(io: TrackCall, problem: Problem): number {
  io.err(sayInLines(problem));
  return 2;
}

function misunderstood(io: TrackCall, finding: Finding): number {
  io.err(`${sayFinding(finding)}\n\n${TRACK_HELP}`);
  return 2;
}
