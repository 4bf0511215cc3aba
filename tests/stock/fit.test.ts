import type { BoardSpec } from '../../src/job/spec/board.js';
import { BufferAttribute, BufferGeometry, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { describe, expect, it } from 'vitest';
import { boardOf, type Board } from '../../src/board/board.js';
import type { GlueUpSpec } from '../../src/job/job.js';
import { layupOf } from '../../src/layup/layupOf.js';
import { fittingOf } from '../../src/stock/fit.js';
import { placed, type Placement } from '../../src/stock/placement.js';
import { sawnStrips } from '../../src/stock/sawn.js';
import { boardBy, everywhere, outlineBy } from '../board/bodies.js';
import { sampleJob, SAMPLES } from '../samples.js';
import { largerBlank } from './blanks.js';

const foam = { name: 'foam', density: 20, source: 'invented' };
/** One strip a side and nothing between: stock that saws and stringers have not moved. */
const WHOLE: GlueUpSpec = {
  centreJoint: 'dotted',
  right: [{ kind: 'strip', material: foam, routing: 'open', joint: 'dotted' }],
};
/** What the meshes of board and blank, and points left out between them, may hide, mm. */
const HIDDEN = 0.05 + 0.2 + 0.2;

function fitted(board: Board, blank: Board, glueUp = WHOLE, kerf = 0) {
  const layup = layupOf(glueUp, board.length);
  const strips = sawnStrips(layup, kerf);
  const fitting = fittingOf(board, layup, blank, strips, 0, [1]);
  const points = Uint32Array.from(fitting.skin.side.keys());
  return { fitting, points, strips, fit: fitting.best(points) };
}

/** An ellipsoid of these half axes, its lowest point at height 0. */
function ellipsoid(a: number, b: number, c: number): BoardSpec {
  const thick = (share: number) => 2 * c * Math.sqrt(Math.max(0, 1 - (2 * share - 1) ** 2));
  const circle = Array.from({ length: 41 }, (_, i) => {
    const turn = (Math.PI * i) / 40;
    return { y: b * Math.sin(turn), z: c - c * Math.cos(turn), edge: false };
  });
  circle[40]!.y = 0;
  const shares = Array.from({ length: 81 }, (_, i) => (1 - Math.cos((Math.PI * i) / 80)) / 2);
  return boardBy(
    2 * a,
    outlineBy(
      2 * a,
      (share) => b * Math.sqrt(Math.max(0, 1 - (2 * share - 1) ** 2)),
      { kind: 'round' },
      { kind: 'round' },
      80,
    ),
    shares.map((share) => ({ x: 2 * a * share, bottom: c - thick(share) / 2, thickness: thick(share) })),
    everywhere(circle, 2 * a),
  );
}

describe('a board in a moulded blank', () => {
  // Both are symmetric about their middles and the least depth of a convex body in another is concave in its place, so
  // the best place is middle in middle. There the least depth is the smallest difference of the support functions
  // (R. Schneider, "Convex Bodies: The Brunn–Minkowski Theory", ch. 1.7), an ellipsoid's being √Σ(axis · direction)².
  it.each([
    [24, 14, 8],
    [12, 12, 12],
    [30, 6, 15],
  ])('shaped as an ellipsoid lies in the middle of one longer by %i, wider by %i and thicker by %i', (da, db, dc) => {
    const [a, b, c] = [900, 260, 70];
    const support = (axes: number[], u: number[]) => Math.hypot(...axes.map((axis, i) => axis * u[i]!));
    let expected = Infinity;
    for (let i = 0; i <= 200; i++) {
      for (let j = 0; j <= 200; j++) {
        const [theta, phi] = [(Math.PI * i) / 400, (Math.PI * j) / 400];
        const u = [Math.sin(theta) * Math.cos(phi), Math.sin(theta) * Math.sin(phi), Math.cos(theta)];
        expected = Math.min(expected, support([a + da, b + db, c + dc], u) - support([a, b, c], u));
      }
    }
    const { fit, points } = fitted(boardOf(ellipsoid(a, b, c)), boardOf(ellipsoid(a + da, b + db, c + dc)));
    const least = Math.min(...Array.from(points, (i) => fit.over[i]!));
    expect(Math.abs(least - expected)).toBeLessThan(HIDDEN);
    expect(fit.bound!.most).toBeGreaterThanOrEqual(least);
    expect(fit.bound!.most - expected).toBeLessThan(HIDDEN + 0.1);
  });

  // Closed form: a board of even thickness between two parabolas of one rocker, in a blank of the same rocker that
  // is 20 mm thicker and stands 30 mm higher at its nose. A flat board must be tilted by as much. Where it has rocker,
  // a parabola turned a little is the same one further along: d mm along are worth a tilt of 8 · rise · d / length.
  it.each([0, 40])('of even thickness and a rocker of %i mm is tilted as much as its blank', (rise) => {
    const [length, half, thick] = [3000, 250, 80];
    const slab = (longer: number, wider: number, thicker: number, tilt: number): BoardSpec => {
      const whole = length + longer;
      const heights = Array.from({ length: 61 }, (_, i) => (whole * i) / 60).map((x) => {
        const from = (2 * (x - whole / 2)) / length;
        return { x, bottom: rise * from * from - (tilt * (x - whole / 2)) / length, thickness: thick + thicker };
      });
      const lowest = Math.min(...heights.map(({ bottom }) => bottom));
      return {
        length: whole,
        right: {
          nose: { kind: 'square', half: half + wider },
          tail: { kind: 'square', half: half + wider },
          points: [
            { x: 100, half: half + wider },
            { x: whole - 100, half: half + wider },
          ],
        },
        profile: heights.map((each) => ({ ...each, bottom: each.bottom - lowest })),
        sections: [
          { x: whole / 2, kind: 'numbers', apex: 0.5, above: 0.97, below: 0.97, crown: 0, bottom: { kind: 'flat' } },
        ],
      };
    };
    const { fit, points } = fitted(boardOf(slab(0, 0, 0, 0)), boardOf(slab(400, 60, 20, 30)));
    const along = fit.placement.along - 200;
    expect(Math.abs(fit.placement.noseUp + (8 * rise * along) / length - 30)).toBeLessThan(0.5);
    const least = Math.min(...Array.from(points, (i) => fit.over[i]!));
    expect(Math.abs(least - 10)).toBeLessThan(HIDDEN);
  });

  // Reference: three-mesh-bvh for every allowance; for the optimum, 400 places drawn at random within the reach of the
  // bound and a walk around it with steps of 0.5 mm: none leaves more than the bound, none noticeably more than found.
  it.each(SAMPLES)('is placed as well as any other place tried, and no place beats the bound: %s', (name) => {
    const { board: spec, glueUp } = sampleJob(name);
    const board = boardOf(spec);
    let state = 7 + name.length;
    const random = () => (state = (state * 16_807) % 2_147_483_647) / 2_147_483_647;
    for (let trial = 0; trial < 3; trial++) {
      const by = {
        longer: 20 + 80 * random(),
        thicker: 5 + 40 * random(),
        wider: 12 * random() - 4,
        rocker: 0.7 + 0.5 * random(),
      };
      const blank = boardOf(largerBlank(spec, by), [], 0.2);
      const { fit, fitting, points, strips } = fitted(board, blank, glueUp, 3);
      const leastAt = (placement: Placement) => {
        const { over } = fitting.measured(placement, points);
        return Math.min(...Array.from(points, (i) => over[i]!));
      };
      const least = Math.min(...Array.from(points, (i) => fit.over[i]!));
      const says = `seed ${7 + name.length}, trial ${trial}, ${JSON.stringify(by)}`;
      expect(least, says).toBeLessThanOrEqual(fit.bound!.most);
      expect(fit.bound!.most - least, says).toBeLessThan(1.2);
      for (let i = 0; i < 60; i++) {
        const reach = i < 30 ? 10 : 0.5;
        const shift = () => reach * (2 * random() - 1);
        const { along, up, noseUp } = fit.placement;
        const [nose, tail] = [shift(), shift()];
        const tried = leastAt({ along: along + shift(), up: up + (nose + tail) / 2, noseUp: noseUp + nose - tail });
        expect(tried, says).toBeLessThanOrEqual(fit.bound!.most);
        expect(tried, says).toBeLessThan(least + 0.1);
      }

      const geometry = new BufferGeometry();
      geometry.setAttribute('position', new BufferAttribute(Float32Array.from(blank.mesh.positions), 3));
      geometry.setIndex(new BufferAttribute(blank.mesh.triangles.slice(), 1));
      const tree = new MeshBVH(geometry);
      const lies = placed(fit.placement, board.length);
      for (const i of points.filter((_, k) => k % 17 === 0)) {
        const [x, y, z] = fitting.skin.at.subarray(3 * i, 3 * i + 3);
        const { moved } = strips[fitting.skin.strip[i]!]!;
        const [px, pz] = lies(x!, z!);
        const { distance } = tree.closestPointToPoint(new Vector3(px, y! - moved.at - moved.slope * x!, pz))!;
        expect(Math.abs(Math.abs(fit.over[i]!) - distance), says).toBeLessThan(0.002);
      }
    }
  });
});
