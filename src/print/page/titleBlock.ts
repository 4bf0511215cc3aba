import { BLOCK_HEIGHT } from '../tile/band.js';
import type { PrintContext } from './leaf.js';
import { isoDate } from '../paper/day.js';
import { narrow, wide } from '../trace/line.js';
import type { Measure, Pen } from '../pen/pen.js';
import type { Use } from '../../sheet/pages.js';
import { wrap } from '../pen/wrap.js';

/** What a title block says besides the job's own marks. */
export interface Title {
  readonly title: string;
  /** What the sheet shows: piece, face, which way it looks. */
  readonly supplement: string;
  /** Whether its size matters, and when it is valid. */
  readonly use: Use | undefined;
  readonly identification: string;
  readonly documentType: string;
  /** Sheet of its document and how many there are: `3/14`. */
  readonly sheet: string;
  /** `100 %`, or the scale. */
  readonly scale: string;
}

/** The block's greatest width, mm (ISO 7200:2004, 6). */
export const BLOCK_WIDTH = 180;
/** Title, supplement, use, numbers, people; together the block's height, mm. */
const ROW_HEIGHTS = [4.8, 6.6, 6.6, 4.5, 4.5] as const;
/** What the one at the bench reads, mm (ISO 3098-1:2015), in up to two lines. */
const LEGIBLE = 2.5;
const LINES = 2;

/** Title block with the data fields of ISO 7200:2004, table 1 to 3, its lower right corner at (right, bottom). */
export function drawTitleBlock(
  pen: Pen,
  right: number,
  bottom: number,
  width: number,
  title: Title,
  context: PrintContext,
): void {
  const { mark, words } = context;
  const names = words.titleBlock;
  const { use } = title;
  const rows: readonly (readonly Field[])[] = [
    [
      { share: 0.8, text: title.title, bold: true, height: 3 },
      { share: 0.2, text: title.scale, bold: true, height: 3.5 },
    ],
    [{ share: 1, text: title.supplement, height: LEGIBLE, mayWrap: true }],
    [{ share: 1, text: use ? `${use.size} · ${use.when}` : '', bold: true, height: LEGIBLE, mayWrap: true }],
    [
      { share: 0.36, label: names.job, text: mark.job },
      { share: 0.2, label: names.number, text: title.identification },
      { share: 0.1, label: names.revision, text: mark.revision ?? '' },
      { share: 0.19, label: names.date, text: isoDate(context.date) },
      { share: 0.15, label: names.sheet, text: title.sheet },
    ],
    [
      { share: 0.28, label: names.owner, text: mark.owner ?? '' },
      { share: 0.24, label: names.creator, text: mark.creator ?? '' },
      { share: 0.24, label: names.approved, text: mark.approved ?? '' },
      { share: 0.24, label: names.documentType, text: title.documentType },
    ],
  ];
  const left = right - width;
  let y = bottom + BLOCK_HEIGHT;
  rows.forEach((fields, i) => {
    const height = ROW_HEIGHTS[i]!;
    y -= height;
    let x = left;
    for (const field of fields) {
      const room = field.share * width;
      drawField(pen, x, y, room, height, field, context.measure);
      if (x > left) pen.line([x, y, x, y + height], narrow);
      x += room;
    }
    if (i > 0) pen.line([left, y + height, right, y + height], narrow);
  });
  pen.rectangle({ minX: left, minY: bottom, maxX: right, maxY: bottom + BLOCK_HEIGHT }, wide);
}

interface Field {
  readonly share: number;
  readonly label?: string;
  readonly text: string;
  readonly bold?: boolean;
  readonly height?: number;
  readonly mayWrap?: boolean;
}

/** A field: its name small in the upper left corner, what it says below. */
function drawField(
  pen: Pen,
  x: number,
  y: number,
  width: number,
  height: number,
  field: Field,
  measure: Measure,
): void {
  const { label = '', height: letters = 2, bold = false } = field;
  const fit = width - 1.6;
  if (label) pen.text(label, x + 0.8, y + height - 1.1, { height: 1.1, fit });
  const lines = field.mayWrap ? wrapped(field.text, fit, letters, bold, measure) : [field.text];
  const step = height / lines.length;
  lines.forEach((line, i) => {
    const middle = label ? 1.6 : step * (lines.length - 1 - i + 0.5);
    pen.text(line, x + 0.8, y + middle, { height: letters, bold, fit });
  });
}

/** In lines as they fit; what is too much for all of them is smaller in the last. */
function wrapped(text: string, width: number, letters: number, bold: boolean, measure: Measure): string[] {
  const lines = wrap(text, width, letters, bold, measure);
  return [...lines.slice(0, LINES - 1), ...(lines.length < LINES ? [] : [lines.slice(LINES - 1).join(' ')])];
}
