import type { Manifold as Solid, ManifoldToplevel } from 'manifold-3d';
import type { KeepOutSpec } from '../../src/job/job.js';
import type { Plan } from '../../src/plan.js';
import { solidOfChamber, solidOfMesh } from './kernel.js';

/** Higher and lower than any board, mm. */
const TALL = 1000;

/** A keep-out's outline as a builder would draw it: a disc inscribed with many sides. */
export function drawn(keepOut: KeepOutSpec): readonly (readonly [number, number])[] {
  if (keepOut.kind === 'polygon') return keepOut.points;
  const { x, y } = keepOut;
  if (keepOut.kind === 'disc')
    return Array.from({ length: 180 }, (_, i) => {
      const angle = (i * Math.PI) / 90;
      return [x + keepOut.radius * Math.cos(angle), y + keepOut.radius * Math.sin(angle)] as const;
    });
  const [l, w] = [keepOut.length / 2, keepOut.width / 2];
  return [
    [x - l, y - w],
    [x + l, y - w],
    [x + l, y + w],
    [x - l, y + w],
  ];
}

/** What chambers reach into a keep-out by: the volume of both, mm³, and how thick that is straight up at most, mm. */
export interface Intrusion {
  readonly chamber: string;
  readonly volume: number;
  readonly height: number;
}

/**
 * Every chamber against one keep-out as a solid of the kernel: its outline right through the board, or, where it has a
 * depth, what of that stands outside the board moved down (or up) by as much.
 */
export function intrusions(k: ManifoldToplevel, plan: Plan, keepOut: KeepOutSpec): Intrusion[] {
  const section = new k.CrossSection([drawn(keepOut).map(([x, y]): [number, number] => [x, y])], 'NonZero');
  const prism = section.extrude(2 * TALL).translate([0, 0, -TALL]);
  const { depth } = keepOut;
  let region: Solid = prism;
  if (depth) {
    const board = solidOfMesh(k, plan.board.mesh);
    const moved = board.translate([0, 0, depth.from === 'deck' ? -depth.deep : depth.deep]);
    region = k.Manifold.difference(prism, moved);
    [board, moved, prism].forEach((each) => each.delete());
  }
  const { min, max } = region.boundingBox();
  const found = plan.chambers.flatMap((chamber): Intrusion[] => {
    const { face } = plan.layup.rows.find(({ id }) => id === chamber.row)!;
    const solid = solidOfChamber(k, face, chamber.profile, chamber.depth);
    const box = solid.boundingBox();
    const isNear = [0, 1].every((axis) => box.min[axis]! < max[axis]! && box.max[axis]! > min[axis]!);
    const shared = isNear ? k.Manifold.intersection(solid, region) : undefined;
    solid.delete();
    if (!shared) return [];
    const { min: low, max: high } = shared.boundingBox();
    const volume = shared.volume();
    shared.delete();
    return volume > 0 ? [{ chamber: chamber.id, volume, height: high[2]! - low[2]! }] : [];
  });
  [section, region].forEach((each) => each.delete());
  return found;
}
