import { documentLeaf, documentSheet, headOf, type Room } from './documentSheet.js';
import type { Book, Entry, Leaf, PrintContext } from './leaf.js';
import { columnWidths } from './tableColumns.js';
import { drawHeader, drawRow, headerHeight, heightOfRow, PADDING, TICK, type Table } from './tableRows.js';
import { frame, narrow, wide } from '../trace/line.js';
import type { Pen } from '../pen/pen.js';
import type { PageEntry, TableRow, TextBlock, TextPage } from '../../sheet/pages.js';
import type { Tag } from '../pen/tags.js';
import { wrap } from '../pen/wrap.js';

/** Heights of letters, mm (ISO 3098-1:2015). */
const TITLE = 7;
const HEADING = 5;
const BODY = 3;
/** Of tables that do not fit otherwise. */
const SMALL = 2.5;
const LINE_PITCH = 1.7;

/** A page or pages of text. A block goes to the next page whole; one taller than a page is broken between lines. */
export function layText(page: TextPage, context: PrintContext): readonly Leaf[] {
  const { room } = documentSheet(context, false);
  const pages: Inline[][] = [[]];
  let left = room.height;
  const pieces = page.blocks.flatMap((block, i) => {
    const made = piecesOf(block, room, context);
    const leads = block.kind === 'paragraph' && isLeadTo(page.blocks, i);
    return leads ? made.map((piece) => ({ ...piece, keepWithNext: true })) : made;
  });
  for (const [i, piece] of pieces.entries()) {
    if (neededFrom(pieces, i) > left && pages[pages.length - 1]!.length > 0) {
      pages.push([]);
      left = room.height;
    }
    pages[pages.length - 1]!.push(piece);
    left -= piece.height;
  }
  return pages.map((pieces, i) =>
    documentLeaf(context, false, headOf(page, i === 0, context), (pen, inner, book) => {
      let y = inner.top;
      for (const piece of pieces) {
        const draw = (): void => piece.draw(pen, inner, y, book);
        if (piece.tag === undefined) draw();
        else pen.tagged(piece.tag, draw);
        y -= piece.height;
      }
    }),
  );
}

/** Whether nothing but paragraphs stands between a block and a table: what is said of it stays with it. */
function isLeadTo(blocks: readonly TextBlock[], i: number): boolean {
  const next = blocks.slice(i + 1).find(({ kind }) => kind !== 'paragraph');
  return next?.kind === 'table';
}

/** Height of a piece with those that it stays with, mm. */
function neededFrom(pieces: readonly Inline[], from: number): number {
  let height = pieces[from]!.height;
  for (let i = from; pieces[i]!.keepWithNext && i + 1 < pieces.length; i++) height += pieces[i + 1]!.height;
  return height;
}

interface Inline {
  readonly height: number;
  /** Absent where it tells its parts apart itself. */
  readonly tag?: Tag;
  readonly keepWithNext?: boolean;
  draw(pen: Pen, room: Room, top: number, book: Book): void;
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
      return pairPieces(block.pairs, room, context);
    case 'table':
      return tablePieces(block, room, context);
    case 'pages':
      return block.entries.map((entry) => pagePiece(entry, block.missing));
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
    draw: (pen, inner, top, book) => {
      pen.text(spaced(bullet), inner.left + 6, top - 0.5 * BODY * LINE_PITCH, { height: BODY, align: 'right' });
      piece.draw(pen, inner, top, book);
    },
  };
}

/** The most of a page's width that the names of pairs take, as a share, and what is kept free after them, mm. */
const NAMES = 0.36;
const AFTER_NAME = 4;
/** Between pairs, for the line under them, mm. */
const PAIRS_APART = 1.2;

function pairPieces(pairs: readonly (readonly [string, string])[], room: Room, context: PrintContext): Inline[] {
  const widest = Math.max(0, ...pairs.map(([name]) => context.measure(name, true) * BODY));
  const at = Math.min(room.width * NAMES, widest + AFTER_NAME);
  return pairs.map(([name, value]) => pairPiece(name, value, at, room, context));
}

