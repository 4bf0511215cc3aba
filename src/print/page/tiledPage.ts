import { isIn, shifted, type Box } from '../trace/box.js';
import { drawTrace, placedAt } from '../pen/drawTrace.js';
import { formatsOf, pageWidth, type SheetFormat } from '../tile/format.js';
import { mergedInk } from '../tile/ink.js';
import type { Leaf, PrintContext } from './leaf.js';
import { narrow } from '../trace/line.js';
import { layLoose } from '../tile/loose.js';
import { isInStrips, windowBox, type Laid, type Run, type TilePlan } from '../tile/nest.js';
import type { Pen } from '../pen/pen.js';
import { writtenOn } from '../tile/runWords.js';
import { seamsOf, type Seam } from '../tile/seam.js';
import { WORD_HEIGHT } from '../tile/seamMark.js';
import { seamWordsOn } from '../tile/seamWords.js';
import type { TiledPage } from '../../sheet/pages.js';
import { drawCentringMarks, drawTrimmingMarks } from './sheetFrame.js';
import { drawUprightBars } from './testBar.js';
import type { Tile } from './tile.js';
import { drawBand } from './tileBand.js';
import { drawEdges } from './tileEdges.js';

/**
 * The pages of drawings at full size, how they were laid out, and their seams. `firstSeam` continues the
 * lettering of a set.
 */
export function layTiled(
  page: TiledPage,
  context: PrintContext,
  firstSeam: number,
): { readonly leaves: readonly Leaf[]; readonly plan: TilePlan; readonly seams: readonly Seam[] } {
  const { formats } = formatsOf(context.paper, context.settings, context.printer);
  const plan = layLoose(page.title, page.drawings, formats);
  const leaves: Leaf[] = [];
  const { use } = page;
  const bookmarked = new Set<string>([page.title]);
  const all: Seam[] = [];
  for (const run of plan.runs) {
    const format = run.format as SheetFormat;
    const ink = mergedInk(run.placed);
    const seams = seamsOf(ink, run.windows, run.pane, firstSeam + all.length);
    all.push(...seams);
    const written = writtenOn(run, seams, context.words);
    const marked = seamWordsOn(seams, written);
    const firstSheet = leaves.length;
    // Several runs may be of the same rows: who looks for these turns to the first.
    const named = namesOf(run);
    const isFirst = !bookmarked.has(named);
    bookmarked.add(named);
    run.pages.forEach((laid, index) => {
      const sheets = plan.sheets;
      const tile: Tile = { context, run, written, format, seams, marked, index, laid, firstSheet, sheets, use };
      leaves.push({
        width: pageWidth(format, run.pane),
        height: format.height,
        factors: format.factors,
        ...(leaves.length === 0 ? { bookmark: page.title } : {}),
        ...(index === 0 && isFirst && plan.runs.length > 1 ? { part: named } : {}),
        draw: (pen, book, number) => {
          const pageNumber = `${context.words.page} ${String(number)} ${context.words.of} ${String(book.pages)}`;
          pen.tagged('Figure', () => drawTile(pen, tile, pageNumber), `${page.title}: ${namesOf(run)}`);
        },
      });
    });
  }
  return { leaves, plan, seams: all };
}

const namesOf = (run: Run): string => [...new Set(run.placed.map(({ drawing }) => drawing.title))].join(' · ');

function drawTile(pen: Pen, tile: Tile, pageNumber: string): void {
  const { run, format, context } = tile;
  const { pane } = run;
  const box: Box = {
    minX: format.left,
    minY: format.bottom + format.band,
    maxX: format.left + pane.width,
    maxY: format.bottom + format.band + pane.height,
  };
  for (const laid of tile.laid) drawWindow(pen, tile, laid, box);
  drawEdges(pen, tile, box);
  const sheet = {
    width: pageWidth(format, pane),
    height: format.height,
    left: format.left,
    right: pageWidth(format, pane) - box.maxX,
    top: format.height - box.maxY,
    bottom: format.bottom,
  };
  if (!isInStrips(run)) drawCentringMarks(pen, sheet);
  drawTrimmingMarks(pen, sheet);
  drawUprightBars(pen, box.minX, box.minY + 1, context.words);
  drawBand(pen, tile, box);
  pen.text(pageNumber, box.maxX, format.bottom - 2.5, { height: 2, align: 'right' });
}

/** What a window shows, on its place in the page's pane. */
function drawWindow(pen: Pen, tile: Tile, laid: Laid, pane: Box): void {
  const { run, seams } = tile;
  const window = run.windows[laid.window]!;
  const mine = tile.marked.filter((_, i) => seams[i]!.under === laid.window || seams[i]!.over === laid.window);
  const seen = windowBox(run, window);
  const words = mine.flatMap(({ letters }) => letters).filter(({ box: around }) => isIn(around, seen));
  const [left, low] = [pane.minX + laid.x, pane.minY + laid.y];
  const onPage = placedAt(window.x, window.y, left, low);
  pen.within(shifted(seen, left - window.x, low - window.y), () => {
    const clear = words.map(({ box: around }) => around);
    for (const { trace, up, isOn } of tile.written) {
      const down = (b: Box): Box => shifted(b, 0, -up);
      const onto = placedAt(window.x, window.y - up, left, low);
      drawTrace(pen, trace, down(seen), onto, clear.map(down), (text) => isOn(laid.window, text));
    }
    for (const { text, x, y, bold } of words) {
      pen.text(text, onPage.x(x), onPage.y(y), { height: WORD_HEIGHT, align: 'centre', bold });
    }
    for (const [x1, y1, x2, y2] of mine.flatMap(({ diagonals }) => diagonals)) {
      pen.line([onPage.x(x1), onPage.y(y1), onPage.x(x2), onPage.y(y2)], narrow);
    }
  });
}
