import { describe, expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { correctionsFrom } from '../../src/chamber/measured.js';
import { planOf } from '../../src/plan.js';
import { sampleJob } from '../samples.js';

const job = sampleJob('mere-prone');

/**
 * Height of the surface over a place in plan, deck less bottom, mm; from the mesh itself, by where an upright line
 * meets it.
 */
function thicknessOf({ mesh }: ReturnType<typeof boardOf>, x: number, y: number): number {
  const { positions: p, triangles } = mesh;
  const heights: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((n) => 3 * triangles[t + n]!) as [number, number, number];
    const cross = (i: number, j: number) => (p[i]! - x) * (p[j + 1]! - y) - (p[j]! - x) * (p[i + 1]! - y);
    const [u, v, w] = [cross(b, c), cross(c, a), cross(a, b)];
    if (!((u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0)) || u + v + w === 0) continue;
    heights.push((u * p[a + 2]! + v * p[b + 2]! + w * p[c + 2]!) / (u + v + w));
  }
  return Math.max(...heights) - Math.min(...heights);
}

describe('a board measured after shaping', () => {
  test.each([
    [1200.3, 0.2, 3],
    [1700.7, 110, -2],
    [2600.1, -90, 1.5],
  ])('has the measured thickness where it was measured (%d mm from the nose, %d mm off the centreline)', (x, y, by) => {
    const drawn = planOf(job);
    const value = thicknessOf(drawn.board, x, y) + by;
    const board = boardOf(job.board, correctionsFrom([{ kind: 'thickness', x, y, value, off: 'both' }], drawn));
    // The mesh may lie off the surface by the chord error on deck and bottom.
    expect(Math.abs(thicknessOf(board, x, y) - value)).toBeLessThan(2 * board.mesh.chordError);
  });

  test('has the measured width, and its tips stay where they are', () => {
    const drawn = planOf(job);
    const half = drawn.board.surface.outlines[1].outer(2000);
    const { surface } = boardOf(job.board, correctionsFrom([{ kind: 'width', x: 2000, value: 2 * half - 6 }], drawn));
    expect(surface.outlines[1].outer(2000)).toBeCloseTo(half - 3, 6);
    expect(surface.outlines[0].outer(2000)).toBeCloseTo(half - 3, 6);
    expect(surface.outlines[1].outer(0)).toBeCloseTo(0, 6);
  });

  test('is planned anew: a thinner board has its chambers shrunk until they stand, a chamber far away is left alone', () => {
    const shaped = planOf({
      ...job,
      shaped: [{ kind: 'thickness', x: 2000, y: 0, value: planOf(job).board.surface.thickness(2000) - 4, off: 'deck' }],
    });
    const drawn = shaped.drawn!;
    const volume = (plan: typeof shaped, id: string) => plan.chambers.find((chamber) => chamber.id === id)?.volume ?? 0;
    const near = drawn.chambers.filter(({ at }) => Math.hypot(at.deck[0] - 2000, at.deck[1]) < 300);
    expect(near.length).toBeGreaterThan(1);
    for (const { id } of near) expect(volume(shaped, id), id).toBeLessThan(volume(drawn, id));
    const far = drawn.chambers[0]!;
    expect(Math.abs(volume(shaped, far.id) / volume(drawn, far.id) - 1)).toBeLessThan(0.02);
  });

  test('has the measured wall where a wall was measured, to what the proof leaves open', () => {
    const drawn = planOf(job);
    const chamber = drawn.chambers[Math.floor(drawn.chambers.length / 2)]!;
    const plan = planOf({
      ...job,
      shaped: [{ kind: 'wall', chamber: chamber.id, wall: 'deck', value: chamber.wall.deck - 2 }],
    });
    expect(plan.board.surface.raised).toBeDefined();
    const [x, y] = chamber.at.deck;
    expect(thicknessOf(plan.board, x, y) - thicknessOf(drawn.board, x, y)).toBeCloseTo(-2, 0);
  });

  test('a wall measured at a chamber that is not there is said, not dropped', () => {
    const plan = planOf({ ...job, shaped: [{ kind: 'wall', chamber: 'R9-99', wall: 'deck', value: 10 }] });
    expect(plan.notes).toContainEqual({ kind: 'measured', where: 'R9-99', why: 'no-chamber', by: [] });
  });
});
