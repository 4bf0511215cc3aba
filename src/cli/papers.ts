import { createWriteStream, existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Plan } from '../plan.js';
import { planOf } from '../plan.js';
import { csvOf } from '../print/csv.js';
import { dxfOf } from '../print/dxf.js';
import { labelStockFor, labelStockNamed, labelStocks } from '../print/labelStock.js';
import { rollOf, sheetNamed, sheetNames, type Paper } from '../print/paper.js';
import type { Units } from '../length/units.js';
import { usualSettings } from '../print/format.js';
import { writePdf } from '../print/pdf.js';
import { svgOf } from '../print/svg.js';
import { cuttingOnce } from '../sheet/cuttingOnce.js';
import { blockRows, cutRows } from '../sheet/cutRows.js';
import { fullSizeDrawings, paperSet, papersOf } from '../sheet/papers.js';
import { routingRows } from '../sheet/routerTable.js';
import { refusalsOf } from '../sheet/sound.js';
import { trackingRows, type Done } from '../sheet/trackingList.js';
import { weightRows, type WeightFindings } from '../sheet/weightsPages.js';
import { ticksOf } from '../shop/state.js';
import { openStore, trackerPath } from '../shop/store/openStore.js';
import { sayProblem } from '../shop/store/problem.js';
import { compareStagger } from '../weigh/stagger.js';
import { steer } from '../weigh/steer.js';
import { understood } from './args.js';
import { folderReady, jobFrom, reason, writeWhole } from './files.js';
import { lengthOption } from './lengthOption.js';
import { REFUSED, UNSOUND, WELL, type Command, type Io } from './io.js';

const OPTIONS = {
  out: { type: 'string', short: 'o' },
  paper: { type: 'string' },
  roll: { type: 'string' },
  margin: { type: 'string' },
  only: { type: 'string' },
  labels: { type: 'string' },
  date: { type: 'string' },
  revision: { type: 'string' },
  'track-at': { type: 'string' },
} as const;

export const papersCommand: Command = {
  usage: `papers JOB -o FOLDER [--paper A4] [--roll 610mm] [--only face-R2,pole] [--labels STOCK] [--date 2026-05-01]
    Writes the papers: one PDF to print at actual size, every full-size sheet as SVG and DXF in millimetres, and the tracking list for a
    spreadsheet. --paper takes ${sheetNames.join(', ')}; --roll the width of a roll; --only some papers by
    name (a wrong name lists them all); --margin what the printer cannot print; bare lengths are in the job's units; --revision a mark for the title blocks; --track-at
    the tracker's address (http://192.168.1.20:4718), so that a phone's camera opens a block by its label.`,
  async run(args, io) {
    const asked = understood(args, OPTIONS, 1);
    if ('why' in asked || !asked.values.out) {
      io.err(
        `${'why' in asked ? asked.why : 'Where to? Name a folder with -o.'}\n\n  chamberwright ${papersCommand.usage}`,
      );
      return REFUSED;
    }
    if (!(await folderReady(asked.values.out, io))) return REFUSED;
    const job = await jobFrom(asked.operands[0]!, io);
    if (!job) return REFUSED;
    const settings = settingsFrom(asked.values, job.units);
    if ('why' in settings) {
      io.err(settings.why);
      return REFUSED;
    }
    for (const line of settings.understood) io.out(line);
    const plan = planOf(job);
    const refused = refusalsOf(plan);
    if (refused.length > 0) {
      for (const why of refused) io.err(why);
      io.err('The plan is refused, and nothing was written: nobody should rout by it.');
      return UNSOUND;
    }
    try {
      return await writePapers(plan, asked.operands[0]!, asked.values.out, settings, io);
    } catch (error) {
      io.err(`${asked.values.out}: ${reason(error)} → make room, or choose another folder`);
      return REFUSED;
    }
  },
};

/** Plotters take no wider rolls, and no printer leaves a wider margin, mm; common practice, no source. */
const WIDEST_ROLL = 2000;
const WIDEST_MARGIN = 60;

interface Settings {
  readonly paper: Paper;
  readonly stock: (typeof labelStocks)[number];
  readonly date: Date;
  /** How lengths were understood, to be said. */
  readonly understood: readonly string[];
  readonly margin?: number;
  readonly only?: readonly string[];
  readonly revision?: string;
  readonly trackAt?: string;
}

type Typed = { readonly [name in keyof typeof OPTIONS]?: string | undefined };

function settingsFrom(typed: Typed, units: Units): Settings | { why: string } {
  const roll = typed.roll === undefined ? undefined : lengthOption('--roll', typed.roll, units, WIDEST_ROLL);
  if (roll && 'why' in roll) return roll;
  const margin = typed.margin === undefined ? undefined : lengthOption('--margin', typed.margin, units, WIDEST_MARGIN);
  if (margin && 'why' in margin) return margin;
  const paper = roll ? rollOf(roll.mm) : sheetNamed(typed.paper ?? 'A4');
  if (!paper) return { why: `--paper: there is no paper ${typed.paper} → one of ${sheetNames.join(', ')}` };
  const stock = typed.labels === undefined ? labelStockFor(paper) : labelStockNamed(typed.labels);
  if (!stock)
    return {
      why: `--labels: there are no labels ${typed.labels} → one of ${labelStocks.map(({ name }) => name).join(', ')}`,
    };
  const date = typed.date === undefined ? new Date() : new Date(typed.date);
  if (Number.isNaN(date.getTime())) return { why: `--date: ${typed.date} is no date → like 2026-05-01` };
  const at = typed['track-at'];
  const trackAt = at !== undefined && URL.canParse(at) ? new URL(at) : undefined;
  if (at !== undefined && !trackAt?.protocol.startsWith('http'))
    return { why: `--track-at: ${at} is no address → like http://192.168.1.20:4718` };
  return {
    paper,
    stock,
    date,
    understood: [
      ...(roll ? [`Roll: ${roll.understood} wide.`] : []),
      ...(margin ? [`Margin that the printer leaves: ${margin.understood}.`] : []),
    ],
    ...(margin && { margin: margin.mm }),
    ...(typed.only !== undefined && { only: typed.only.split(',').map((name) => name.trim()) }),
    ...(typed.revision !== undefined && { revision: typed.revision }),
    ...(trackAt && { trackAt: trackAt.origin }),
  };
}

