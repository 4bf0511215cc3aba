import type { CutPart, SawSetting } from '../../src/block/nest/cutPart.js';
import type { Cut, CutPlan, CutSheet } from '../../src/block/cut/cutPlan.js';

/** Sizes that differ by less are one size: what the planner itself calls the same, mm. */
const SAME = 0.0101;
/** Sizes are taken to this, mm. */
const TAKEN_TO = 0.001;

interface Rect {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}
type Point = { readonly x: number; readonly y: number };
type Piece = Rect & { readonly chain: number; readonly lastRun: Cut['run'] | undefined };

/**
 * Works every sheet with its list of cuts alone, as someone at the saw would, and says in words what is wrong. Shares
 * no code with the planner: a list of rectangles, each cut from edge to edge into two with the saw cut lost between.
 */
export function layoutFaults(plan: CutPlan, parts: readonly CutPart[], saw: SawSetting): string[] {
  const faults = plan.sheets.flatMap((sheet) => sheetFaults(sheet, saw, parts));
  const placed = plan.sheets.flatMap((sheet) => sheet.blanks.flatMap((blank) => blank.parts.map(({ id }) => id)));
  for (const { id } of parts) {
    const times = placed.filter((other) => other === id).length + plan.leftOut.filter((other) => other === id).length;
    if (times !== 1) faults.push(`block ${id} is there ${times} times`);
  }
  const { sheetArea, blockArea, keptArea, wasteArea } = plan.sums;
  if (wasteArea < -1e-6 * sheetArea) faults.push('negative waste');
  const blocks = parts.filter(({ id }) => !plan.leftOut.includes(id)).reduce((sum, part) => sum + areaOf(part), 0);
  const rounded = parts.reduce((sum, { length, height }) => sum + TAKEN_TO * (length + height), 0);
  if (Math.abs(blocks - blockArea) > rounded + 1e-6 * (1 + blocks))
    faults.push(`block area ${blockArea}, by hand ${blocks}`);
  if (Math.abs(sheetArea - blockArea - keptArea - wasteArea) > 1e-6 * (1 + sheetArea))
    faults.push('areas do not add up');
  return faults;
}

function sheetFaults(sheet: CutSheet, saw: SawSetting, parts: readonly CutPart[]): string[] {
  const faults: string[] = [];
  const fault = (text: string) => faults.push(`sheet ${sheet.number}: ${text}`);
  let pieces: Piece[] = [{ x0: 0, y0: 0, x1: sheet.length, y1: sheet.width, chain: 0, lastRun: undefined }];
  sheet.cuts.forEach((cut, i) => {
    if (cut.number !== i + 1) fault(`cut ${cut.number} comes as number ${i + 1}`);
    const found = pieces.find((piece) => goesThrough(cut, piece, saw.kerf));
    if (!found) return void fault(`cut ${cut.number} does not run from edge to edge of one piece`);
    const chain = cut.stage === 0 ? 0 : found.chain + (found.lastRun === cut.run ? 0 : 1);
    const lastRun = cut.stage === 0 ? undefined : cut.run;
    if (chain > 3) fault(`cut ${cut.number} is the ${chain}th stage`);
    if (cut.stage > 3 || (cut.stage > 0 && cut.stage !== chain))
      fault(`cut ${cut.number} says stage ${cut.stage}, is ${chain}`);
    const [low, high] = halves(cut, found, saw.kerf);
    const size = cut.run === 'along' ? low.y1 - low.y0 : low.x1 - low.x0;
    if (cut.fence !== undefined && Math.abs(size - cut.fence) > SAME)
      fault(`cut ${cut.number}: fence ${cut.fence}, piece ${size}`);
    const rest = [low, high].filter(({ x0, y0, x1, y1 }) => x1 - x0 > 1e-9 && y1 - y0 > 1e-9);
    pieces = [...pieces.filter((piece) => piece !== found), ...rest.map((rect) => ({ ...rect, chain, lastRun }))];
  });
  const left = [...pieces];
  for (const { x, y, length, width, parts: inside } of [
    ...sheet.blanks,
    ...sheet.offcuts.map((o) => ({ ...o, parts: [] })),
  ]) {
    const index = left.findIndex((piece) => same(piece, { x0: x, y0: y, x1: x + length, y1: y + width }));
    if (index < 0) fault(`${inside.map(({ id }) => id).join('+') || 'an offcut'} is not a piece that the cuts leave`);
    else left.splice(index, 1);
  }
  for (const { length, width, id } of sheet.offcuts) {
    const [short, long] = [saw.keep.length, saw.keep.width].sort((a, b) => a - b) as [number, number];
    if (Math.min(length, width) < short - SAME || Math.max(length, width) < long - SAME)
      fault(`${id} is too small to keep`);
  }
  const rects = sheet.blanks.map(({ x, y, length, width }) => ({ x0: x, y0: y, x1: x + length, y1: y + width }));
  rects.forEach((a, i) => {
    if (a.x0 < saw.trim - 1e-6 || a.y0 < saw.trim - 1e-6) fault(`blank ${i} lies in the trimming`);
    if (a.x1 > sheet.length - saw.trim + 1e-5 || a.y1 > sheet.width - saw.trim + 1e-5)
      fault(`blank ${i} lies over the edge`);
    for (const b of rects.slice(i + 1)) {
      const apart = Math.max(b.x0 - a.x1, a.x0 - b.x1, b.y0 - a.y1, a.y0 - b.y1);
      if (apart < saw.kerf - 1e-6) fault(`blank ${i} has ${apart} to another, the saw takes ${saw.kerf}`);
    }
  });
  for (const blank of sheet.blanks) {
    for (const { id, outline } of blank.parts) {
      const part = parts.find((candidate) => candidate.id === id)!;
      const inside = outline.every(
        (p) =>
          p.x >= blank.x - 1e-6 &&
          p.x <= blank.x + blank.length + 1e-6 &&
          p.y >= blank.y - 1e-6 &&
          p.y <= blank.y + blank.width + 1e-6,
      );
      if (!inside) fault(`${id} leaves its blank`);
      const box = [spread(outline.map(({ x }) => x)), spread(outline.map(({ y }) => y))];
      const isSize = (a: number, b: number) => Math.abs(a - b) < TAKEN_TO + 1e-6;
      const upright = isSize(box[0]!, part.length) && isSize(box[1]!, part.height);
      const turned = isSize(box[1]!, part.length) && isSize(box[0]!, part.height);
      if (!upright && !(turned && part.mayTurn)) fault(`${id} has not its size, or lies against the grain`);
    }
    if (blank.parts.length === 2) {
      const [a, b] = blank.parts;
      const apart = distance(a!.outline, b!.outline);
      if (apart < saw.kerf - 1e-6) fault(`${a!.id} and ${b!.id} are ${apart} apart, the saw takes ${saw.kerf}`);
    }
  }
  return faults;
}

