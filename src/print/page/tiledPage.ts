import { BARS_HEIGHT, BLOCK_HEIGHT } from '../tile/band.js';
import type { Legend } from '../../sheet/drawing.js';
import { isIn, shifted, type Box } from '../trace/box.js';
import { drawTrace, placedAt } from '../pen/drawTrace.js';
import { formatsOf, pageWidth, type SheetFormat } from '../tile/format.js';
import { mergedInk } from '../tile/ink.js';
import type { Leaf, PrintContext } from './leaf.js';
import { dashed, frame, NARROW, narrow, WIDE } from '../trace/line.js';
import { drawLegend } from './legend.js';
import { layLoose } from '../tile/loose.js';
import { windowBox, type Run, type TilePlan } from '../tile/nest.js';
import type { Pen } from '../pen/pen.js';
import { printerStamp } from '../paper/printer.js';
import { hasLine, showsOn, writtenOn, type Written } from '../tile/runWords.js';
import { seamsOf, type Seam } from '../tile/seam.js';
import { WORD_HEIGHT } from '../tile/seamMark.js';
import { seamWordsOn, type SeamWords } from '../tile/seamWords.js';
import type { TiledPage, Use } from '../../sheet/pages.js';
import { drawCentringMarks, drawTrimmingMarks } from './sheetFrame.js';
import { BARS_WIDTH, drawLevelBars, drawUprightBars } from './testBar.js';
import type { Window } from '../tile/tile.js';
import { BLOCK_WIDTH, drawTitleBlock } from './titleBlock.js';

/**
 * The pages of drawings at full size, how they were laid out, and how many seams they have. `firstSeam` continues the
 * lettering of a set.
 */
export function layTiled(
  page: TiledPage,
  context: PrintContext,
  firstSeam: number,
): { readonly leaves: readonly Leaf[]; readonly plan: TilePlan; readonly seams: number } {
  const { formats } = formatsOf(context.paper, context.settings, context.printer);
  const plan = layLoose(page.title, page.drawings, formats);
  const leaves: Leaf[] = [];
  const { use } = page;
  let seamCount = firstSeam;
  for (const run of plan.runs) {
    const format = run.format as SheetFormat;
    const ink = mergedInk(run.placed);
    const seams = seamsOf(ink, run.windows, run.pane, seamCount);
    seamCount += seams.length;
    const written = writtenOn(run, seams);
    const marked = seamWordsOn(seams, written);
    const firstSheet = leaves.length;
    run.windows.forEach((window, index) => {
      const tile: Tile = {
        context,
        run,
        written,
        format,
        seams,
        marked,
        index,
        window,
        firstSheet,
        sheets: plan.sheets,
        use,
      };
      leaves.push({
        width: pageWidth(format, run.pane),
        height: format.height,
        factors: format.factors,
        ...(leaves.length === 0 ? { bookmark: page.title } : {}),
        ...(index === 0 && plan.runs.length > 1 ? { part: namesOf(run) } : {}),
        draw: (pen, book, number) => {
          const pageNumber = `${context.words.page} ${String(number)} ${context.words.of} ${String(book.pages)}`;
          pen.tagged('Figure', () => drawTile(pen, tile, pageNumber), `${page.title}: ${namesOf(run)}`);
        },
      });
    });
  }
  return { leaves, plan, seams: seamCount - firstSeam };
}

const namesOf = (run: Run): string => [...new Set(run.placed.map(({ drawing }) => drawing.title))].join(' · ');

interface Tile {
  readonly context: PrintContext;
  readonly run: Run;
  readonly written: readonly Written[];
  readonly format: SheetFormat;
  readonly seams: readonly Seam[];
  /** What is printed of each seam. */
  readonly marked: readonly SeamWords[];
  readonly index: number;
  readonly window: Window;
  readonly firstSheet: number;
  readonly sheets: number;
  readonly use: Use | undefined;
}