/** Writes the files one after the other, each whole, and says what lies where. */
async function writePapers(plan: Plan, jobFile: string, folder: string, settings: Settings, io: Io): Promise<number> {
  const { paper, stock, date, only, margin, revision, trackAt } = settings;
  const done = doneSoFar(jobFile, io);
  const options = {
    labelStock: stock,
    weights: foundByTrial(plan, io),
    ...(done && { done }),
    ...(revision !== undefined && { revision }),
    ...(trackAt !== undefined && { labelCode: ({ id }: { readonly id: string }) => `${trackAt}/shop/#block=${id}` }),
  };
  const { set, unknown } = paperSet(plan, options, only);
  if (unknown.length > 0) {
    const names = papersOf(plan, options).map(({ name }) => name);
    io.err(`--only: there are no papers ${unknown.join(', ')} → among ${names.join(', ')}`);
    return REFUSED;
  }
  const pdf = join(folder, 'papers.pdf');
  let pages = 0;
  await writeWhole(pdf, async (path) => {
    const printed = await writePdf(set, createWriteStream(path), {
      paper,
      date,
      ...(margin !== undefined && { settings: { ...usualSettings, margin } }),
      ...(plan.job.printer && { printer: plan.job.printer }),
      onProgress: (done, all) => progress(io, done, all),
    });
    pages = printed.pages;
    if (printed.findings.length > 0) {
      throw new Error(printed.findings.map((f) => `${f.where}: ${f.what} → ${f.remedy}`).join('\n'));
    }
  });
  io.out(`${pdf}: ${pages} pages for ${paper.name}; print "check" first, at actual size`);
  if (only) return WELL;

  const drawings = fullSizeDrawings(plan);
  for (const drawing of drawings) {
    await writeWhole(join(folder, `${drawing.id}_mm.svg`), (path) => writeFile(path, svgOf(drawing)));
    const traced = dxfOf(drawing);
    if ('dxf' in traced) await writeWhole(join(folder, `${drawing.id}_mm.dxf`), (path) => writeFile(path, traced.dxf));
    else
      for (const f of traced.findings)
        io.err(`${drawing.id}_mm.dxf is not written: ${f.where}: ${f.what} → ${f.remedy}`);
  }
  io.out(
    `${join(folder, '*_mm.svg')}, ${join(folder, '*_mm.dxf')}: ${drawings.length} full-size sheets in millimetres, never scaled`,
  );
  await writeWhole(join(folder, 'tracking.csv'), (path) => writeFile(path, csvOf(trackingRows(plan, done))));
  io.out(`${join(folder, 'tracking.csv')}: ${plan.blocks.length} blocks`);
  const lists = { 'blocks.csv': blockRows(plan, cuttingOnce(plan)), 'cuts.csv': cutRows(plan, cuttingOnce(plan)) };
  for (const [name, rows] of Object.entries(lists)) {
    await writeWhole(join(folder, name), (path) => writeFile(path, csvOf(rows)));
    io.out(`${join(folder, name)}: ${rows.length - 1} lines`);
  }
  await writeWhole(join(folder, 'routing.csv'), (path) => writeFile(path, csvOf(routingRows(plan))));
  io.out(`${join(folder, 'routing.csv')}: how deep each of ${plan.chambers.length} chambers is routed, and the stops`);
  await writeWhole(join(folder, 'weights.csv'), (path) => writeFile(path, csvOf(weightRows(plan))));
  io.out(`${join(folder, 'weights.csv')}: ${plan.weights.stages.length} stages`);
  return WELL;
}

/** What of the weight report takes plans of its own: the same board with its webs in line, and the target where the job has one. */
function foundByTrial(plan: Plan, io: Io): WeightFindings {
  const { job } = plan;
  return {
    stagger: compareStagger(plan, job),
    ...(job.target && { steered: steer(plan, job, job.target, (done, of) => progress(io, done, of)) }),
  };
}

/** What the tracker beside the job says is done; nothing where there is none. */
function doneSoFar(jobFile: string, io: Io): Done | undefined {
  const file = trackerPath(jobFile);
  if (!existsSync(file)) return undefined;
  const opened = openStore(file);
  if (!opened.ok) {
    io.err(`The tracking list is printed without what is done: ${sayProblem(opened.problem)}`);
    return undefined;
  }
  const { blocks } = opened.store.state;
  opened.store.close();
  return ({ id }) => ticksOf(blocks.get(id));
}

function progress(io: Io, done: number, all: number): void {
  if (io.isTerminal) process.stderr.write(done < all ? `\rpage ${done} of ${all}` : '\r\u001b[K');
}
