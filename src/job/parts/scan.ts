import { z } from 'zod';
import words from '../../../templates/scan.json' with { type: 'json' };
import { polygonAround } from '../../contour/around.js';
import { hullOf } from '../../contour/hull.js';
import type { Point } from '../../contour/point.js';
import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import type { ScanFault } from '../../scan/fault.js';
import type { Mark } from '../../scan/place/setUp.js';
import { SCAN_UNITS, scanOf, type Scan, type ScanAsked } from '../../scan/whole/scan.js';
import { say as fill } from '../../words/say.js';
import type { BytesBeside } from '../beside.js';
import type { ChamberSpec, KeepOutSpec } from '../job.js';
import type { Say } from '../mistake/say.js';
import type { Quantities } from '../quantities.js';

export function scanSchema(q: Quantities) {
  const along = { least: 0, most: 8000, because: 'it lies on the board, and no board is longer' };
  const across = { least: 0, most: 1000, because: 'no board is wider' };
  return z
    .strictObject({
      mesh: z.string().meta({ description: 'a scan or a model of the board beside the job: STL, PLY or OBJ' }),
      units: z.enum(Object.keys(SCAN_UNITS) as (keyof typeof SCAN_UNITS)[]).meta({
        description: 'what the numbers in that file are in: mm, cm, m, in or ft',
      }),
      turn: z.enum(['round', 'over', 'both']).optional().meta({
        description: 'where it was set up the wrong way: round (nose and tail), over (deck and bottom), or both',
      }),
      length: q
        .length('from tip to tip as measured on the board, straight: the scan is stretched to it', {
          least: 500,
          most: 8000,
          because: 'boards are as long as that',
        })
        .optional(),
      marks: z
        .array(
          z.strictObject({
            at: q.length('where the mark is, from the nose tip, straight', along),
            right: q.length('how far to the right of the centreline', across).optional(),
            left: q.length('the same, to the left', across).optional(),
            found: z
              .tuple([z.number(), z.number(), z.number()])
              .meta({ description: "its place in the scan: [x, y, z] as they are there, in the scan's unit" }),
          }),
        )
        .min(3, 'fewer than three marks are written|three marks or more, far apart')
        .optional()
        .meta({ description: 'marks that were put on the board before it was scanned' }),
    })
    .meta({ description: 'the board as it was scanned or modelled' });
}

export type ScanFile = z.infer<ReturnType<typeof scanSchema>>;

/** What was made of a file's bytes before, by what was asked of them: a page reads a job at every key pressed. */
const made = new WeakMap<Uint8Array, Map<string, Scan | ScanFault>>();

/**
 * The scan that a job names, set up; undefined where it cannot be, which is said.
 *
 * @param readBytes gives the bytes of a file beside the job
 */
export function toScan(
  file: ScanFile,
  readBytes: (name: string) => BytesBeside,
  units: Units,
  say: Say,
): Scan | undefined {
  const name = file.mesh;
  const bytes = bytesBeside(name, readBytes, say.at('mesh'));
  if (!bytes) return undefined;
  const asked: ScanAsked = {
    unit: file.units,
    round: file.turn === 'round' || file.turn === 'both',
    over: file.turn === 'over' || file.turn === 'both',
    ...(file.length !== undefined && !Number.isNaN(file.length) && { length: file.length }),
    ...(file.marks && { marks: toMarks(file.marks, say.at('marks')) }),
  };
  const known = made.get(bytes) ?? new Map<string, Scan | ScanFault>();
  made.set(bytes, known);
  const key = JSON.stringify([name, asked]);
  const scan = known.get(key) ?? scanOf(bytes, name, asked);
  known.clear();
  known.set(key, scan);
  if ('kind' in scan) {
    const { path, what, remedy } = sayFault(scan, name, units);
    say.error(path, what, remedy);
    return undefined;
  }
  tellOf(scan, name, units, say);
  return scan;
}

/** The same of a board as shaped, which must have no hole: what is glued up cannot be planned around one. */
export function wholeScan(...asked: Parameters<typeof toScan>): Scan | undefined {
  const scan = toScan(...asked);
  const [file, , units, say] = asked;
  if (!scan || scan.holes.length === 0) return scan;
  const { what, remedy } = words.faults.shapedHole;
  const widest = Math.max(...scan.holes.map(({ span }) => span));
  const values = { file: file.mesh, count: scan.holes.length, span: printLength(widest, units) };
  say.error(['mesh'], fill(what, values), remedy);
  return undefined;
}

function bytesBeside(name: string, readBytes: (name: string) => BytesBeside, say: Say): Uint8Array | undefined {
  const { path, none, unreadable } = words.beside;
  const error = ({ what, remedy }: { what: string; remedy: string }, why = '') =>
    say.error([], fill(what, { file: name, why }), remedy);
  if (/[/\\]/.test(name)) return void error(path);
  const bytes = readBytes(name);
  if (bytes === undefined) return void error(none);
  if ('remedy' in bytes) return void error(unreadable, bytes.what);
  return bytes;
}

