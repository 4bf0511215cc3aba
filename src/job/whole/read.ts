/*
 * From the text of a job file to a `Job`, with everything that is wrong said at once.
 *
 * To add a top-level section: write `parts/<section>.ts` with its schema (`<section>Schema(q)`, every key described)
 * and its way into the job (`to<Section>(file, …, say)`); name the schema in `file.ts` and the way in `toJob` below,
 * one line each; run `npm run schema`. Sections that need another's values (keep-outs need the outline) take the
 * converted part, not the file. Values that could not be read arrive as not-a-number, so compare in such a way that NaN
 * complains of nothing.
 */
import words from '../../../templates/scan.json' with { type: 'json' };
import { doubtsAmong, legible, type JobFinding } from '../finding.js';
import { tablesInDoubt } from '../doubts/tables.js';
import { unusual } from '../doubts/usual.js';
import { readDocument, type JobDocument } from './document.js';
import { echoOf } from '../mistake/echo.js';
import { formsOf, jobFileSchemaFor, jobJsonSchema, type JobFile } from './file.js';
import { mistakesOf, type Mistake } from '../mistake/issues.js';
import { inOrder, MOST_FINDINGS } from '../mistake/in-order.js';
import type { Job } from '../job.js';
import { toBlocks } from '../parts/blocks.js';
import { toBoard } from '../parts/board.js';
import { toChambers } from '../parts/chambers.js';
import { toDots } from '../parts/dots.js';
import { toFill } from '../parts/fill.js';
import { toFins } from '../parts/fins.js';
import { toFittings } from '../parts/fittings.js';
import { toGlass, toLaminating } from '../parts/glass.js';
import { checkChambersFit, checkMembersFit } from '../parts/fits.js';
import { toGlueUp } from '../parts/glue-up.js';
import { toKeepOuts } from '../parts/keep-outs.js';
import { materialFinder } from '../parts/materials.js';
import type { OffsetStation } from '../parts/offsets.js';
import { toRouted } from '../parts/routed.js';
import { toRouting } from '../parts/routing.js';
import { boardFromScan } from '../boardFromScan.js';
import { holesKeptOut, toScan, wholeScan } from '../parts/scan.js';
import { toShaped } from '../parts/shaped.js';
import { toStock } from '../parts/stock.js';
import { toTarget } from '../parts/target.js';
import { toWeighings } from '../parts/weighings.js';
import type { Reading } from '../text/reading.js';
import type { RoutedRow } from '../spec/routed.js';
import { sayTo, type Say } from '../mistake/say.js';
import { readAsFarAsPossible } from './stand-in.js';
import type { Beside, BytesBeside } from '../beside.js';
import type { Scan } from '../../scan/whole/scan.js';
import { tableBeside } from './table-beside.js';

/**
 * A job, when nothing is wrong with it, and everything that was found. Warnings come with the job, errors instead of
 * it.
 */
export interface ReadJob {
  readonly job?: Job;
  readonly findings: readonly JobFinding[];
  /** What a reading of nearly the same text may start from; absent where the form is broken. */
  readonly reading?: Reading;
}

/**
 * Reads a job file (YAML or JSON). Reads no files itself and throws nothing that a builder could cause.
 *
 * @param text the file's text
 * @param fileName its name, for the findings
 * @param readBeside gives the text of a file beside it, or why it cannot be read
 * @param before what was read of this job before: it changes nothing but the time it takes, and is not to be used after
 *   that
 * @param readBytes gives the bytes of a file beside it, or why they cannot be had
 */
