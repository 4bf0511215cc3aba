import type { Book, Leaf, PrintContext } from './leaf.js';
import { isoDate } from '../paper/day.js';
import { narrow, wide } from '../trace/line.js';
import type { Pen } from '../pen/pen.js';
import type { DocumentPage, Use } from '../../sheet/pages.js';

/**
 * Borders of lists and notes, mm: 20 mm to file them at the left, as on drawings (ISO 5457:1999, 4.2), 12 mm elsewhere.
 */
const LEFT = 20;
const OTHER = 12;
const HEAD = 12;
const FOOT = 12;

/** The part of a list's or note's page that its contents may fill, mm from the lower left corner. */
export interface Room {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/**
 * A page for lists and notes on the context's document paper, with a head (its title) and a foot (its use; job,
 * revision, date, page).
 */
export function documentSheet(
  context: PrintContext,
  lying: boolean,
): { readonly width: number; readonly height: number; readonly room: Room } {
  const { documents, settings } = context;
  const [width, height] = lying ? [documents.height, documents.width] : [documents.width, documents.height];
  const left = Math.max(LEFT, settings.margin + 8);
  const other = Math.max(OTHER, settings.margin);
  const room = { left, right: width - other, bottom: other + FOOT, top: height - other - HEAD };
  return { width, height, room: { ...room, width: room.right - room.left, height: room.top - room.bottom } };
}

/** What stands over a page and under it; `bookmark` where it begins a document. */
export interface Head {
  readonly title: string;
  readonly bookmark: string | undefined;
  readonly use: Use | undefined;
}

/**
 * The head of a document's first page, and of those after it, which say that they go on where the context's words are
 * given.
 */
export function headOf(page: DocumentPage, isFirst: boolean, context?: PrintContext): Head {
  const { title, use } = page;
  const going = context ? `${title} (${context.words.continued})` : title;
  return { title: isFirst ? title : going, bookmark: isFirst ? title : undefined, use };
}

/** A leaf of lists or notes: head and foot are drawn here, the rest by `draw`. */
export function documentLeaf(
  context: PrintContext,
  lying: boolean,
  { title, bookmark, use }: Head,
  draw: (pen: Pen, room: Room, book: Book) => void,
): Leaf {
  const { width, height, room } = documentSheet(context, lying);
  return {
    width,
    height,
    factors: { x: 1, y: 1 },
    ...(bookmark === undefined ? {} : { bookmark }),
    draw: (pen, book, page) => {
      const head = (): void => pen.text(title, room.left, room.top + 8, { height: 4.5, bold: true, fit: room.width });
      // On the pages after the first it only says what goes on.
      pen.tagged(bookmark === undefined ? 'Artifact' : 'H1', head);
      pen.line([room.left, room.top + 3.5, room.right, room.top + 3.5], wide);
      pen.tagged('Artifact', () => drawFoot(pen, room, use, context, book, page));
      draw(pen, room, book);
    },
  };
}

function drawFoot(pen: Pen, room: Room, use: Use | undefined, context: PrintContext, book: Book, page: number): void {
  const { mark, words, date } = context;
  const y = room.bottom - 10;
  if (use) pen.text(`${use.size}  ·  ${use.when}`, room.left, room.bottom - 5.8, { height: 2.5, fit: room.width });
  pen.line([room.left, room.bottom - 3, room.right, room.bottom - 3], narrow);
  const revision = mark.revision ? `  ·  ${words.titleBlock.revision} ${mark.revision}` : '';
  const pages = `${words.page} ${String(page)} ${words.of} ${String(book.pages)}`;
  pen.text(pages, room.right, y, { height: 2.5, align: 'right' });
  pen.text(`${mark.job}${revision}  ·  ${isoDate(date)}`, room.left, y, { height: 2.5, fit: room.width - 45 });
}