function pairPiece(name: string, value: string, at: number, room: Room, context: PrintContext): Inline {
  const names = wrap(name, at - 3, BODY, true, context.measure);
  const values = wrap(value, room.width - at, BODY, false, context.measure);
  const pitch = BODY * LINE_PITCH;
  const height = Math.max(names.length, values.length) * pitch + PAIRS_APART;
  return {
    height,
    draw: (pen, { left, right }, top) => {
      const write = (lines: readonly string[], x: number, bold: boolean): void =>
        pen.tagged('P', () =>
          lines.forEach((line, i) =>
            pen.text(spaced(line), x, top - PAIRS_APART / 2 - (i + 0.5) * pitch, { height: BODY, bold }),
          ),
        );
      write(names, left, true);
      write(values, left + at, false);
      pen.line([left, top - height, right, top - height], narrow);
    },
  };
}

/**
 * A table in one piece, in several where it is taller than a page, each with the header; its letters are those of the
 * text where its cells fit so.
 */
function tablePieces(table: Table, room: Room, context: PrintContext): readonly Inline[] {
  const settings = [BODY, SMALL].map((letters) => ({
    letters,
    ...columnWidths(table, letters, room.width, 2 * PADDING, TICK, context.measure),
  }));
  const wrapped = settings.find(({ fits }) => fits === 'wrapped') ?? settings[1]!;
  const setting = settings.find(({ fits }) => fits === 'unwrapped') ?? wrapped;
  const header = headerHeight(table, setting, context);
  const pieces: TableRow[][] = [[]];
  let left = room.height - header - BODY;
  for (const row of table.rows) {
    const height = heightOfRow(row, table, setting, context);
    if (height > left) {
      pieces.push([]);
      left = room.height - header - BODY;
    }
    pieces.at(-1)!.push(row);
    left -= height;
  }
  return pieces.map((rows): Inline => ({
    tag: 'Table',
    height: rows.reduce((sum, row) => sum + heightOfRow(row, table, setting, context), header + BODY),
    draw: (pen, inner, top) => {
      let y = top;
      pen.tagged('TR', () => (y = drawHeader(pen, inner.left, y, table, setting, context)));
      for (const row of rows) pen.tagged('TR', () => (y = drawRow(pen, inner, y, row, table, setting, context)));
    },
  }));
}

/** What leads to a document: its name, a word, and the pages it takes, linked to the first. */
function pagePiece({ name, note, document }: PageEntry, missing: string): Inline {
  const height = BODY * LINE_PITCH + 0.8;
  return {
    tag: 'P',
    height,
    draw: (pen, { left, right, width }, top, book) => {
      const found = pagesOf(document, book);
      const y = top - height / 2;
      pen.text(spaced(name), left, y, { height: BODY, fit: width * 0.6 });
      if (note !== undefined)
        pen.text(spaced(note), left + width * 0.62, y, { height: BODY, fit: width * 0.2, bold: true });
      pen.text(spaced(found?.range ?? missing), right, y, { height: BODY, align: 'right' });
      if (found) pen.link({ minX: left, minY: top - height, maxX: right, maxY: top }, found.name);
    },
  };
}

/** The pages that documents of a title or a kind take: `12`, or `12–17`. */
function pagesOf(document: string, book: Book): { readonly range: string; readonly name: string } | undefined {
  const documents = book.entries.filter(({ level }) => level === 0);
  const isMeant = ({ title, of }: Entry) => title === document || of === document;
  const first = documents.find(isMeant);
  if (!first) return undefined;
  const next = documents[documents.findLastIndex(isMeant) + 1];
  const last = next ? next.page - 1 : book.pages;
  return { name: first.name, range: last > first.page ? `${first.page}–${last}` : `${first.page}` };
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
    draw: (pen, inner, top, book) => {
      const { left, right } = inner;
      pen.rectangle({ minX: left, minY: top - inside, maxX: right, maxY: top }, frame);
      drawWarning(pen, left + 10, top - 10, 13);
      let y = top - 2.5;
      for (const piece of pieces) {
        piece.draw(pen, inner, y, book);
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
