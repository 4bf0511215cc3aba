import { perimeter } from '../../contour/perimeter.js';
import { areaOf } from '../../contour/area.js';
import type { Chamber } from '../../chamber/chamber.js';
import { goesThrough } from '../../chamber/through.js';
import type { Job } from '../../job/job.js';
import type { Layup } from '../../layup/layup.js';
import { gluePlan, type GlueBlock, type GluePlan } from './batches.js';
import type { Block } from '../block.js';

/** What of a plan cutting and gluing need. */
export interface ToCut {
  readonly job: Pick<Job, 'blocks' | 'fill' | 'units'>;
  readonly layup: Pick<Layup, 'rows'>;
  readonly blocks: readonly Block[];
  readonly chambers: readonly Chamber[];
}

/**
 * The batches the blocks of a plan are glued in, rows as they lie from the left rail to the right, each from the nose.
 */
export function gluingOf(plan: ToCut): GluePlan {
  return gluePlan(glueBlocks(plan), plan.job.blocks.glue);
}

/** A block is glued all around and, where it does not go right through, to the floor behind it. */
function glueBlocks({ blocks, layup, chambers }: ToCut): GlueBlock[] {
  const filled = new Map(chambers.map((chamber) => [chamber.id, chamber]));
  return layup.rows.flatMap((row) =>
    blocks
      .filter((block) => block.row === row.id)
      .map(({ id, outline, thickness }): GlueBlock => {
        const s = outline.map(({ x }) => x);
        const floor = goesThrough(filled.get(id)!, row) ? 0 : areaOf(outline);
        return {
          id,
          row: row.id,
          from: Math.min(...s),
          to: Math.max(...s),
          area: perimeter(outline) * thickness + floor,
        };
      }),
  );
}
