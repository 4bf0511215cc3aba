import { describe, expect, it } from 'vitest';
import { cleaned, type Cleaned } from '../../../src/scan/clean/clean.js';
import type { Triangles } from '../../../src/scan/triangles.js';
import { kernel, solidOfMesh } from '../../oracle/kernel.js';
import { holed, placed, randomFrom, trianglesOf } from '../bodies.js';
import { shiftedBy } from '../../../src/scan/place/rigid.js';

/* manifold-3d says whether what comes out is a solid, and of what volume. */
const { Manifold, ...rest } = await kernel();
const ball = trianglesOf(Manifold.sphere(100, 48));
const ballVolume = volume({ mesh: ball });

function volume({ mesh }: { readonly mesh: Triangles }): number {
  const solid = solidOfMesh({ Manifold, ...rest } as Awaited<ReturnType<typeof kernel>>, {
    ...mesh,
    normals: new Float64Array(0),
    patches: new Uint8Array(0),
    chordError: 0,
  });
  expect(solid.status()).toBe('NoError');
  const found = solid.volume();
  solid.delete();
  return found;
}

/** Every triangle with points of its own, as STL has them. */
function soup({ positions, triangles }: Triangles): Triangles {
  return {
    positions: Float64Array.from([...triangles].flatMap((i) => [...positions.subarray(3 * i, 3 * i + 3)])),
    triangles: triangles.map((_, i) => i),
  };
}

function together(...parts: Triangles[]): Triangles {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (const part of parts) {
    const first = positions.length / 3;
    positions.push(...part.positions);
    triangles.push(...[...part.triangles].map((i) => i + first));
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

function well(read: Triangles): Cleaned {
  const clean = cleaned(read);
  if ('kind' in clean) throw new Error(JSON.stringify(clean));
  return clean;
}

describe('what comes out is a closed solid', () => {
  it('of triangles that do not know of each other', () => {
    const clean = well(soup(ball));
    expect(clean.mesh.positions.length).toBe(ball.positions.length);
    expect(volume(clean)).toBeCloseTo(ballVolume, 3);
    expect(clean.mended).toMatchObject({ dropped: 0, turned: 0, pieces: 0, closed: 0 });
  });

  it('of triangles turned at random', () => {
    const random = randomFrom(5);
    const triangles = ball.triangles.slice();
    let turned = 0;
    for (let t = 0; t < triangles.length; t += 3)
      if (random() < 0.3) {
        [triangles[t], triangles[t + 1]] = [triangles[t + 1]!, triangles[t]!];
        turned++;
      }
    const clean = well({ ...ball, triangles });
    expect(clean.mended.turned).toBe(turned);
    expect(volume(clean)).toBeCloseTo(ballVolume, 3);
  });

  it('of triangles all turned inside out', () => {
    expect(volume(well({ ...ball, triangles: ball.triangles.slice().reverse() }))).toBeCloseTo(ballVolume, 3);
  });

  it('of triangles twice there, and some without area', () => {
    const triangles = Uint32Array.from([...ball.triangles, ...ball.triangles.subarray(0, 30), 4, 4, 5, 7, 8, 8]);
    const clean = well({ ...ball, triangles });
    expect(clean.mended.dropped).toBe(12);
    expect(volume(clean)).toBeCloseTo(ballVolume, 3);
  });

  it('of points that differ by rounding along the seams of its parts', () => {
    const halves = [0, 1].map((half): Triangles => {
      const kept: number[] = [];
      for (let t = 0; t < ball.triangles.length; t += 3) {
        const z = [0, 1, 2].reduce((sum, i) => sum + ball.positions[3 * ball.triangles[t + i]! + 2]!, 0);
        if (z > 0 === (half === 1)) kept.push(...ball.triangles.subarray(t, t + 3));
      }
      return { positions: ball.positions.map((value) => value + 0.004 * half), triangles: Uint32Array.from(kept) };
    });
    const clean = well(together(halves[0]!, halves[1]!));
    expect(clean.holes).toEqual([]);
    expect(Math.abs(volume(clean) / ballVolume - 1)).toBeLessThan(1e-3);
  });

  it('with crumbs left out', () => {
    const crumb = placed(trianglesOf(Manifold.sphere(3, 8)), shiftedBy(150, 0, 0));
    const clean = well(together(ball, crumb));
    expect(clean.mended.pieces).toBe(1);
    expect(clean.mended.largestPiece).toBeCloseTo(6 * Math.sqrt(3), 1);
    expect(volume(clean)).toBeCloseTo(ballVolume, 3);
  });
});

describe('holes', () => {
  it('are found with their width, and closed by triangles that are told apart', () => {
    const open = holed(ball, [0, 0, 100], 30);
    const clean = well(open);
    expect(clean.measured).toBe(open.triangles.length);
    expect(clean.holes).toHaveLength(1);
    // The rim runs where triangles of up to 13 mm were left: a little outside of the ball that was cut out.
    expect(clean.holes[0]!.width).toBeGreaterThan(55);
    expect(clean.holes[0]!.width).toBeLessThan(85);
    expect(volume(clean)).toBeLessThan(ballVolume);
    expect(volume(clean)).toBeGreaterThan(0.97 * ballVolume);
  });

  it('two of them are two', () => {
    expect(well(holed(holed(ball, [0, 0, 100], 30), [100, 0, 0], 20)).holes).toHaveLength(2);
  });

  it('that are cracks, long and thin, are closed without a word', () => {
    // A point of the seam moved by half a millimetre in one half only.
    const parted = soup(ball);
    const clean = well({
      ...parted,
      positions: parted.positions.map((value, i) => (i === 2 ? value + 0.5 : value)),
    });
    expect(clean.holes).toEqual([]);
    expect(clean.mended.closed).toBe(1);
  });
});

describe('what is no single board', () => {
  it('two closed bodies beside each other', () => {
    expect(cleaned(together(ball, placed(ball, shiftedBy(260, 0, 0))))).toMatchObject({ kind: 'twoBoards', apart: 60 });
  });

  it('nothing but points on one another', () => {
    expect(cleaned({ positions: new Float64Array(9), triangles: Uint32Array.of(0, 1, 2) })).toMatchObject({
      kind: 'flat',
    });
  });
});
