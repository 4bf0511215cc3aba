import type { Pen } from '../pen/pen.js';
import { isInStrips, pageOf, type Laid } from '../tile/nest.js';
import type { Seam } from '../tile/seam.js';
import { shifted, type Box } from '../trace/box.js';
import { dashed, frame, NARROW, narrow, WIDE } from '../trace/line.js';
import { padded } from './padded.js';
import type { Tile } from './tile.js';

/** Notes in the margin keep so far from the centring marks, mm. */
const CLEAR = 2;
/** Letters of the notes, mm. */
const NOTE = 2.8;
const STRIP_NOTE = 2;
/** The middle of a strip's notes, from its side, mm: between it and the test bars. */
const BESIDE = 1.9;

/**
 * The edges of what a page carries, in its pane: the frame around a window that has the page to itself, a line to cut
 * on around strips; where another sheet joins, the line to cut on or to lay it to, and which sheet that is.
 */
export function drawEdges(pen: Pen, tile: Tile, pane: Box): void {
  if (isInStrips(tile.run)) pen.rectangle(pane, frame);
  for (const laid of tile.laid) {
    const window = tile.run.windows[laid.window]!;
    const seen = { minX: 0, minY: 0, maxX: tile.run.pane.width, maxY: window.height };
    drawEdge(pen, tile, laid, shifted(seen, pane.minX + laid.x, pane.minY + laid.y));
  }
}

function drawEdge(pen: Pen, tile: Tile, laid: Laid, box: Box): void {
  const { run, seams, format, context } = tile;
  const window = run.windows[laid.window]!;
  const isStrip = isInStrips(run);
  const mine = seams.filter((seam) => seam.under === laid.window || seam.over === laid.window);
  const has = (way: Seam['way'], role: 'under' | 'over'): readonly Seam[] =>
    mine.filter((seam) => seam.way === way && seam[role] === laid.window);
  const [left, right] = [has('upright', 'over'), has('upright', 'under')];
  const [below, above] = [has('level', 'over'), has('level', 'under')];
  const edge = (points: number[], joined: boolean): void =>
    pen.line(points, joined ? dashed(WIDE) : isStrip ? narrow : frame);
  edge([box.minX, box.minY, box.minX, box.maxY], left.length > 0);
  edge([box.maxX, box.minY, box.maxX, box.maxY], false);
  edge([box.minX, box.minY, box.maxX, box.minY], below.length > 0);
  edge([box.minX, box.maxY, box.maxX, box.maxY], false);
  for (const seam of right) {
    const x = box.minX + seam.at - window.x;
    const [low, high] = [seam.from, seam.to].map((y) => box.minY + y - window.y) as [number, number];
    pen.line([x, low, x, high], dashed(NARROW));
  }
  for (const seam of above) {
    const y = box.minY + seam.at - window.y;
    pen.line([box.minX, y, box.maxX, y], dashed(NARROW));
  }
  const { words } = context;
  const sheetOf = (seam: Seam, role: 'under' | 'over'): string =>
    `${padded(tile.firstSheet + pageOf(run, seam[role]) + 1, tile.sheets)} (${seam.letters})`;
  const list = (found: readonly Seam[], role: 'under' | 'over'): string =>
    found.map((seam) => sheetOf(seam, role)).join(', ');
  if (isStrip) {
    const note = { height: STRIP_NOTE, angleInDegrees: 90, align: 'centre', fit: window.height - 2 } as const;
    const y = (box.minY + box.maxY) / 2;
    if (left.length > 0) pen.text(`${words.layOver} ${list(left, 'under')}`, box.minX - BESIDE, y, note);
    if (right.length > 0) pen.text(`${words.glueUnder} ${list(right, 'over')}`, box.maxX + BESIDE, y, note);
    return;
  }
  // Clear of the centring marks at the middle of the sides; the band's height is theirs too, at the right.
  const middle = format.height / 2;
  const note = { height: NOTE, angleInDegrees: 90 } as const;
  const fromTop = (text: string, x: number): void => {
    pen.text(text, x, box.maxY - 2, { ...note, align: 'right', fit: box.maxY - middle - CLEAR - 2 });
  };
  if (left.length > 0) fromTop(`${words.cutHere} — ${words.layOver} ${list(left, 'under')}`, box.minX - 2.5);
  if (above.length > 0) fromTop(`${words.glueUnder} ${list(above, 'over')} ↑`, box.minX - 7);
  if (right.length > 0) fromTop(`${words.glueUnder} ${list(right, 'over')}`, box.maxX + 2.5);
  if (below.length > 0) {
    const text = `${words.cutHere} — ${words.layOver} ${list(below, 'under')} ↓`;
    const low = format.bottom + 2;
    pen.text(text, box.maxX + 2.5, low, { ...note, fit: middle - CLEAR - low });
  }
}
