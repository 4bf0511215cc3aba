import { describe, expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { PATCHES } from '../../src/board/mesh.js';
import { Past } from '../../src/kept/past.js';
import { shellOf } from '../../src/chamber/shell.js';
import { sampleJob, SAMPLES } from '../samples.js';

/** Past an edge this sharp, as a cosine, no point is moved further: there the proof alone decides. */
const SHARPEST = 0.35;

// By plane geometry: how far a point lies behind the plane of each triangle that meets where it came from.
describe.each(SAMPLES)('the surface of %s moved inward', (name) => {
  const board = boardOf(sampleJob(name).board);
  const { grid, mesh, vertexNormals } = board;
  test.each([
    ['equal walls', { deck: 10, bottom: 10, rail: 10 }],
    ['a thick rail', { deck: 6, bottom: 8, rail: 30 }],
    ['a thick deck', { deck: 25, bottom: 3, rail: 9 }],
  ])(
    'stands off every plane around a point by the wall that is asked there, and off one of them by no more: %s',
    (_, walls) => {
      const shell = shellOf(board, walls.deck, walls.bottom, walls.rail);
      const least = new Map<number, number>();
      const sharp = new Set<number>();
      for (let t = 0; t < mesh.patches.length; t++) {
        const normal = mesh.normals.subarray(3 * t, 3 * t + 3);
        // Without area it has no plane to stand off from, and its points may be moved further.
        if (normal.every((each) => each === 0)) {
          for (const i of mesh.triangles.subarray(3 * t, 3 * t + 3)) sharp.add(i);
          continue;
        }
        for (const i of mesh.triangles.subarray(3 * t, 3 * t + 3)) {
          let behind = 0;
          let cosine = 0;
          for (let axis = 0; axis < 3; axis++) {
            behind += (grid.positions[3 * i + axis]! - shell[3 * i + axis]!) * normal[axis]!;
            cosine += vertexNormals.normals[3 * i + axis]! * normal[axis]!;
          }
          if (cosine <= SHARPEST) sharp.add(i);
          const spare = behind - walls[PATCHES[mesh.patches[t]!]!];
          least.set(i, Math.min(spare, least.get(i) ?? Infinity));
        }
      }
      let points = 0;
      for (const [i, spare] of least) {
        if (sharp.has(i)) continue;
        points++;
        if (Math.abs(spare) > 1e-6) expect(spare, `point ${i}`).toBe(0);
      }
      expect(points).toBeGreaterThan(0.9 * least.size);
    },
  );

  test('is kept for the same walls, and made anew for others', () => {
    const past = new Past();
    const shell = past.of(shellOf, board, 7, 8, 9);
    expect(past.of(shellOf, board, 7, 8, 9)).toBe(shell);
    expect(past.of(shellOf, board, 7, 8, 10)).not.toBe(shell);
    expect(past.of(shellOf, board, 8, 7, 9)).not.toBe(shell);
  });
});
