import { documentLeaf, documentSheet, headOf, type Room } from './documentSheet.js';
import type { Leaf, PrintContext } from './leaf.js';
import { frame, narrow, wide } from '../trace/line.js';
import type { Pen } from '../pen/pen.js';
import type { TextBlock, TextPage } from '../../sheet/pages.js';
import type { Tag } from '../pen/tags.js';
import { wrap } from '../pen/wrap.js';

/** Heights of letters, mm (ISO 3098-1:2015). */
const TITLE = 7;
const HEADING = 5;
const BODY = 3;
const LINE_PITCH = 1.8;

/** A page or pages of text. A block goes to the next page whole; one taller than a page is broken between lines. */
export function layText(page: TextPage, context: PrintContext): readonly Leaf[] {
  const { room } = documentSheet(context, false);
  const pages: Inline[][] = [[]];
  let left = room.height;
  for (const piece of page.blocks.flatMap((block) => piecesOf(block, room, context))) {
    const needed = piece.height + (piece.keepWithNext ? 3 * BODY * LINE_PITCH : 0);
    if (needed > left && pages[pages.length - 1]!.length > 0) {
      pages.push([]);
      left = room.height;
    }
    pages[pages.length - 1]!.push(piece);
    left -= piece.height;
  }
  return pages.map((pieces, i) =>
    documentLeaf(context, false, headOf(page, i === 0, context), (pen, inner) => {
      let y = inner.top;
      for (const piece of pieces) {
        const draw = (): void => piece.draw(pen, inner, y);
        if (piece.tag === undefined) draw();
        else pen.tagged(piece.tag, draw);
        y -= piece.height;
      }
    }),
  );
}

interface Inline {
  readonly height: number;
  /** Absent where it tells its parts apart itself. */
  readonly tag?: Tag;
  readonly keepWithNext?: boolean;
  draw(pen: Pen, room: Room, top: number): void;
}

function piecesOf(block: TextBlock, room: Room, context: PrintContext): readonly Inline[] {
  switch (block.kind) {
    case 'title':
      return [{ ...linesPiece(block.text, TITLE, true, 0, room, context, 5), tag: 'H1' }];
    case 'heading':
      return [{ ...linesPiece(block.text, HEADING, true, 0, room, context, 3, 4), tag: 'H2', keepWithNext: true }];
    case 'paragraph':
      return [linesPiece(block.text, BODY, false, 0, room, context, 2.5)];
    case 'list':
      return block.items.map((item, i) => itemPiece(item, block.numbered ? `${String(i + 1)}.` : '–', room, context));
    case 'caution':
      return [cautionPiece(block.title, block.lines, room, context)];
    case 'pairs':
      return block.pairs.map(([name, value]) => pairPiece(name, value, room, context));
  }
}

function linesPiece(
  text: string,
  height: number,
  bold: boolean,
  indent: number,
  room: Room,
  context: PrintContext,
  after: number,
  before = 0,
): Inline {
  const lines = wrap(text, room.width - indent, height, bold, context.measure);
  const pitch = height * LINE_PITCH;
  return {
    tag: 'P',
    height: before + lines.length * pitch + after,
    draw: (pen, { left }, top) => {
      lines.forEach((line, i) =>
        pen.text(spaced(line), left + indent, top - before - (i + 0.5) * pitch, { height, bold }),
      );
    },
  };
}

/** A reader that speaks runs lines together where no space ends them. */
const spaced = (line: string): string => `${line} `;

function itemPiece(text: string, bullet: string, room: Room, context: PrintContext): Inline {
  const piece = linesPiece(text, BODY, false, 8, room, context, 1.2);
  return {
    ...piece,
    draw: (pen, inner, top) => {
      pen.text(spaced(bullet), inner.left + 6, top - 0.5 * BODY * LINE_PITCH, { height: BODY, align: 'right' });
      piece.draw(pen, inner, top);
    },
  };
}

function pairPiece(name: string, value: string, room: Room, context: PrintContext): Inline {
  const at = room.width * 0.36;
  const names = wrap(name, at - 3, BODY, true, context.measure);
  const values = wrap(value, room.width - at, BODY, false, context.measure);
  const pitch = BODY * LINE_PITCH;
  const height = Math.max(names.length, values.length) * pitch + 1.6;
  return {
    height,
    draw: (pen, { left, right }, top) => {
      const write = (lines: readonly string[], x: number, bold: boolean): void =>
        pen.tagged('P', () =>
          lines.forEach((line, i) => pen.text(spaced(line), x, top - 0.8 - (i + 0.5) * pitch, { height: BODY, bold })),
        );
      write(names, left, true);
      write(values, left + at, false);
      pen.line([left, top - height, right, top - height], narrow);
    },
  };
}

/** A frame with the warning triangle (ISO 7010, W001) beside the words. */
function cautionPiece(title: string, lines: readonly string[], room: Room, context: PrintContext): Inline {
  const indent = 20;
  const inset = { ...room, width: room.width - 4 };
  const pieces = [
    linesPiece(title, BODY + 0.5, true, indent, inset, context, 1),
    ...lines.map((line) => linesPiece(line, BODY, false, indent, inset, context, 0.8)),
  ];
  const inside =
    Math.max(
      16,
      pieces.reduce((sum, piece) => sum + piece.height, 0),
    ) + 5;
  return {
    tag: 'Note',
    height: inside + 4,
    draw: (pen, inner, top) => {
      const { left, right } = inner;
      pen.rectangle({ minX: left, minY: top - inside, maxX: right, maxY: top }, frame);
      drawWarning(pen, left + 10, top - 10, 13);
      let y = top - 2.5;
      for (const piece of pieces) {
        piece.draw(pen, inner, y);
        y -= piece.height;
      }
    },
  };
}

function drawWarning(pen: Pen, x: number, y: number, side: number): void {
  const height = (side * Math.sqrt(3)) / 2;
  const foot = y - height / 2;
  pen.line([x - side / 2, foot, x + side / 2, foot, x, foot + height, x - side / 2, foot], { ...wide, width: 0.7 });
  pen.text('!', x, foot + height * 0.38, { height: height * 0.5, align: 'centre', bold: true });
}