function drawTile(pen: Pen, tile: Tile, pageNumber: string): void {
  const { run, format, window, context } = tile;
  const { pane } = run;
  const box: Box = {
    minX: format.left,
    minY: format.bottom + format.band,
    maxX: format.left + pane.width,
    maxY: format.bottom + format.band + pane.height,
  };
  const mine = tile.marked.filter((_, i) => tile.seams[i]!.under === tile.index || tile.seams[i]!.over === tile.index);
  const seen = windowBox(run, window);
  const words = mine.flatMap(({ letters }) => letters).filter(({ box: around }) => isIn(around, seen));
  const onPage = placedAt(window.x, window.y, box.minX, box.minY);
  pen.within(box, () => {
    const clear = words.map(({ box: around }) => around);
    for (const { trace, up, isOn } of tile.written) {
      const down = (b: Box): Box => shifted(b, 0, -up);
      const onto = placedAt(window.x, window.y - up, box.minX, box.minY);
      drawTrace(pen, trace, down(seen), onto, clear.map(down), (text) => isOn(tile.index, text));
    }
    for (const { text, x, y, bold } of words) {
      pen.text(text, onPage.x(x), onPage.y(y), { height: WORD_HEIGHT, align: 'centre', bold });
    }
    for (const [x1, y1, x2, y2] of mine.flatMap(({ diagonals }) => diagonals)) {
      pen.line([onPage.x(x1), onPage.y(y1), onPage.x(x2), onPage.y(y2)], narrow);
    }
  });
  drawEdges(pen, tile, box);
  const sheet = {
    width: pageWidth(format, pane),
    height: format.height,
    left: format.left,
    right: pageWidth(format, pane) - box.maxX,
    top: format.height - box.maxY,
    bottom: format.bottom,
  };
  drawCentringMarks(pen, sheet);
  drawTrimmingMarks(pen, sheet);
  drawUprightBars(pen, box.minX, box.minY + 1, context.words);
  drawBand(pen, tile, box);
  pen.text(pageNumber, box.maxX, format.bottom - 2.5, { height: 2, align: 'right' });
}

/** The frame; where another sheet joins, the line to cut on or to lay it to, and which sheet that is. */
function drawEdges(pen: Pen, tile: Tile, box: Box): void {
  const { words } = tile.context;
  const { index, window, seams, firstSheet } = tile;
  const mine = seams.filter((seam) => seam.under === index || seam.over === index);
  const has = (way: Seam['way'], role: 'under' | 'over'): readonly Seam[] =>
    mine.filter((seam) => seam.way === way && seam[role] === index);
  const sheetOf = (seam: Seam, role: 'under' | 'over'): string =>
    `${pad(firstSheet + seam[role] + 1, tile.sheets)} (${seam.letters})`;
  const [left, right, below, above] = [
    has('upright', 'over'),
    has('upright', 'under'),
    has('level', 'over'),
    has('level', 'under'),
  ];
  const edge = (points: number[], joined: boolean): void => pen.line(points, joined ? dashed(WIDE) : frame);
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
  const list = (found: readonly Seam[], role: 'under' | 'over'): string =>
    found.map((seam) => sheetOf(seam, role)).join(', ');
  const height = tile.format.height;
  // Clear of the centring marks at the middle of the sides; the band's height is theirs too, at the right.
  const [upper, lower] = [box.maxY - height / 2 - CLEAR, height / 2 - CLEAR - tile.format.bottom];
  const note = { height: 2.8, angleInDegrees: 90 } as const;
  const fromTop = (text: string, x: number): void => {
    pen.text(text, x, box.maxY - 2, { ...note, align: 'right', fit: upper - 2 });
  };
  if (left.length > 0) fromTop(`${words.cutHere} — ${words.layOver} ${list(left, 'under')}`, box.minX - 2.5);
  if (above.length > 0) fromTop(`${words.glueUnder} ${list(above, 'over')} ↑`, box.minX - 7);
  if (right.length > 0) fromTop(`${words.glueUnder} ${list(right, 'over')}`, box.maxX + 2.5);
  if (below.length > 0) {
    const text = `${words.cutHere} — ${words.layOver} ${list(below, 'under')} ↓`;
    pen.text(text, box.maxX + 2.5, tile.format.bottom + 2, { ...note, fit: lower - 2 });
  }
}

