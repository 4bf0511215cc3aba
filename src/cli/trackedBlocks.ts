import { pathPoints } from '../contour/chords.js';
import { sawnSizeOf } from '../block/blankSize.js';
import { gluingOf } from '../block/glue/gluing.js';
import type { Vertex } from '../contour/vertex.js';
import type { Plan } from '../plan.js';
import type { Outline, TrackedBlock } from '../shop/log/trackedBlock.js';

/** Chords leave the arc of a block's corner by no more than this, mm: a tenth of what a block is made to. */
const CHORD_TOLERANCE = 0.05;

/** The plan's blocks as the shop follows them, in the gluing batches and with the sizes of the papers. */
export function trackedBlocks(plan: Plan): TrackedBlock[] {
  const sides = new Map(plan.layup.rows.map((row) => [row.id, row.side]));
  const batches = new Map(
    gluingOf(plan).batches.flatMap(({ number, blocks }) => blocks.map((id) => [id, String(number)] as const)),
  );
  const { name, density } = plan.job.fill;
  return plan.blocks.map((block, i): TrackedBlock => {
    const { id, row, made, proud } = block;
    const batch = batches.get(id);
    return {
      id,
      row,
      place: plan.chambers[i]!.place,
      side: sides.get(row)!,
      sizes: sawnSizeOf(block, plan.job.units),
      outline: plan.chambers[i]!.profile,
      made: { outline: chordsOf(made.outline), thickness: made.thickness, foam: { name, density } },
      ...(proud && { proud }),
      ...(batch !== undefined && { batch }),
    };
  });
}

function chordsOf(contour: readonly Vertex[]): Outline {
  const points = pathPoints(contour, true, CHORD_TOLERANCE);
  return Array.from({ length: points.length / 2 - 1 }, (_, i) => [points[2 * i]!, points[2 * i + 1]!] as const);
}
