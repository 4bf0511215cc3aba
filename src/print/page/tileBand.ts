import { BARS_HEIGHT, BLOCK_HEIGHT } from '../tile/band.js';
import type { Legend } from '../../sheet/drawing.js';
import { shifted, type Box } from '../trace/box.js';
import { pageWidth } from '../tile/format.js';
import { drawLegend } from './legend.js';
import { isInStrips, windowBox } from '../tile/nest.js';
import type { Pen } from '../pen/pen.js';
import { printerStamp } from '../paper/printer.js';
import { hasLine, showsOn, type Written } from '../tile/runWords.js';
import { padded } from './padded.js';
import { BARS_WIDTH, drawLevelBars } from './testBar.js';
import type { Tile } from './tile.js';
import { BLOCK_WIDTH, drawTitleBlock } from './titleBlock.js';

/** Under the drawing: test bars, the sheet's place in large letters, the title block. */
export function drawBand(pen: Pen, tile: Tile, box: Box): void {
  const { context, run, format } = tile;
  const { words, printer } = context;
  const isWide = format.band < BLOCK_HEIGHT + BARS_HEIGHT;
  const bottom = format.bottom;
  const barsY = isWide ? bottom : bottom + BLOCK_HEIGHT;
  drawLevelBars(pen, box.minX, barsY, words);
  const onPage = tile.written.filter((written) => tile.laid.some(({ window }) => showsOn(written, run, window)));
  const sheet = `${padded(tile.firstSheet + tile.index + 1, tile.sheets)}/${String(tile.sheets)}`;
  const place = placeOf(tile);
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
