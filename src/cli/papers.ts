import { createWriteStream, existsSync } from 'node:fs';
import { join } from 'node:path';
import words from '../../templates/command.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';
import { sayFinding, sayInLines } from '../finding/say.js';
import { printLength } from '../length/length.js';
import { countFile } from '../papers/count.js';
import type { PdfFile } from '../papers/files.js';
import { drawingsOf } from '../papers/papers.js';
import { preparePapers, type Prepared } from '../papers/prepare.js';
import { paperRunOf, type PaperChoices, type PaperRun } from '../papers/run.js';
import { foundByTrial } from '../papers/trials.js';
import type { Plan } from '../plan.js';
import { planOf } from '../plan.js';
import { csvForms, csvOf, type CsvForm } from '../print/csv.js';
import { dxfOf } from '../print/dxf/dxf.js';
import type { Units } from '../length/units.js';
import type { FileBook } from '../print/page/leaf.js';
import { writePdf } from '../print/pdf.js';
import { svgOf } from '../print/svg/svg.js';
import { cuttingOnce } from '../sheet/cutting/cuttingOnce.js';
import { blockRows, cutRows } from '../sheet/cutting/cutRows.js';
import type { Cell } from '../sheet/pages.js';
import { kindName, type PaperKind } from '../sheet/uses.js';
import { routingRows } from '../sheet/face/routerTable.js';
import { trackingRows, type Done } from '../sheet/blocks/trackingList.js';
import { weightRows } from '../sheet/weights/weightsPages.js';
import { proofOf } from '../proof/proof.js';
import { isWell, sayVerdict, verdictOf } from '../verdict/verdict.js';
import { refitsOf } from '../shop/fit/refits.js';
import { stageThatFits } from '../shop/fit/standing.js';
import { ticksOf } from '../shop/log/step.js';
import { openStore } from '../shop/openStore.js';
import { trackerPath } from '../shop/store/trackerPath.js';
import { say } from '../words/say.js';
import { trackedBlocks } from './trackedBlocks.js';
import { understood } from '../typed/args.js';
import { REFUSED, TO_ACT_ON, WELL, type Command, type Io } from './io.js';
import { jobFrom, type JobRead } from './jobFile.js';
import { refuse } from './refuse.js';
import { notWritable, written } from './writing.js';

const OPTIONS = {
  out: { type: 'string', short: 'o' },
  paper: { type: 'string' },
  roll: { type: 'string' },
  margin: { type: 'string' },
  only: { type: 'string' },
  with: { type: 'string' },
  without: { type: 'string' },
  phase: { type: 'string' },
  dry: { type: 'boolean' },
  labels: { type: 'string' },
  date: { type: 'string' },
  revision: { type: 'string' },
  csv: { type: 'string' },
  'track-at': { type: 'string' },
  store: { type: 'string' },
} as const;

export const papersCommand: Command = {
  async run(args, io) {
    const asked = understood(args, OPTIONS, 1);
    if ('remedy' in asked) return refuse(io, asked, 'papers');
    const { out, dry } = asked.values;
    const { where, what, folder } = words.named.out;
    if (!out && !dry) return refuse(io, { where, what, remedy: folder }, 'papers');
    const inTheWay = dry ? undefined : notWritable(out!);
    if (inTheWay) return refuse(io, inTheWay);
    const read = jobFrom(asked.operands[0]!, io);
    if (!read) return REFUSED;
    const settings = settingsFrom(asked.values, read.job.units);
    if ('remedy' in settings) return refuse(io, settings);
    for (const line of settings.run.understood) io.out(line);
    const plan = planOf(read.job);
    const verdict = verdictOf(plan, proofOf(plan));
    if (!isWell(verdict)) sayVerdict(verdict, plan).forEach((line) => io.err(line));
    if (!verdict.stands) {
      io.err('Nothing was written.');
      return TO_ACT_ON;
    }
    const made = await preparedFor(plan, read, settings, io);
    if ('findings' in made) {
      for (const finding of made.findings) io.err(sayFinding(finding));
      return REFUSED;
    }
    const code =
      out && !dry ? await writePapers(plan, made, read, out, settings, io) : sayCounted(made, settings.run, plan, io);
    return code === WELL && !isWell(verdict) ? TO_ACT_ON : code;
  },
};