/** Notes in the margin keep so far from the centring marks, mm. */
const CLEAR = 2;

/** Under the drawing: test bars, the sheet's place in large letters, the title block. */
function drawBand(pen: Pen, tile: Tile, box: Box): void {
  const { context, run, format, window } = tile;
  const { words, printer } = context;
  const isWide = format.band < BLOCK_HEIGHT + BARS_HEIGHT;
  const bottom = format.bottom;
  const barsY = isWide ? bottom : bottom + BLOCK_HEIGHT;
  drawLevelBars(pen, box.minX, barsY, words);
  const onPage = tile.written.filter((written) => showsOn(written, run, tile.index));
  const sheet = `${pad(tile.firstSheet + tile.index + 1, tile.sheets)}/${String(tile.sheets)}`;
  const rows = new Set(run.windows.map((other) => other.row)).size;
  const columns = new Set(run.windows.map((other) => other.column)).size;
  const place = `${words.row} ${String(window.row + 1)}/${String(rows)}  ${words.column} ${pad(window.column + 1, columns)}/${String(columns)}`;
  const [largeX, largeY, room] = isWide
    ? [box.minX, bottom + BARS_HEIGHT + 5.5, BARS_WIDTH]
    : [box.minX + BARS_WIDTH, barsY + 5.5, box.maxX - box.minX - BARS_WIDTH];
  pen.text(`${words.sheet} ${sheet}`, largeX + 2, largeY + 2, { height: 4.2, bold: true, fit: room - 4 });
  pen.text(place, largeX + 2, largeY - 3.5, { height: 2.5, fit: room - 4 });
  const stamp = printerStamp(printer);
  // Left of the centring mark, as the page number stands right of it.
  const stampRoom = pageWidth(format, run.pane) / 2 - box.minX - 5;
  if (stamp) pen.text(`${words.compensated} ${stamp}`, box.minX, bottom - 2.5, { height: 2, fit: stampRoom });
  const drawings = (onPage.length > 0 ? onPage : tile.written).map(({ drawing }) => drawing);
  const legend = legendOf(onPage, tile);
  const middle = pageWidth(format, run.pane) / 2;
  drawLegend(pen, legend, { left: box.minX, right: box.maxX, middle, y: box.maxY + LEGEND_UP }, context.measure);
  const width = Math.min(BLOCK_WIDTH, box.maxX - box.minX - (isWide ? BARS_WIDTH + 2 : 0));
  drawTitleBlock(
    pen,
    box.maxX,
    bottom,
    width,
    {
      title: [...new Set(drawings.map((drawing) => drawing.title))].join(' · '),
      // The first note says what it is; all of them would be too small to read.
      supplement: [...new Set(drawings.flatMap((drawing) => drawing.notes.slice(0, 1)))].join(' · '),
      use: tile.use,
      identification: [...new Set(drawings.flatMap((drawing) => drawing.id.split(' ')))].join(' '),
      documentType: words.documentType.tiled,
      sheet,
      scale: words.scale,
    },
    context,
  );
}

/** The middle of the legend's letters over the frame, mm: within what every printer reaches. */
const LEGEND_UP = 2;

/** What the kinds of line that are on the page mean. */
function legendOf(onPage: readonly Written[], { run, window }: Tile): Legend {
  const shown = onPage.flatMap(({ drawing, trace, up }) => {
    const near = shifted(windowBox(run, window), 0, -up);
    return (drawing.legend ?? []).filter(([layer]) => hasLine(trace, layer, near));
  });
  return shown.filter(([layer], i) => shown.findIndex(([other]) => other === layer) === i);
}

/** Padded with zeros to as many digits as the largest, so that sheets sort as they lie. */
const pad = (n: number, largest: number): string => String(n).padStart(Math.max(2, String(largest).length), '0');
