import type { Block } from '../block/block.js';
import { printAs } from '../length/rounded.js';
import type { Plan } from '../plan.js';
import { benchOf } from './bench.js';
import type { Drawing, Shape } from './drawing.js';
import { heightFitting } from './lettering.js';
import type { MirroredRow } from './mirror.js';
import { contour, text } from './primitives.js';
import { say, WORDS } from './words.js';

/** Kept free between neighbours and around words, mm. */
const GAP = 6;
const MARGIN = 4;
const LARGEST = 10;

/** The blocks of a row at full size, side by side from the nose, as seen from the face the row is routed from; a block and its mirror image share an outline. */
export function blockSheet(plan: Plan, { row, mirror }: MirroredRow): Drawing {
  const blocks = plan.blocks.filter((block) => block.row === row.id);
  const others = mirror ? plan.blocks.filter((block) => block.row === mirror.id) : [];
  const bench = benchOf(row.face, plan.board.length);
  const ids = [row.id, ...(mirror ? [mirror.id] : [])].join(WORDS.joinWith);
  const inOrder = bench.noseAt === 'left' ? blocks : [...blocks].reverse();
  let at = 0;
  return {
    id: `blocks-${row.id}`,
    title: say(WORDS.block.title, { row: ids }),
    notes: [WORDS.block.notes, ...(mirror ? [say(WORDS.face.turn, { other: mirror.id })] : [])],
    shapes: inOrder.flatMap((block) => {
      const vertices = bench.contour(block.made.outline);
      const left = Math.min(...vertices.map((v) => v.x));
      const low = Math.min(...vertices.map((v) => v.y));
      const placed = vertices.map((v) => ({ ...v, x: v.x - left + at, y: v.y - low }));
      const other = others[blocks.indexOf(block)];
      const shapes = [contour('block', placed), ...wordsIn(block, other, at, plan)];
      at += block.made.length + GAP;
      return shapes;
    }),
  };
}

function wordsIn(block: Block, other: Block | undefined, at: number, plan: Plan): Shape[] {
  const { units } = plan.job;
  const width = block.made.length - 2 * MARGIN;
  // A block's upper and lower edge rise together with the rocker: words keep to what stays free at both ends.
  const tall = freeHeight(block.made) - 2 * MARGIN;
  const number = [block.id, ...(other ? [other.id] : [])].join('  ');
  const thick = say(WORDS.block.thick, { thickness: printAs('block', block.made.thickness, units) });
  const middle = at + block.made.length / 2;
  const y = block.made.height / 2;
  const large = heightFitting(number, { width, height: tall * 0.5 }, LARGEST);
  const small = heightFitting(thick, { width, height: tall * 0.3 }, LARGEST / 2);
  if (large && small && tall > 14)
    return [text(number, [middle, y + large * 0.5], large), text(thick, [middle, y - large * 0.5 - small], small)];
  const line = `${number}  ${thick}`;
  const fits = heightFitting(line, { width, height: tall }, LARGEST / 2);
  return fits ? [text(line, [middle, y], fits)] : large ? [text(number, [middle, y], large)] : [];
}

function freeHeight({ outline, height }: Block['made']): number {
  const ys = outline.map((v) => v.y);
  const middle = (Math.min(...ys) + Math.max(...ys)) / 2;
  const above = Math.min(...ys.filter((y) => y > middle)) - middle;
  const below = middle - Math.max(...ys.filter((y) => y <= middle));
  return Math.max(0, Math.min(height, 2 * Math.min(above, below)));
}