export function readJob(
  text: string,
  fileName: string,
  readBeside: (name: string) => Beside,
  before?: Reading,
  readBytes: (name: string) => BytesBeside = () => undefined,
): ReadJob {
  const { document, reading, findings } = readDocument(text, fileName, before);
  if (!document) return { findings: findings.map(legible) };

  const { file, mistakes } = toFile(document);
  for (const { path, what, remedy, unknownKey } of mistakes.slice(0, MOST_FINDINGS)) {
    const where = unknownKey ? document.placeOfKey(path) : document.placeOf(path);
    findings.push({ severity: 'error', where, what, remedy });
  }
  const isEcho = echoOf(mistakes);
  const say = sayTo(
    (finding) => isEcho(finding) || findings.push(finding),
    (path) => document.placeOf(path),
  );
  const tableOf = (name: string | undefined, ...path: string[]) =>
    file ? tableBeside(name, file.units, readBeside, (inTable) => findings.push(...inTable), say.at(...path)) : [];
  const offsets: Tables = {
    board: tableOf(file && 'offsets' in file.board ? file.board.offsets : undefined, 'board', 'offsets'),
    blank: tableOf(file?.stock?.blank?.offsets, 'stock', 'blank', 'offsets'),
  };
  const routed = file && toRouted(file.routed, readBeside, say.at('routed'));
  const scan = file && 'mesh' in file.board ? toScan(file.board, readBytes, file.units, say.at('board')) : undefined;
  const shaped =
    file?.shaped && !Array.isArray(file.shaped)
      ? wholeScan(file.shaped, readBytes, file.units, say.at('shaped'))
      : undefined;
  // Walls of a mesh are proved against its own triangles, which measures would not move.
  if (file && 'mesh' in file.board && Array.isArray(file.shaped) && file.shaped.length > 0) {
    const { what, remedy } = words.shapedByNumbers;
    say.error(['shaped'], what, remedy);
  }
  const job = file && toJob(file, offsets, routed ?? [], { scan, shaped }, say);
  const isSound = !findings.some(({ severity }) => severity === 'error');
  // What cannot be is put right first; only then is looked for what hardly can be.
  if (job && isSound) {
    const before = findings.length;
    if (!('mesh' in file.board)) tablesInDoubt(file.board, offsets.board, job.board, job.units, say.at('board'));
    unusual(job, findings.length === before, say);
  }

  const all = inOrder(findings, fileName, Math.max(0, mistakes.length - MOST_FINDINGS));
  const doubts = doubtsAmong(all);
  const told = job && { ...job, ...(doubts.length > 0 && { doubts }) };
  return { findings: all.map(legible), ...(told && isSound && { job: told }), ...(reading && { reading }) };
}

/** Checks the shape of the file; where it is wrong, gives what can be read of it. */
function toFile({ value }: JobDocument): { file?: JobFile | undefined; mistakes: Mistake[] } {
  const units = (value as { units?: unknown }).units === 'in' ? 'in' : 'mm';
  const form = formsOf(value);
  const schema = jobFileSchemaFor(units, form);
  const read = schema.safeParse(value);
  if (read.success) return { file: read.data, mistakes: [] };
  const mistakes = mistakesOf(read.error.issues, value, jobJsonSchema(form));
  return { file: readAsFarAsPossible(schema, { ...(value as object), units }), mistakes };
}

/** The tables of offsets that a job names, already read; empty where it names none. */
interface Tables {
  readonly board: readonly OffsetStation[];
  readonly blank: readonly OffsetStation[];
}

/** The board that was scanned, and the same as shaped; absent where there is none. */
interface Scans {
  readonly scan: Scan | undefined;
  readonly shaped: Scan | undefined;
}

function toJob(file: JobFile, offsets: Tables, routed: readonly RoutedRow[], { scan, shaped }: Scans, say: Say): Job {
  const { units } = file;
  const material = materialFinder(file.materials);
  const board = 'mesh' in file.board ? boardFromScan(scan) : toBoard(file.board, offsets.board, units, say.at('board'));
  const { keepOuts, jointKeepOuts } = toKeepOuts(file.keepOuts, board, units, say.at('keepOuts'));
  const glueUp = toGlueUp(file.glueUp, material, units, say.at('glueUp'));
  const chambers = toChambers(file.chambers, units);
  checkMembersFit(glueUp, board, units, say.at('glueUp'));
  checkChambersFit(chambers, board, units, say.at('chambers'));
  return {
    name: file.job,
    units,
    board,
    glueUp,
    chambers,
    keepOuts: [...keepOuts, ...holesKeptOut(scan, chambers)],
    jointKeepOuts,
    dots: toDots(file.dots, board, units, say.at('dots')),
    routing: toRouting(file.routing, chambers.cutterDiameter, units, say.at('routing')),
    shaped: shaped
      ? [{ kind: 'scan', scan: shaped }]
      : toShaped(Array.isArray(file.shaped) ? file.shaped : [], board, units, say.at('shaped')),
    ...(file.routed !== undefined && { routed }),
    fill: toFill(file.fill, material, say.at('fill')),
    blocks: toBlocks(file.blocks, chambers, units, say.at('blocks')),
    ...(file.stock && { stock: toStock(file.stock, offsets.blank, material, units, say.at('stock')) }),
    ...(file.glass && { glass: toGlass(file.glass, units), laminating: toLaminating(file.glass) }),
    fins: toFins(file.fins, board, material, units, say.at('fins')),
    fittings: toFittings(file.fittings, board, units, say.at('fittings')),
    weighings: toWeighings(file.weighings, units, say.at('weighings')),
    ...(file.printer && { printer: file.printer }),
    ...(file.rider !== undefined && { rider: file.rider }),
    ...(file.target && { target: toTarget(file.target, board, material, units, say.at('target')) }),
  };
}
