import type { Triangles } from '../triangles.js';
import { medianOf, solved } from './fitted.js';
import { nearestOn } from './nearest.js';
import { after, moved, STILL, turnAbout, type Rigid } from './rigid.js';

/** Points by which meshes are laid over each other, and corrections at most. */
const POINTS = 4000;
const ROUNDS = 60;
/** Nothing is paired with what lies further off, mm, nor with what lies so many medians off. */
const FAR = 60;
const MEDIANS = 4;
/** A correction of less, mm and radians times a metre, is none. */
const NOTHING = 1e-4;

/**
 * The small turn and shift that lay points over a mesh: each is paired with the nearest place of the mesh, the pairs
 * are brought together by least squares along the directions in which the mesh looks there, and so on. What lies far
 * off, where the two differ, counts for nothing.
 *
 * Sources: P. J. Besl and N. D. McKay, "A method for registration of 3-D shapes", IEEE Trans. Pattern Analysis and
 * Machine Intelligence 14 (1992), 239–256; by planes as Y. Chen and G. Medioni, "Object modelling by registration of
 * multiple range images", Image and Vision Computing 10 (1992), 145–155.
 *
 * @param points x, y, z one after the other, mm; already laid nearly right
 */
export function laidOver(points: Float64Array, mesh: Triangles): Rigid {
  const nearest = nearestOn(mesh, FAR);
  const step = 3 * Math.max(1, Math.floor(points.length / 3 / POINTS));
  let place = STILL;
  for (let round = 0; round < ROUNDS; round++) {
    const pairs: { p: readonly [number, number, number]; n: readonly [number, number, number]; off: number }[] = [];
    for (let k = 0; k < points.length; k += step) {
      const p = moved(place, [points[k]!, points[k + 1]!, points[k + 2]!]);
      const found = nearest(...p);
      if (!found) continue;
      const n = [found.normal[0]!, found.normal[1]!, found.normal[2]!] as const;
      const off = n.reduce((sum, each, axis) => sum + each * (found.point[axis]! - p[axis]!), 0);
      pairs.push({ p, n, off });
    }
    const usual = medianOf(pairs.map(({ off }) => Math.abs(off)));
    const rows = Array.from({ length: 6 }, () => new Array<number>(7).fill(0));
    for (const { p, n, off } of pairs) {
      if (Math.abs(off) > MEDIANS * usual + NOTHING) continue;
      const j = [p[1] * n[2] - p[2] * n[1], p[2] * n[0] - p[0] * n[2], p[0] * n[1] - p[1] * n[0], ...n];
      for (let r = 0; r < 6; r++) {
        for (let c = 0; c < 6; c++) rows[r]![c]! += j[r]! * j[c]!;
        rows[r]![6]! += j[r]! * off;
      }
    }
    const [rx, ry, rz, tx, ty, tz] = solved(rows) as [number, number, number, number, number, number];
    const { turn } = after(turnAbout(2, rz), after(turnAbout(1, ry), turnAbout(0, rx)));
    place = after({ turn, shift: [tx, ty, tz] }, place);
    if (1000 * Math.hypot(rx, ry, rz) + Math.hypot(tx, ty, tz) < NOTHING) break;
  }
  return place;
}