/**
 * Whether a cut runs from one edge of the piece to the opposite one and takes something off: a blade may stand half
 * beside it to shave a sliver.
 */
function goesThrough({ run, from, to }: Cut, { x0, y0, x1, y1 }: Rect, kerf: number): boolean {
  const close = (a: number, b: number) => Math.abs(a - b) <= SAME;
  if (run === 'along') {
    return (
      close(from.y, to.y) && from.y + kerf / 2 > y0 && from.y - kerf / 2 < y1 && close(from.x, x0) && close(to.x, x1)
    );
  }
  return (
    close(from.x, to.x) && from.x + kerf / 2 > x0 && from.x - kerf / 2 < x1 && close(from.y, y0) && close(to.y, y1)
  );
}

function halves({ run, from }: Cut, piece: Rect, kerf: number): [Rect, Rect] {
  const { x0, y0, x1, y1 } = piece;
  return run === 'along'
    ? [
        { x0, x1, y0, y1: from.y - kerf / 2 },
        { x0, x1, y0: from.y + kerf / 2, y1 },
      ]
    : [
        { y0, y1, x0, x1: from.x - kerf / 2 },
        { y0, y1, x0: from.x + kerf / 2, x1 },
      ];
}

function same(a: Rect, b: Rect): boolean {
  return (['x0', 'y0', 'x1', 'y1'] as const).every((key) => Math.abs(a[key] - b[key]) <= SAME);
}

/** A trapezoid: its length times the mean of its two ends. */
function areaOf({ length, height, taper }: CutPart): number {
  const { top, bottom } = taper ?? { top: 0, bottom: 0 };
  const head = height - (top < 0 ? -top : 0) - (bottom < 0 ? -bottom : 0);
  return (length * (head + (head - top - bottom))) / 2;
}

function spread(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

/**
 * Between two outlines that don't overlap, every corner against every edge. 0 where a corner of one lies in the other.
 */
function distance(a: readonly Point[], b: readonly Point[]): number {
  const corners = (from: readonly Point[], to: readonly Point[]) =>
    Math.min(...from.flatMap((p) => to.map((q, i) => toSegment(p, q, to[(i + 1) % to.length]!))));
  if (a.some((p) => inside(p, b)) || b.some((p) => inside(p, a))) return 0;
  return Math.min(corners(a, b), corners(b, a));
}

function toSegment(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

function inside(p: Point, outline: readonly Point[]): boolean {
  const sides = outline.map((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
  });
  return sides.every((side) => side > 1e-9) || sides.every((side) => side < -1e-9);
}