function toMarks(file: NonNullable<ScanFile['marks']>, say: Say): Mark[] {
  return file.map(({ at, right, left, found }, i) => {
    if (right !== undefined && left !== undefined)
      say.error([i, 'left'], 'its side is given as right and as left', 'keep one of them');
    return { x: at, y: right ?? -(left ?? 0), found };
  });
}

function sayFault(fault: ScanFault, file: string, units: Units): { path: string[]; what: string; remedy: string } {
  const { faults } = words;
  const length = (mm: number) => printLength(mm, units);
  const saying = (
    words: { what: string; remedy: string },
    values: Record<string, string | number> = {},
    key = 'mesh',
  ) => ({
    path: [key],
    what: fill(words.what, { file, ...values }),
    remedy: fill(words.remedy, { file, ...values }),
  });
  const round = (value: number) => Number(value.toPrecision(3));
  switch (fault.kind) {
    case 'truncated':
      return saying(fault.of === 'lines' ? faults.truncatedText : faults.truncated, { ...fault });
    case 'size': {
      const { would, unit } = fault;
      if (would.length === 0) return saying(faults.sizeInNone, { length: round(fault.length), unit }, 'units');
      return saying(faults.size, { length: round(fault.length), unit, would: would.join(' or ') }, 'units');
    }
    case 'knownLength':
      return saying(faults.knownLength, { length: length(fault.length), known: length(fault.known) }, 'length');
    case 'noBoard': {
      const [long, wide, thick] = fault.sizes;
      return saying(faults.noBoard, { long: length(long), wide: length(wide), thick: length(thick) });
    }
    case 'twoBoards':
      return saying(faults.twoBoards, { first: length(fault.first), second: length(fault.second) });
    case 'oneFace':
      return saying(faults.oneFace, { share: Math.round(100 * fault.share) });
    case 'gap':
      return saying(faults.gap, { from: length(fault.from), to: length(fault.to) });
    case 'notch':
      return saying(faults.notch, { x: length(fault.x) });
    case 'marks':
      return saying(fault.why === 'line' ? faults.marksInLine : faults.marksApart, { off: length(fault.off) }, 'marks');
    default:
      return saying(faults[fault.kind], { ...fault });
  }
}

/** One place in a hundred further off than this, mm, makes a scan a rough one. */
const ROUGH = 1;

function tellOf(scan: Scan, file: string, units: Units, say: Say): void {
  const { told } = words;
  const length = (mm: number) => printLength(mm, units);
  const warn = (words: { what: string; remedy: string }, values: Record<string, string | number>) =>
    say.warning(['mesh'], fill(words.what, { file, ...values }), words.remedy);
  if (!scan.setUp.isNoseSure) warn(told.nose, {});
  if (!scan.setUp.isDeckSure) warn(told.deck, {});
  const { pieces, largestPiece } = scan.mended;
  if (pieces > 0 && largestPiece > TOLD_PIECE) warn(told.pieces, { count: pieces, largest: length(largestPiece) });
  if (scan.form.off.most > ROUGH) warn(told.rough, { most: length(scan.form.off.most) });
  scan.holes.forEach(({ rim, span }, i) => {
    const mean = (axis: 0 | 1) => rim.reduce((sum, point) => sum + point[axis], 0) / rim.length;
    const y = mean(1);
    warn(told.hole, {
      name: holeName(i),
      span: length(span),
      x: length(mean(0)),
      y: length(Math.abs(y)),
      side: y < 0 ? words.left : words.right,
    });
  });
}

/** Crumbs of a scan no larger than this, mm, are nothing to tell. */
const TOLD_PIECE = 50;

const holeName = (i: number) => fill(words.hole, { number: i + 1 });

/**
 * Where a scan has holes nothing is proved: no chamber comes nearer to one, in plan, than the thickest wall, right
 * through the board, however deep what is missing may be dented. Next to the rail what is missing stands upright, and
 * half of the hole is kept clear besides: it may be dented toward the centreline.
 */
export function holesKeptOut(scan: Scan | undefined, chambers: ChamberSpec): KeepOutSpec[] {
  if (!scan) return [];
  const { deckSkin, bottomSkin, railWall, tolerance } = chambers;
  const wall = Math.max(deckSkin, bottomSkin, railWall) + tolerance;
  return scan.holes.map(({ rim, span }, i) => {
    const isAtRail = rim.some(([x, y]) => Math.abs(y) > halfWidthOf(scan, x, y) - span / 2);
    const clear = wall + (isAtRail ? span / 2 : 0);
    const around = hullOf(rim.map(([x, y]): Point => [x, y])).flatMap((corner) => polygonAround(corner, clear, SIDES));
    return { name: holeName(i), kind: 'polygon', points: hullOf(around) };
  });
}

/** Half of the width at the nearest station, on the side of `y`, mm. */
function halfWidthOf({ form: { stations } }: Scan, x: number, y: number): number {
  const nearest = stations.reduce((a, b) => (Math.abs(b.x - x) < Math.abs(a.x - x) ? b : a));
  return nearest.half[y < 0 ? 0 : 1];
}

/** Straight sides that stand for the round around a corner of a hole; they go around it. */
const SIDES = 16;