/** What this command alone is asked. */
interface Settings {
  readonly run: PaperRun;
  readonly csv?: CsvForm;
  readonly trackAt?: string;
  /** The server that the tracker is kept on, where it is none of the job's own file. */
  readonly store?: string;
}

type Typed = { readonly [name in Exclude<keyof typeof OPTIONS, 'dry'>]?: string | undefined };

const asOption = (choice: keyof PaperChoices): string => `--${choice}`;

function settingsFrom(typed: Typed, units: Units): Settings | Finding {
  if (typed.roll !== undefined && typed.paper !== undefined) return words.papers.twoPapers;
  if (typed.only !== undefined && typed.phase !== undefined) return words.papers.twoChoices;
  const named = (list?: string) => list?.split(',').map((name) => name.trim());
  const [only, more, without] = [typed.only, typed.with, typed.without].map(named);
  const run = paperRunOf({ ...typed, only, with: more, without }, units, asOption);
  if ('remedy' in run) return run;
  const csv = typed.csv === undefined || !Object.hasOwn(csvForms, typed.csv) ? undefined : csvForms[typed.csv];
  if (typed.csv !== undefined && !csv)
    return { where: '--csv', what: say(words.papers.noForm, { form: typed.csv }), remedy: words.papers.csv };
  const at = typed['track-at'];
  const trackAt = at !== undefined && URL.canParse(at) ? new URL(at) : undefined;
  if (at !== undefined && !trackAt?.protocol.startsWith('http'))
    return { where: '--track-at', ...words.papers.address, what: say(words.papers.address.what, { at }) };
  return {
    run,
    ...(csv && { csv }),
    ...(trackAt && { trackAt: trackAt.origin }),
    ...(typed.store !== undefined && { store: typed.store }),
  };
}

async function preparedFor(
  plan: Plan,
  read: JobRead,
  { run, store, trackAt }: Settings,
  io: Io,
): Promise<(Prepared & { readonly done?: Done }) | { readonly findings: readonly Finding[] }> {
  const done = await doneSoFar(read.file, store, plan, io);
  const made = preparePapers(plan, run, asOption, {
    weights: foundByTrial(plan, (done, of) => progress(io, done, of)),
    ...(done && { done }),
    ...(trackAt !== undefined && { labelCode: ({ id }: { readonly id: string }) => `${trackAt}/shop/#block=${id}` }),
  });
  return { ...made, ...(done && { done }) };
}

/** Says what the papers would take, and writes nothing. */
function sayCounted({ files, leftOut, print }: Prepared, { paper }: PaperRun, { job }: Plan, io: Io): number {
  for (const file of files) {
    const { name, pages, kinds } = countFile(file, print);
    io.out(`${name}: ${pages} pages for ${paper.name}`);
    for (const { kind, pages: count, tape } of kinds) {
      const taped = tape > 0 ? `, joined by ${printLength(tape, job.units, 'feet')} of tape` : '';
      io.out(`${String(count).padStart(5)}  ${kindName(kind)}${taped}`);
    }
  }
  if (leftOut.length > 0) io.out(`Not made; add by --with: ${leftOut.map(({ name }) => name).join(', ')}`);
  io.out('Nothing was written.');
  return WELL;
}

