import { NEAR, type Fault } from './fault.js';
import { areaOutside, flattened, liesInside, roundingOf, squaredOut } from './plane.js';
import type { Published, RoutedChamber } from './published.js';

/**
 * Blocks that do not go into their chamber: thicker than it is deep, or over its outline by more than the fit the job
 * asks for. The corners of a block may stand out to where its sides would meet: they are sanded to the cutter's radius.
 */
export function oversizeBlocks(routed: readonly RoutedChamber[], { blocks, job }: Published): Fault[] {
  const made = new Map(blocks.map((block) => [block.id, block.made]));
  return routed.flatMap(({ chamber }): Fault[] => {
    const block = made.get(chamber.id);
    const deep = chamber.depth[1] - chamber.depth[0];
    if (!block) return [{ kind: 'block', where: chamber.id, has: 0, needs: deep }];
    const [outline, room] = [squaredOut(block.outline), squaredOut(chamber.contour)];
    const { fit } = job.blocks;
    const over = liesInside(outline, room, -fit - NEAR) ? 0 : areaOutside(flattened(block.outline), room, fit + NEAR);
    return [
      ...(block.thickness > deep + NEAR
        ? [{ kind: 'block', where: chamber.id, by: 'thickness', has: block.thickness, needs: deep } as const]
        : []),
      ...(over > roundingOf(outline)
        ? [{ kind: 'block', where: chamber.id, by: 'outline', has: over, needs: 0 } as const]
        : []),
    ];
  });
}
