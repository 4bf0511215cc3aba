import type { ScanFault } from '../fault.js';
import type { Triangles } from '../triangles.js';
import { readObj } from './obj.js';
import { readPly } from './ply.js';
import { readStl } from './stl.js';

/** More triangles are not taken: they would not fit into the memory that a shop's machine has. */
export const MOST_TRIANGLES = 2_500_000;

/**
 * The triangles in a file: PLY by its first word, OBJ by its name, else STL. In the file's own unit and frame, points
 * not yet joined; every point of a triangle is there and has finite coordinates.
 *
 * @param name the file's name, by its ending
 */
export function readMesh(bytes: Uint8Array, name: string): Triangles | ScanFault {
  const read = reader(bytes, name)(bytes);
  if ('kind' in read) return read;
  const { positions, triangles } = read;
  if (triangles.length === 0) return { kind: 'noTriangles' };
  const count = triangles.length / 3;
  if (count > MOST_TRIANGLES) return { kind: 'tooMany', triangles: count, most: MOST_TRIANGLES };
  const points = positions.length / 3;
  for (let i = 0; i < triangles.length; i++) {
    if (triangles[i]! < points) continue;
    return { kind: 'noPoint', triangle: Math.floor(i / 3) + 1, point: triangles[i]! + 1, points };
  }
  return notANumber(read) ?? read;
}

function reader(bytes: Uint8Array, name: string): (bytes: Uint8Array) => Triangles | ScanFault {
  const isPly = bytes[0] === 0x70 && bytes[1] === 0x6c && bytes[2] === 0x79 && (bytes[3] === 10 || bytes[3] === 13);
  if (isPly) return readPly;
  return name.toLowerCase().endsWith('.obj') ? readObj : readStl;
}

function notANumber({ positions, triangles }: Triangles): ScanFault | undefined {
  if (positions.every(Number.isFinite)) return undefined;
  const isBad = (i: number) => [0, 1, 2].some((axis) => !Number.isFinite(positions[3 * triangles[i]! + axis]));
  let first = -1;
  let count = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    if (!isBad(t) && !isBad(t + 1) && !isBad(t + 2)) continue;
    if (first < 0) first = t / 3 + 1;
    count++;
  }
  return count > 0 ? { kind: 'noNumber', triangle: first, count } : undefined;
}
