import { BARS_HEIGHT, BLOCK_HEIGHT, STRIPS_BAND } from '../tile/band.js';
import type { Legend } from '../../sheet/drawing.js';
import { shifted, type Box } from '../trace/box.js';
import { pageWidth } from '../tile/format.js';
import { drawLegend } from './legend.js';
import { isInStrips, windowBox } from '../tile/nest.js';
import type { Pen } from '../pen/pen.js';
import { isoDate } from '../paper/day.js';
import { printerStamp } from '../paper/printer.js';
import { wrap } from '../pen/wrap.js';
import { hasLine, showsOn, type Written } from '../tile/runWords.js';
import { padded } from './padded.js';
import { BARS_WIDTH, drawLevelBars } from './testBar.js';
import type { Tile } from './tile.js';
import { BLOCK_WIDTH, drawTitleBlock } from './titleBlock.js';

/** Under the drawing: test bars, the sheet's place in large letters, the title block, or in short what it says. */
export function drawBand(pen: Pen, tile: Tile, box: Box): void {
  const { context, run, format } = tile;
  const { printer, words } = context;
  const onPage = tile.written.filter((written) => tile.laid.some(({ window }) => showsOn(written, run, window)));
  const sheet = `${padded(tile.firstSheet + tile.index + 1, tile.sheets)}/${String(tile.sheets)}`;
  const stamp = printerStamp(printer);
  // Left of the centring mark, as the page number stands right of it.
  const middle = pageWidth(format, run.pane) / 2;
  const stampRoom = middle - box.minX - 5;
  const under = { height: 2, fit: stampRoom };
  if (stamp) pen.text(`${words.compensated} ${stamp}`, box.minX, format.bottom - 2.5, under);
  const legend = legendOf(onPage, tile);
  drawLegend(pen, legend, { left: box.minX, right: box.maxX, middle, y: box.maxY + LEGEND_UP }, context.measure);
  if (isInStrips(run) && format.band === STRIPS_BAND) drawStripsBand(pen, tile, box, sheet);
  else drawWholeBand(pen, tile, box, sheet, onPage.length > 0 ? onPage : tile.written);
}

function drawWholeBand(pen: Pen, tile: Tile, box: Box, sheet: string, shown: readonly Written[]): void {
  const { context, format } = tile;
  const { words } = context;
  const isWide = format.band < BLOCK_HEIGHT + BARS_HEIGHT;
  const bottom = format.bottom;
  const barsY = isWide ? bottom : bottom + BLOCK_HEIGHT;
  drawLevelBars(pen, box.minX, barsY, words);
  const [largeX, largeY, room] = isWide
    ? [box.minX, bottom + BARS_HEIGHT + 5.5, BARS_WIDTH]
    : [box.minX + BARS_WIDTH, barsY + 5.5, box.maxX - box.minX - BARS_WIDTH];
  pen.text(`${words.sheet} ${sheet}`, largeX + 2, largeY + 2, { height: 4.2, bold: true, fit: room - 4 });
  pen.text(placeOf(tile), largeX + 2, largeY - 3.5, { height: 2.5, fit: room - 4 });
  const drawings = shown.map(({ drawing }) => drawing);
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

/** Letters of what is said under strips, mm, and from line to line. */
const SAID = 2.5;
const SAID_STEP = 4.2;

/**
 * What a page of strips says of itself: its use over the test bars; beside them its place, the strips it carries, and
 * which state of which job it is of. What each strip is stands on the strip.
 */
function drawStripsBand(pen: Pen, { context, format, use, ...tile }: Tile, box: Box, sheet: string): void {
  const { words, mark, date, measure } = context;
  const width = box.maxX - box.minX - 4;
  const said = wrap(use ? `${use.size} · ${use.when}` : '', width, SAID, true, measure);
  said.forEach((line, i) => {
    const y = format.bottom + STRIPS_BAND - 3 - i * SAID_STEP;
    pen.text(line, box.minX + 2, y, { height: SAID, bold: true, fit: width });
  });
  drawLevelBars(pen, box.minX, format.bottom, words);
  const left = box.minX + BARS_WIDTH + 2;
  const room = box.maxX - left - 2;
  const revision = mark.revision ? [`${words.titleBlock.revision} ${mark.revision}`] : [];
  const state = [mark.job, ...revision, isoDate(date), words.scale];
  pen.text(`${words.sheet} ${sheet}`, left, format.bottom + 8.6, { height: 4.2, bold: true, fit: room });
  pen.text(placeOf({ context, format, use, ...tile }), left, format.bottom + 4.6, { height: SAID, fit: room });
  pen.text(state.join(' · '), left, format.bottom + 1.4, { height: 2, fit: room });
}

/** Where in its run a page lies: row and column, or which of its strips it carries. */
function placeOf({ context, run, laid }: Tile): string {
  const { words } = context;
  if (isInStrips(run)) {
    const strips = laid.map(({ window }) => padded(window + 1, run.windows.length)).join(' ');
    return `${words.strips} ${strips}/${String(run.windows.length)}; ${words.cutApart}`;
  }
  const window = run.windows[laid[0]!.window]!;
  const rows = new Set(run.windows.map((other) => other.row)).size;
  const columns = new Set(run.windows.map((other) => other.column)).size;
  return `${words.row} ${String(window.row + 1)}/${String(rows)}  ${words.column} ${padded(window.column + 1, columns)}/${String(columns)}`;
}

/** The middle of the legend's letters over the frame, mm: within what every printer reaches. */
const LEGEND_UP = 2;

/** What the kinds of line that are on the page mean. */
function legendOf(onPage: readonly Written[], { run, laid }: Tile): Legend {
  const shown = onPage.flatMap(({ drawing, trace, up }) => {
    const near = laid.map(({ window }) => shifted(windowBox(run, run.windows[window]!), 0, -up));
    return (drawing.legend ?? []).filter(([layer]) => near.some((box) => hasLine(trace, layer, box)));
  });
  return shown.filter(([layer], i) => shown.findIndex(([other]) => other === layer) === i);
}
