import QRCode from 'qrcode';
import type { Block } from '../block/block.js';
import { printAs } from '../length/rounded.js';
import type { Row } from '../layup/layup.js';
import type { Plan } from '../plan.js';
import { benchOf } from './bench.js';
import type { Drawing } from './drawing.js';
import { chambersOf } from './mirror.js';
import type { Label, LabelsPage, LabelStock } from './pages.js';
import { contour, text } from './primitives.js';
import { say, WORDS } from './words.js';

/**
 * A label for each block: number, size, where it goes, its row with the place marked, and a code that a phone reads.
 *
 * @param codeOf what the code says of a block; its number where nothing else is given
 */
export function labels(plan: Plan, stock: LabelStock, codeOf: (block: Block) => string = ({ id }) => id): LabelsPage {
  const rows = new Map(plan.layup.rows.map((row) => [row.id, row]));
  return {
    kind: 'labels',
    title: WORDS.labels.title,
    stock,
    labels: plan.blocks.map((block): Label => {
      const row = rows.get(block.row)!;
      const size = (mm: number) => printAs('block', mm, plan.job.units);
      return {
        number: block.id,
        lines: [
          say(WORDS.labels.size, {
            length: size(block.made.length),
            height: size(block.made.height),
            thickness: size(block.made.thickness),
          }),
          say(WORDS.labels.piece, { piece: row.piece }),
        ],
        drawing: rowWithPlace(plan, row, block.id),
        code: modulesOf(codeOf(block)),
      };
    }),
  };
}

/** The row as it lies on the bench, the block's place hatched dark, nose and deck named. */
function rowWithPlace(plan: Plan, row: Row, id: string): Drawing {
  const bench = benchOf(row.face, plan.board.length);
  const chambers = chambersOf(plan, row);
  const xs = chambers.flatMap(({ contour: vertices }) => vertices.map((v) => bench.x(v.x)));
  const ys = chambers.flatMap(({ contour: vertices }) => vertices.map((v) => v.y));
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const letters = (right - left) / 24;
  const [noseX, align] = bench.noseAt === 'left' ? ([left, 'left'] as const) : ([right, 'right'] as const);
  return {
    id: `label-${id}`,
    title: id,
    notes: [],
    shapes: [
      ...chambers.map((chamber) =>
        contour('chamber', bench.contour(chamber.contour), chamber.id === id ? 'dark' : undefined),
      ),
      text(
        bench.noseAt === 'left' ? `← ${WORDS.nose}` : `${WORDS.nose} →`,
        [noseX, Math.min(...ys) - letters],
        letters,
        align,
      ),
      text(`↑ ${WORDS.deck}`, [(left + right) / 2, Math.min(...ys) - letters], letters),
    ],
  };
}

/** A square code (ISO/IEC 18004) as rows of dark and light modules. */
function modulesOf(words: string): boolean[][] {
  const { size, data } = QRCode.create(words, { errorCorrectionLevel: 'M' }).modules;
  return Array.from({ length: size }, (_, row) =>
    Array.from({ length: size }, (__, column) => data[row * size + column] === 1),
  );
}
