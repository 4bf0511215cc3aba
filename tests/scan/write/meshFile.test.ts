import type { Mesh } from 'three';
import { type BufferGeometry } from 'three';
import { OBJLoader } from 'three/examples/jsm/loaders/OBJLoader.js';
import { PLYLoader } from 'three/examples/jsm/loaders/PLYLoader.js';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { expect, it } from 'vitest';
import { meshBytes, type MeshFile } from '../../../src/scan/write/meshFile.js';
import { kernel } from '../../oracle/kernel.js';
import { ellipsoidBoard } from '../bodies.js';

const board = ellipsoidBoard(await kernel(), 24);
const bufferOf = (bytes: Uint8Array) => bytes.slice().buffer as ArrayBuffer;

/* Read back by three's loaders (https://github.com/mrdoob/three.js). */
it.each([
  ['.stl', (bytes: Uint8Array) => new STLLoader().parse(bufferOf(bytes))],
  ['.ply', (bytes: Uint8Array) => new PLYLoader().parse(bufferOf(bytes))],
  [
    '.obj',
    (bytes: Uint8Array) => (new OBJLoader().parse(new TextDecoder().decode(bytes)).children[0] as Mesh).geometry,
  ],
] as const)('%s holds every triangle in its place and order', (kind, read: (bytes: Uint8Array) => BufferGeometry) => {
  const geometry = read(meshBytes(board, kind as MeshFile, 'a title\nof two lines'));
  const { array } = geometry.getAttribute('position');
  const order = geometry.getIndex()?.array ?? board.triangles.map((_, i) => i);
  expect(order.length).toBe(board.triangles.length);
  board.triangles.forEach((point, i) => {
    for (let axis = 0; axis < 3; axis++)
      expect(array[3 * order[i]! + axis]).toBe(Math.fround(board.positions[3 * point + axis]!));
  });
});
