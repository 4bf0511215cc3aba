import type { Point } from '../contour/point.js';
import type { Mesh } from '../board/mesh.js';
import { toFace } from '../layup/frame.js';
import type { Face } from '../layup/layup.js';
import { spanAt } from '../contour/span.js';
import { sliceMesh } from './slice.js';

/**
 * The finished surface at a face: closed lines in the face frame, `[s, z]`, mm. One, unless the joint runs through a
 * swallow's notch.
 */
export interface FaceLine {
  readonly loops: readonly (readonly Point[])[];
  /** Where the face begins and ends along `s`. */
  readonly from: number;
  readonly to: number;
  /** Heights of bottom and deck at `s`; undefined where there is no board. */
  heightsAt(s: number): { readonly bottom: number; readonly deck: number } | undefined;
}

export function faceLineAt(
  { mesh }: { readonly mesh: Pick<Mesh, 'positions' | 'triangles' | 'patches'> },
  face: Face,
): FaceLine {
  const { origin, along, inward } = face;
  const plane = { a: inward[0], b: inward[1], d: inward[0] * origin[0] + inward[1] * origin[1] };
  const loops = sliceMesh(mesh, plane, along).map(({ points }) =>
    points.map(([x, y, z]): Point => [toFace(face, x, y)[0], z]),
  );
  const s = loops.flat().map(([each]) => each);
  return {
    loops,
    from: s.reduce((least, each) => Math.min(least, each), Infinity),
    to: s.reduce((most, each) => Math.max(most, each), -Infinity),
    heightsAt(at) {
      for (const loop of loops) {
        const span = spanAt(loop, at);
        if (span) return { bottom: span[0], deck: span[1] };
      }
      return undefined;
    },
  };
}
