import QRCode from 'qrcode';
import { sawnSizeOf } from '../../block/blankSize.js';
import type { Block } from '../../block/block.js';
import { sayProud } from '../../block/sayProud.js';
import { printAs } from '../../length/rounded.js';
import { unbroken } from '../../length/wordsOf.js';
import type { Row } from '../../layup/layup.js';
import type { Plan } from '../../plan.js';
import { onBench } from '../face/faceOnBench.js';
import type { Drawing, Shape } from '../drawing.js';
import { chambersOf } from '../mirror.js';
import type { Label, LabelsPage, LabelStock } from '../pages.js';
import { polygon } from '../primitives.js';
import { say, WORDS } from '../../words/say.js';

const NO_BREAK = '\u00a0';

/**
 * A board's name is told in the code up to this many characters: a longer one would make its modules too small to read.
 */
const LONGEST_NAME = 32;

/**
 * A label for each block: number, the blank it is sawn from, where it goes, its row with the place marked, and a code
 * that a phone reads.
 *
 * @param codeOf what the code says of a block; where it is not given, board, number and size in plain words, which a
 *   phone shows as they are
 */
export function labels(plan: Plan, stock: LabelStock, codeOf?: (block: Block) => string): LabelsPage {
  const rows = new Map(plan.layup.rows.map((row) => [row.id, row]));
  return {
    kind: 'labels',
    title: WORDS.labels.title,
    stock,
    labels: plan.blocks.map((block): Label => {
      const row = rows.get(block.row)!;
      const proud = sayProud(block.proud, plan.job.units);
      const sizes = sizesInWords(block, plan);
      // One unit for the two sides, so that they stand on one line.
      const values = { ...sizes, length: sizes.length.replace(/.(mm|in)$/, ''), piece: row.piece, row: row.id };
      return {
        number: block.id,
        lines: [
          say(WORDS.labels.sawn, values),
          say(WORDS.labels.goesInto, values),
          ...(proud === '' ? [] : [say(WORDS.labels.proud, { proud: unbroken(proud) })]),
        ],
        drawing: rowWithPlace(plan, row, block.id),
        ends: endsOf(plan, row),
        code: modulesOf(codeOf?.(block) ?? plainWords(plan, block)),
      };
    }),
  };
}

function sizesInWords(block: Block, { job }: Plan): Record<'length' | 'height' | 'thickness', string> {
  const { length, height, thickness } = sawnSizeOf(block, job.units);
  const print = (mm: number) => unbroken(printAs('block', mm, job.units));
  return { length: print(length), height: print(height), thickness: print(thickness) };
}

function plainWords(plan: Plan, block: Block): string {
  const letters = Array.from(plan.job.name);
  const job = letters.length > LONGEST_NAME ? `${letters.slice(0, LONGEST_NAME - 1).join('')}…` : plan.job.name;
  return say(WORDS.labels.code, { job, id: block.id, ...sizesInWords(block, plan) }).replaceAll(NO_BREAK, ' ');
}

/** The row's boxes, mm on a drawing that labels show at about its size. */
const STRIP = { width: 26, height: 4.4, web: 0.35 } as const;

/**
 * The row as it lies on the bench, one box a chamber, the block's own higher and filled. A picture to count by, not to
 * scale: chambers of a row drawn to scale are too low to be told apart.
 */
function rowWithPlace(plan: Plan, row: Row, id: string): Drawing {
  const chambers = chambersOf(plan, row);
  const inOrder = onBench(row.face, plan.board.length).noseAt === 'left' ? chambers : [...chambers].reverse();
  const pitch = STRIP.width / inOrder.length;
  return {
    id: `label-${id}`,
    title: id,
    notes: [],
    shapes: inOrder.map((chamber, i): Shape => {
      const [from, to] = [i * pitch, (i + 1) * pitch - STRIP.web];
      const isIts = chamber.id === id;
      const [low, high] = isIts ? [0, STRIP.height] : [STRIP.height / 4, (STRIP.height * 3) / 4];
      const corners = [
        [from, low],
        [to, low],
        [to, high],
        [from, high],
      ] as const;
      return polygon('label', corners, isIts ? 'dark' : undefined);
    }),
  };
}

/**
 * What stands at the left and the right of the row: a label is stuck onto its block upright, as the block lies before
 * the one who looks at the face.
 */
function endsOf(plan: Plan, row: Row): readonly [string, string] {
  const deck = `↑ ${WORDS.deck}`;
  const isLeft = onBench(row.face, plan.board.length).noseAt === 'left';
  return isLeft ? [`← ${WORDS.nose}`, deck] : [deck, `${WORDS.nose} →`];
}

/** A square code (ISO/IEC 18004) as rows of dark and light modules. */
function modulesOf(words: string): boolean[][] {
  const { size, data } = QRCode.create(words, { errorCorrectionLevel: 'M' }).modules;
  return Array.from({ length: size }, (_, row) =>
    Array.from({ length: size }, (__, column) => data[row * size + column] === 1),
  );
}
