import type { Leaf, PrintContext } from './leaf.js';
import { isoDate } from '../paper/day.js';
import { narrow } from '../trace/line.js';
import type { Pen } from '../pen/pen.js';
import { printerStamp } from '../paper/printer.js';
import type { CheckPage } from '../../sheet/pages.js';
import { drawBar, INCH } from './testBar.js';
import { wrap } from '../pen/wrap.js';

const LETTERS = 3;
const LINE_PITCH = 1.75;
/** A sheet cut from a roll for the check, mm long: enough for a bar of a foot and a half. */
const ROLL_SHEET = 520;
const BORDER = 20;

/**
 * The sheet to print alone before all others, on the paper the templates go on: a bar each way as long as the sheet
 * allows, a square of 100 mm, bars of 4 in, and what to do. It is never compensated: from it the printer is measured.
 */
export function layCheck(page: CheckPage, context: PrintContext): readonly Leaf[] {
  const { paper } = context;
  // Upright, the short side level; a roll lies as it is printed, its width upright.
  const [width, height] = paper.kind === 'sheet' ? [paper.width, paper.height] : [ROLL_SHEET, paper.width];
  const shortIsLevel = paper.kind === 'sheet';
  return [
    {
      width,
      height,
      factors: { x: 1, y: 1 },
      bookmark: page.title,
      draw: (pen) => drawCheck(pen, width, height, shortIsLevel, page, context),
    },
  ];
}

/** Length of the bar that a side of the sheet has room for, mm: a multiple of ten, no more than half a metre. */
export const barLength = (side: number): number => Math.min(500, Math.floor((side - 2 * BORDER) / 10) * 10);

function drawCheck(
  pen: Pen,
  width: number,
  height: number,
  shortIsLevel: boolean,
  { title, use }: CheckPage,
  context: PrintContext,
): void {
  const { words, mark, measure } = context;
  const check = words.check;
  const left = BORDER + 12;
  const right = width - BORDER + 5;
  const level = barLength(width);
  const upright = barLength(height);
  const [levelName, uprightName] = shortIsLevel ? [check.across, check.along] : [check.along, check.across];

  drawBar(pen, BORDER, BORDER - 6, level, 10, false);
  const levelText = `${String(level)} mm — ${levelName} — ${check.measured}: ________ mm`;
  pen.text(levelText, BORDER + 14, BORDER, { height: 2.5, fit: level - 16 });
  drawBar(pen, BORDER - 4, BORDER - 6, upright, 10, true);
  const uprightText = `${String(upright)} mm — ${uprightName} — ${check.measured}: ________ mm`;
  pen.text(uprightText, BORDER + 1, BORDER + 10, { height: 2.5, angleInDegrees: 90, fit: upright - 20 });

  let y = height - BORDER + 2;
  pen.text(title, left, y, { height: 5, bold: true, fit: right - left });
  y -= 8;
  const stamp = printerStamp(context.printer);
  const about = [
    mark.job,
    mark.revision ?? '',
    isoDate(context.date),
    context.paper.name,
    stamp ? `${words.compensated} ${stamp}` : '',
  ];
  pen.text(about.filter((part) => part !== '').join('  ·  '), left, y, { height: 2.5, fit: right - left });
  y -= 4.5;
  if (use) {
    pen.text(`${use.size}  ·  ${use.when}`, left, y, { height: 2.5, fit: right - left });
    y -= 4.5;
  }
  // The steps stand beside the square where the sheet is wide, above it where it is tall.
  const wide = width > height;
  const textRight = wide ? right - 124 : right;
  check.steps.forEach((step, i) => {
    const lines = wrap(step, textRight - left - 7, LETTERS, false, measure);
    pen.text(`${String(i + 1)}.`, left, y - LETTERS, { height: LETTERS });
    for (const line of lines) {
      y -= LETTERS * LINE_PITCH;
      pen.text(line, left + 7, y + LETTERS * (LINE_PITCH - 1), { height: LETTERS });
    }
    y -= 1.5;
  });
  y -= 3;
  pen.text(check.inJob, left, y, { height: LETTERS, bold: true });
  const [across, along] = shortIsLevel ? [level, upright] : [upright, level];
  const example = [
    'printer:',
    `  across:    ________ ÷ ${String(across)}  =  ________`,
    `  along:     ________ ÷ ${String(along)}  =  ________`,
  ];
  for (const line of example) {
    y -= 6;
    pen.text(line.trimStart(), left + (line.startsWith(' ') ? 12 : 7), y, { height: LETTERS });
  }
  const squareX = wide ? right - 112 : left + 2;
  const squareY = wide ? Math.max(BORDER + 8, height - BORDER - 125) : Math.max(BORDER + 8, y - 112);
  drawSquare(pen, squareX, squareY, check.square, wide ? 100 : right - squareX - 110, context);
}

/** A square of 100 mm, its outer edges exact, with its diagonals and a pair of 4 in bars along two sides. */
function drawSquare(pen: Pen, x: number, y: number, note: string, room: number, context: PrintContext): void {
  const thick = 0.5;
  for (const [x1, y1, x2, y2] of [
    [0, 0, 100, thick],
    [0, 100 - thick, 100, 100],
    [0, 0, thick, 100],
    [100 - thick, 0, 100, 100],
  ] as const) {
    pen.fill([x + x1, y + y1, x + x2, y + y1, x + x2, y + y2, x + x1, y + y2]);
  }
  pen.line([x, y, x + 100, y + 100], narrow);
  pen.line([x, y + 100, x + 100, y], narrow);
  drawBar(pen, x, y - 4, 4 * INCH, INCH / 4, false);
  pen.text(context.words.barInch, x + 4 * INCH + 2, y - 2.8, { height: 2.5 });
  drawBar(pen, x + 105, y, 4 * INCH, INCH / 4, true);
  pen.text(context.words.barInch, x + 101.5, y + 4 * INCH + 2.5, { height: 2.5 });
  pen.text(context.words.barMm, x + 50, y + 94, { height: 3.5, align: 'centre', bold: true });
  const below = room < 30;
  const lines = wrap(note, below ? 100 : room, 2.5, false, context.measure);
  lines.forEach((line, i) => {
    const [tx, ty] = below || room === 100 ? [x, y - 8 - i * 4.4] : [x + 109, y + 60 - i * 4.4];
    pen.text(line, tx, ty, { height: 2.5 });
  });
}
