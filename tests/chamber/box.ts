import type { Mesh } from '../../src/board/mesh.js';
import type { Surroundings } from '../../src/chamber/carve.js';
import type { ChamberSpec } from '../../src/job/job.js';
import type { Face } from '../../src/layup/layup.js';
import { patchTreesOf } from '../../src/wall/patchTree.js';
import { sampleJob } from '../samples.js';

/**
 * A board that is a box, so that every wall is a difference of two figures: deck on top, bottom below, and the rail all
 * around. Board frame, mm: x from 0, y to both sides of 0, z from 0.
 */
export interface Box {
  readonly length: number;
  readonly half: number;
  readonly height: number;
}

/** A face on the centreline from which the right half is routed. */
export const CENTRE: Face = {
  id: 'FR1-in',
  on: 'in',
  piece: 'PR1',
  joint: 'JC',
  origin: [0, 0],
  along: [1, 0],
  inward: [0, 1],
};

export function meshOfBox({ length, half, height }: Box): Mesh {
  const positions = Array.from({ length: 8 }, (_, i) => [i & 1 ? length : 0, i & 2 ? half : -half, i & 4 ? height : 0]);
  const sides: [corners: [number, number, number, number], normal: [number, number, number], patch: number][] = [
    [[4, 5, 7, 6], [0, 0, 1], 0],
    [[0, 2, 3, 1], [0, 0, -1], 1],
    [[0, 1, 5, 4], [0, -1, 0], 2],
    [[2, 6, 7, 3], [0, 1, 0], 2],
    [[0, 4, 6, 2], [-1, 0, 0], 2],
    [[1, 3, 7, 5], [1, 0, 0], 2],
  ];
  return {
    positions: Float64Array.from(positions.flat()),
    triangles: Uint32Array.from(sides.flatMap(([[a, b, c, d]]) => [a, b, c, a, c, d])),
    normals: Float64Array.from(sides.flatMap(([, normal]) => [...normal, ...normal])),
    patches: Uint8Array.from(sides.flatMap(([, , patch]) => [patch, patch])),
    chordError: 0,
  };
}

export function proofIn(box: Box, asked: Surroundings['asked']): Surroundings {
  const mesh = meshOfBox(box);
  return { trees: patchTreesOf(mesh), chordError: mesh.chordError, asked };
}

/** The same box with a small piece of rail in it, a level triangle about a place that faces away from half height. */
export function proofBeside(
  box: Box,
  [x, y, z]: readonly [number, number, number],
  asked: Surroundings['asked'],
): Surroundings {
  const mesh = meshOfBox(box);
  const first = mesh.positions.length / 3;
  const isUp = z >= box.height / 2;
  const hanging: Mesh = {
    ...mesh,
    positions: Float64Array.from([...mesh.positions, x - 1, y - 1, z, x + 1, y - 1, z, x, y + 1, z]),
    triangles: Uint32Array.from([...mesh.triangles, first, first + (isUp ? 1 : 2), first + (isUp ? 2 : 1)]),
    normals: Float64Array.from([...mesh.normals, 0, 0, isUp ? 1 : -1]),
    patches: Uint8Array.from([...mesh.patches, 2]),
  };
  return { trees: patchTreesOf(hanging), chordError: mesh.chordError, asked };
}

/** What a sample asks of chambers, with some of it changed. */
export function specWith(changed: Partial<ChamberSpec>): ChamberSpec {
  const { chambers } = sampleJob('fell-short');
  return {
    ...chambers,
    shape: 'square',
    cutterDiameter: 10,
    smallest: { length: 40, height: 15, depth: 15 },
    ...changed,
  };
}
