import type { Chamber, Note } from '../chamber/chamber.js';
import { goesThrough } from '../chamber/through.js';
import type { RoutingSpec } from '../job/spec/routing.js';
import { depthOf } from '../layup/frame.js';
import type { Row } from '../layup/layup.js';
import type { ChamberRouting, RowRouting } from './rout.js';

/**
 * How far two halves of a chamber overlap in the middle, so that nothing is left between them, mm. Common practice, no
 * source.
 */
const OVERLAP = 1;
/** Depths that differ by less, mm, are the same but for rounding. */
const ROUNDING = 1e-6;

export interface Router extends Pick<RoutingSpec, 'cutterLength' | 'guideStock' | 'passDepth'> {
  /** How far two halves of a chamber may be off each other, mm. */
  readonly tolerance: number;
}

/** How a row is routed, and what stands against it. */
export function setUpOf(row: Row, chambers: readonly Chamber[], router: Router): { setUp: RowRouting; notes: Note[] } {
  const reach = router.cutterLength - router.guideStock;
  const depth = Math.max(0, ...chambers.map((chamber) => chamber.depth[1]));
  const deep = chambers.filter((chamber) => chamber.depth[1] > reach + ROUNDING);
  const from = [row.face.id];
  const note = (why: Note['why'], more: Partial<Note>): Note => ({
    kind: 'rout',
    where: row.id,
    row: row.id,
    why,
    by: [],
    ...more,
  });
  const all = (cutOf: (chamber: Chamber) => number): ChamberRouting[] =>
    chambers.map((chamber) => {
      const cut = cutOf(chamber);
      const isHalf = cut < chamber.depth[1] && row.through !== undefined;
      return { chamber: chamber.id, from: isHalf ? [...from, row.through.id] : from, cut, stops: stopsOf(cut, router) };
    });

  const half = (total: number) => total / 2 + OVERLAP / 2;
  const flare = flareOf(row);
  const off = half(depth) * Math.abs(flare);
  const meet =
    deep.length > 0 &&
    row.through !== undefined &&
    deep.every((chamber) => goesThrough(chamber, row)) &&
    half(depth) <= reach + ROUNDING;
  if (meet && off <= router.tolerance) {
    // Every chamber that goes through is routed in halves, so that one stop serves the row; a shallow one from its face
    // only.
    const cutOf = (chamber: Chamber) => (goesThrough(chamber, row) ? half(chamber.depth[1]) : chamber.depth[1]);
    const cut = Math.max(...chambers.map(cutOf));
    return {
      setUp: {
        row: row.id,
        from: [...from, row.through.id],
        depth,
        cut,
        stops: stopsOf(cut, router),
        reaches: true,
        chambers: all(cutOf),
      },
      notes: [note('halves', { by: [row.face.id, row.through.id] })],
    };
  }
  const setUp = {
    row: row.id,
    from,
    depth,
    cut: depth,
    stops: stopsOf(depth, router),
    chambers: all(({ depth: [, to] }) => to),
  };
  if (deep.length === 0) return { setUp: { ...setUp, reaches: true }, notes: [] };
  const needs = depth + router.guideStock;
  const by = deep.map(({ id }) => id);
  return {
    setUp: { ...setUp, reaches: false, needs },
    notes: [
      ...(meet ? [note('flare', { by: [row.face.id, row.through.id], has: off, needs: router.tolerance })] : []),
      note('reach', { by, has: router.cutterLength, needs }),
    ],
  };
}

/** The cutter's stand-out for each pass down to a depth: even passes, none deeper than allowed. */
export function stopsOf(depth: number, { passDepth, guideStock }: Pick<Router, 'passDepth' | 'guideStock'>): number[] {
  const passes = Math.max(1, Math.ceil(depth / passDepth - ROUNDING));
  return Array.from({ length: passes }, (_, i) => guideStock + (depth * (i + 1)) / passes);
}

/** Sine of the angle between the row's two faces, near enough: how much they part along each other. */
function flareOf(row: Row): number {
  return farFace(row)?.slope ?? 0;
}

/**
 * How deep the far face of a row that is routed right through lies behind its own: `t = at + slope · s`, mm; undefined
 * for any other row.
 */
export function farFace(row: Row): { at: number; slope: number } | undefined {
  const last = row.members[row.members.length - 1]!;
  const joint = row.through && (row.face.inward[1] > 0 ? last.right : last.left);
  return joint && depthOf(row.face, joint);
}
