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
/** Of tables that do not fit otherwise, and of pages that are to be as few as can be. */
const SMALL = 2.5;
const LINE_PITCH = 1.7;

/**
 * A page or pages of text. A block goes to the next page whole; one taller than a page is broken between lines. Of one
 * that is to take the fewest pages the letters are as large as those allow.
 */
export function layText(page: TextPage, context: PrintContext): readonly Leaf[] {
  if (!page.isTight) return laidIn(page, { ...context, body: BODY });
  const settings = [BODY, (BODY + SMALL) / 2, SMALL].map((body) => laidIn(page, { ...context, body }));
  const fewest = Math.min(...settings.map(({ length }) => length));
  return settings.find(({ length }) => length === fewest)!;
}

/** How text is set: the height of its letters, mm. */
interface TextContext extends PrintContext {
  readonly body: number;
}

function laidIn(page: TextPage, context: TextContext): readonly Leaf[] {
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

function piecesOf(block: TextBlock, room: Room, context: TextContext): readonly Inline[] {
  switch (block.kind) {
    case 'title':
      return [{ ...linesPiece(block.text, TITLE, true, 0, room, context, 5), tag: 'H1' }];
    case 'heading':
      return [{ ...linesPiece(block.text, HEADING, true, 0, room, context, 3, 4), tag: 'H2', keepWithNext: true }];
    case 'paragraph':
      return [linesPiece(block.text, context.body, false, 0, room, context, 2.5)];
    case 'list':
      return block.items.map((item, i) => itemPiece(item, block.numbered ? `${String(i + 1)}.` : '–', room, context));
    case 'caution':
      return [cautionPiece(block.title, block.lines, room, context)];
    case 'pairs':
      return pairPieces(block.pairs, room, context);
    case 'table':
      return tablePieces(block, room, context);
    case 'pages':
      return pagesPieces(block, room, context);
  }
}

function linesPiece(
  text: string,
  height: number,
  bold: boolean,
  indent: number,
  room: Room,
  context: TextContext,
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

function itemPiece(text: string, bullet: string, room: Room, context: TextContext): Inline {
  const piece = linesPiece(text, context.body, false, 8, room, context, 1.2);
  return {
    ...piece,
    draw: (pen, inner, top, book) => {
      pen.text(spaced(bullet), inner.left + 6, top - 0.5 * context.body * LINE_PITCH, {
        height: context.body,
        align: 'right',
      });
      piece.draw(pen, inner, top, book);
    },
  };
}

/** The most of a page's width that the names of pairs take, as a share, and what is kept free after them, mm. */
const NAMES = 0.36;
const AFTER_NAME = 4;
/** Between pairs, for the line under them, mm. */
const PAIRS_APART = 1.2;

function pairPieces(pairs: readonly (readonly [string, string])[], room: Room, context: TextContext): Inline[] {
  const widest = Math.max(0, ...pairs.map(([name]) => context.measure(name, true) * context.body));
  const at = Math.min(room.width * NAMES, widest + AFTER_NAME);
  return pairs.map(([name, value]) => pairPiece(name, value, at, room, context));
}

function pairPiece(name: string, value: string, at: number, room: Room, context: TextContext): Inline {
  const names = wrap(name, at - 3, context.body, true, context.measure);
  const values = wrap(value, room.width - at, context.body, false, context.measure);
  const pitch = context.body * LINE_PITCH;
  const height = Math.max(names.length, values.length) * pitch + PAIRS_APART;
  return {
    height,
    draw: (pen, { left, right }, top) => {
      const write = (lines: readonly string[], x: number, bold: boolean): void =>
        pen.tagged('P', () =>
          lines.forEach((line, i) =>
            pen.text(spaced(line), x, top - PAIRS_APART / 2 - (i + 0.5) * pitch, { height: context.body, bold }),
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
function tablePieces(table: Table, room: Room, context: TextContext): readonly Inline[] {
  const settings = [context.body, SMALL].map((letters) => ({
    letters,
    ...columnWidths(table, letters, room.width, 2 * PADDING, TICK, context.measure),
  }));
  const wrapped = settings.find(({ fits }) => fits === 'wrapped') ?? settings[1]!;
  const setting = settings.find(({ fits }) => fits === 'unwrapped') ?? wrapped;
  const header = headerHeight(table, setting, context);
  const pieces: TableRow[][] = [[]];
  let left = room.height - header - context.body;
  for (const row of table.rows) {
    const height = heightOfRow(row, table, setting, context);
    if (height > left) {
      pieces.push([]);
      left = room.height - header - context.body;
    }
    pieces.at(-1)!.push(row);
    left -= height;
  }
  return pieces.map((rows): Inline => ({
    tag: 'Table',
    height: rows.reduce((sum, row) => sum + heightOfRow(row, table, setting, context), header + context.body),
    draw: (pen, inner, top) => {
      let y = top;
      pen.tagged('TR', () => (y = drawHeader(pen, inner.left, y, table, setting, context)));
      for (const row of rows) pen.tagged('TR', () => (y = drawRow(pen, inner, y, row, table, setting, context)));
    },
  }));
}

type Pages = Extract<TextBlock, { kind: 'pages' }>;

/** Between lines that stand beside each other, mm. */
const BESIDE = 8;

function pagesPieces({ title, entries, missing, isDense }: Pages, room: Room, context: TextContext): Inline[] {
  const lines = isDense
    ? entries.flatMap((entry, i) => (i % 2 === 0 ? [besideEachOther([entry, entries[i + 1]], missing, context)] : []))
    : entries.map((entry) => pagePiece(entry, missing, context));
  const apart = lines.map((line, i) =>
    i === lines.length - 1 ? { ...line, height: line.height + context.body } : line,
  );
  return title === undefined ? apart : [titleOver(title, room, context), ...apart];
}

/** A title as the columns of a table have it. */
function titleOver(title: string, room: Room, context: TextContext): Inline {
  const piece = linesPiece(title, context.body, true, PADDING, room, context, 2);
  return {
    ...piece,
    tag: 'H2',
    keepWithNext: true,
    draw: (pen, inner, top, book) => {
      piece.draw(pen, inner, top, book);
      pen.line([inner.left, top - piece.height + 1, inner.right, top - piece.height + 1], wide);
    },
  };
}

function besideEachOther(entries: readonly (PageEntry | undefined)[], missing: string, context: TextContext): Inline {
  const pieces = entries.flatMap((entry) => (entry ? [pagePiece(entry, missing, context)] : []));
  return {
    height: pieces[0]!.height,
    draw: (pen, inner, top, book) =>
      pieces.forEach((piece, i) => {
        const width = (inner.width - BESIDE) / 2 - PADDING;
        const left = inner.left + PADDING + i * (width + BESIDE);
        pen.tagged('P', () => piece.draw(pen, { ...inner, left, right: left + width, width }, top, book));
      }),
  };
}

/** What leads to a document: its name, a word, and the pages it takes, linked to the first. */
function pagePiece({ name, note, document }: PageEntry, missing: string, { body, measure }: TextContext): Inline {
  const height = body * LINE_PITCH + 0.8;
  return {
    tag: 'P',
    height,
    draw: (pen, { left, right, width }, top, book) => {
      const found = pagesOf(document, book);
      const y = top - height / 2;
      const pages = spaced(found?.range ?? (note === undefined ? missing : ''));
      const room = note === undefined ? width - measure(pages, false) * body - PADDING : width * 0.55;
      pen.text(spaced(name), left, y, { height: body, fit: room });
      if (note !== undefined)
        pen.text(spaced(note), left + width * 0.57, y, { height: body, fit: width * 0.27, bold: true });
      pen.text(pages, right, y, { height: body, align: 'right' });
      if (found?.name !== undefined) pen.link({ minX: left, minY: top - height, maxX: right, maxY: top }, found.name);
    },
  };
}

/** The pages that documents of a title or a kind take, here or in a file beside: `12`, `12–17`, `papers.pdf 12–17`. */
function pagesOf(document: string, book: Book): { readonly range: string; readonly name?: string } | undefined {
  const here = pagesIn(document, book);
  if (here) return here;
  const [there] = (book.beside ?? []).flatMap((file) => {
    const found = pagesIn(document, file.book);
    return found ? [{ range: `${file.name} ${found.range}` }] : [];
  });
  return there;
}

function pagesIn(document: string, book: Book): { readonly range: string; readonly name: string } | undefined {
  const documents = book.entries.filter(({ level }) => level === 0);
  const isMeant = ({ title, of }: Entry) => title === document || of === document;
  const first = documents.find(isMeant);
  if (!first) return undefined;
  const next = documents[documents.findLastIndex(isMeant) + 1];
  const last = next ? next.page - 1 : book.pages;
  return { name: first.name, range: last > first.page ? `${first.page}–${last}` : `${first.page}` };
}

/** A frame with the warning triangle (ISO 7010, W001) beside the words. */
function cautionPiece(title: string, lines: readonly string[], room: Room, context: TextContext): Inline {
  const indent = 16;
  const inset = { ...room, width: room.width - 3 };
  const pieces = [
    linesPiece(title, context.body + 0.5, true, indent, inset, context, 1),
    ...lines.map((line) => linesPiece(line, context.body, false, indent, inset, context, 0.8)),
  ];
  const inside =
    Math.max(
      13,
      pieces.reduce((sum, piece) => sum + piece.height, 0),
    ) + 4;
  return {
    tag: 'Note',
    height: inside + 3,
    draw: (pen, inner, top, book) => {
      const { left, right } = inner;
      pen.rectangle({ minX: left, minY: top - inside, maxX: right, maxY: top }, frame);
      drawWarning(pen, left + 8, top - 8.5, 11);
      let y = top - 2;
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
