import { BLOCK_HEIGHT } from '../tile/band.js';
import { heightOf, isEmpty, joinBoxes, widthOf, type Box } from '../trace/box.js';
import { drawTrace, placedAt } from '../pen/drawTrace.js';
import type { Leaf, PrintContext } from './leaf.js';
import { frame } from '../trace/line.js';
import { scaleFor, scaleText } from './scale.js';
import type { FigurePage } from '../../sheet/pages.js';
import { drawCentringMarks } from './sheetFrame.js';
import { BLOCK_WIDTH, drawTitleBlock } from './titleBlock.js';
import { traceOf } from '../trace/trace.js';
import { wrap } from '../pen/wrap.js';

/** Distance of the frame from the sheet's edges (ISO 5457:1999, 4.2), and of the drawing from the frame, mm. */
const FILING_BORDER = 20;
const BORDER = 10;
const AIR = 6;
const LETTERS = 2.5;

/** A drawing on one page, upright or lying, at the largest scale of ISO 5455 that fits. */
export function layFigure(page: FigurePage, context: PrintContext): readonly Leaf[] {
  const trace = traceOf(page.drawing);
  const extent = joinBoxes([...trace.lines, ...trace.texts].map((traced) => traced.box));
  const box = isEmpty(extent) ? { minX: 0, minY: 0, maxX: 1, maxY: 1 } : extent;
  const { documents, settings, words, measure } = context;
  const ways = [
    { width: documents.width, height: documents.height },
    { width: documents.height, height: documents.width },
  ].map(({ width, height }) => {
    const left = Math.max(FILING_BORDER, settings.margin + 10);
    const border = Math.max(BORDER, settings.margin + 5);
    const inside: Box = { minX: left, minY: border, maxX: width - border, maxY: height - border };
    const notes = (page.notes ?? []).flatMap((note) => wrap(note, widthOf(inside) - 2 * AIR, LETTERS, false, measure));
    const notesHeight = notes.length * LETTERS * 1.75 + (notes.length > 0 ? AIR : 0);
    const room: Box = { ...inside, minY: inside.minY + BLOCK_HEIGHT + notesHeight };
    return {
      width,
      height,
      inside,
      room,
      notes,
      scale: scaleFor(box, widthOf(room) - 2 * AIR, heightOf(room) - 2 * AIR),
    };
  });
  const { width, height, inside, room, notes, scale } = ways[0]!.scale >= ways[1]!.scale ? ways[0]! : ways[1]!;
  return [
    {
      width,
      height,
      factors: { x: 1, y: 1 },
      bookmark: page.title,
      draw: (pen, book, number) =>
        pen.tagged(
          'Figure',
          () => {
            const x = (room.minX + room.maxX - widthOf(box) * scale) / 2;
            const y = (room.minY + room.maxY - heightOf(box) * scale) / 2;
            drawTrace(pen, trace, box, placedAt(box.minX, box.minY, x, y, scale));
            notes.forEach((note, i) => {
              pen.text(note, inside.minX + AIR, room.minY - (i + 0.5) * LETTERS * 1.75, { height: LETTERS });
            });
            pen.rectangle(inside, frame);
            drawCentringMarks(pen, {
              width,
              height,
              left: inside.minX,
              right: width - inside.maxX,
              top: height - inside.maxY,
              bottom: inside.minY,
            });
            const block = Math.min(BLOCK_WIDTH, widthOf(inside));
            const title = {
              title: page.title,
              supplement: page.drawing.notes.join(' · '),
              use: page.use,
              identification: page.drawing.id,
              documentType: words.documentType.figure,
              sheet: '1/1',
              scale: page.drawing.isChart ? '' : `${words.scaleOf} ${scaleText(scale)}`,
            };
            drawTitleBlock(pen, inside.maxX, inside.minY, block, title, context);
            const pages = `${words.page} ${String(number)} ${words.of} ${String(book.pages)}`;
            pen.text(pages, inside.maxX, inside.minY - 2.5, { height: 2, align: 'right' });
          },
          [page.title, ...page.drawing.notes].join('. '),
        ),
    },
  ];
}
