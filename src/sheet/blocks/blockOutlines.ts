import { turned } from '../../contour/turned.js';
import type { Block } from '../../block/block.js';
import { sawnFrom } from '../../block/sawn.js';
import type { Vertex } from '../../contour/vertex.js';
import type { Plan } from '../../plan.js';
import { onBench } from '../face/faceOnBench.js';
import { sheetRows } from '../mirror.js';

/** Outlines that differ by less everywhere are one outline, mm: a tenth of a pencil line. */
const SAME = 0.05;

/** An outline that blocks are cut to, once for all it serves. */
export interface BlockOutline {
  /** The row whose face it is drawn as seen from: that of the first block it serves. */
  readonly row: string;
  /**
   * Level, as the blank lies on the saw, counter-clockwise from (0, 0) as the lowest corner of its box, mm; deck up.
   */
  readonly contour: readonly Vertex[];
  readonly noseAt: 'left' | 'right';
  readonly serves: readonly Served[];
}

export interface Served {
  readonly block: Block;
  /** Whether the outline is turned over for it: its face looks the other way. */
  readonly turnedOver: boolean;
}

/** Every different outline of a plan's blocks, row by row as the face sheets come, in each from the nose. */
export function blockOutlines(plan: Plan): BlockOutline[] {
  const outlines: (BlockOutline & { readonly level: readonly Vertex[]; readonly serves: Served[] })[] = [];
  for (const row of sheetRows(plan).flatMap(({ row: one, mirror }) => [one, ...(mirror ? [mirror] : [])])) {
    const bench = onBench(row.face, plan.board.length);
    for (const block of plan.blocks.filter((each) => each.row === row.id)) {
      // Compared as they lie in their faces, nose at `s` = 0: seen from the other side, an outline is turned over.
      const level = atOrigin(turnedBy(block.made.outline, -sawnFrom(block.made.outline).turned));
      const same = outlines.find((each) => areSame(each.level, level));
      if (same) same.serves.push({ block, turnedOver: same.noseAt !== bench.noseAt });
      else
        outlines.push({
          row: row.id,
          level,
          contour: atOrigin(bench.contour(level)),
          noseAt: bench.noseAt,
          serves: [{ block, turnedOver: false }],
        });
    }
  }
  return outlines;
}

function areSame(a: readonly Vertex[], b: readonly Vertex[]): boolean {
  return a.length === b.length && a.every((v, i) => Math.abs(v.x - b[i]!.x) <= SAME && Math.abs(v.y - b[i]!.y) <= SAME);
}

function turnedBy(contour: readonly Vertex[], angle: number): Vertex[] {
  return contour.map((v) => {
    const [x, y] = turned([v.x, v.y], angle);
    return { ...v, x, y };
  });
}

function atOrigin(contour: readonly Vertex[]): Vertex[] {
  const left = Math.min(...contour.map(({ x }) => x));
  const low = Math.min(...contour.map(({ y }) => y));
  return contour.map((v) => ({ ...v, x: v.x - left, y: v.y - low }));
}