/** Makes the files one after the other, puts them in place together, and says what lies where. */
async function writePapers(
  plan: Plan,
  { papers, files, print, done }: Prepared & { readonly done?: Done },
  read: JobRead,
  folder: string,
  { run, csv }: Settings,
  io: Io,
): Promise<number> {
  const said: string[] = [];
  // Of some of the papers only theirs is written, and what an earlier run wrote besides stays.
  const isWhole = run.names.only === undefined && run.phase === undefined;
  const where = { folder, by: 'papers', earlier: isWhole ? 'removed' : 'named' } as const;
  const isWritten = await written(where, read, io, async (stage) => {
    const beside: FileBook[] = [];
    for (const { name, set } of files) {
      const { pages, book } = await writePdf(set, createWriteStream(stage.place(name)), {
        ...print,
        beside,
        onProgress: (made, all) => progress(io, made, all),
      });
      if (book) beside.push({ name, book });
      const hasCheck = set.pages.some(({ kind }) => kind === 'check');
      said.push(`${join(folder, name)}: ${pages} pages ${FOR_WHAT[name](run.paper.name, hasCheck)}`);
    }
    const drawings = drawingsOf(papers);
    for (const drawing of drawings) {
      await stage.put(`${drawing.id}_mm.svg`, svgOf(drawing));
      const traced = dxfOf(drawing);
      if ('dxf' in traced) await stage.put(`${drawing.id}_mm.dxf`, traced.dxf);
      else for (const f of traced.findings) io.err(`${drawing.id}_mm.dxf is not written: ${sayFinding(f)}`);
    }
    if (drawings.length > 0)
      said.push(
        `${join(folder, '*_mm.svg')}, ${join(folder, '*_mm.dxf')}: ${drawings.length} full-size sheets in millimetres, never scaled`,
      );
    // Each list comes with the paper it is the spreadsheet of.
    const lists: Readonly<Record<string, readonly [paper: PaperKind, rows: () => Cell[][]]>> = {
      'tracking.csv': ['tracking', () => trackingRows(plan, done)],
      'blocks.csv': ['cutting', () => blockRows(plan, cuttingOnce(plan))],
      'cuts.csv': ['cutting', () => cutRows(plan, cuttingOnce(plan))],
      'routing.csv': ['router', () => routingRows(plan)],
      'weights.csv': ['weights', () => weightRows(plan)],
    };
    for (const [name, [of, rowsOf]] of Object.entries(lists)) {
      if (!papers.some(({ kind }) => kind === of)) continue;
      const rows = rowsOf();
      await stage.put(name, csvOf(rows, { mark: files[0]!.set.mark, date: run.date }, csv));
      said.push(`${join(folder, name)}: ${rows.length - 1} lines`);
    }
  });
  if (!isWritten) return REFUSED;
  said.forEach((line) => io.out(line));
  return WELL;
}

const FOR_WHAT: Readonly<Record<PdfFile['name'], (paper: string, hasCheck: boolean) => string>> = {
  'papers.pdf': (paper, hasCheck) =>
    hasCheck ? `for ${paper}; print "check" first, at actual size` : `for ${paper}, printed at actual size`,
  'print-shop.pdf': (paper, hasCheck) =>
    `for ${paper}, for a print shop: at actual size${hasCheck ? ', "check" first' : ''}`,
  'book.pdf': () => 'to read, on paper or on a screen: what is done in each phase, and with which papers',
  'look.pdf': () => 'to look at on a screen; none is needed at the bench',
};

/** What the tracker beside the job, or on its server, says is done and fits the plan; nothing where there is none. */
async function doneSoFar(jobFile: string, store: string | undefined, plan: Plan, io: Io): Promise<Done | undefined> {
  if (store === undefined && !existsSync(trackerPath(jobFile))) return undefined;
  const opened = await openStore(jobFile, store);
  if (!opened.ok) {
    io.err(`The tracking list is printed without what is done: ${sayInLines(opened.problem)}`);
    return undefined;
  }
  const { state } = opened.store;
  const refits = refitsOf(trackedBlocks(plan), state, await opened.store.plans());
  await opened.store.close();
  return ({ id }) => ticksOf(stageThatFits(state.blocks.get(id), refits.get(id)));
}

function progress(io: Io, done: number, all: number): void {
  if (io.isTerminal) process.stderr.write(done < all ? `\rpage ${done} of ${all}` : '\r\u001b[K');
}
