import { BoxGeometry, Mesh, TorusKnotGeometry, type BufferGeometry } from 'three';
import { OBJExporter } from 'three/examples/jsm/exporters/OBJExporter.js';
import { PLYExporter } from 'three/examples/jsm/exporters/PLYExporter.js';
import { STLExporter } from 'three/examples/jsm/exporters/STLExporter.js';
import { OBJLoader } from 'three/examples/jsm/loaders/OBJLoader.js';
import { PLYLoader } from 'three/examples/jsm/loaders/PLYLoader.js';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { describe, expect, it } from 'vitest';
import { readMesh } from '../../../src/scan/read/readMesh.js';

/*
 * Files are written by three's exporters and read by its loaders (https://github.com/mrdoob/three.js): another program
 * than ours on both sides.
 */
const knot = new Mesh(new TorusKnotGeometry(700, 130, 60, 12));
const ascii = (text: string) => new TextEncoder().encode(text);
const whole = (view: DataView | ArrayBuffer | null): Uint8Array =>
  view instanceof ArrayBuffer ? new Uint8Array(view) : new Uint8Array(view!.buffer, view!.byteOffset, view!.byteLength);
const bufferOf = (bytes: Uint8Array) => bytes.slice().buffer as ArrayBuffer;

/** The corners of all triangles one after the other, as single-precision numbers. */
function cornersOf(geometry: BufferGeometry): number[] {
  const { array } = geometry.getAttribute('position');
  const order = geometry.getIndex()?.array ?? Uint32Array.from({ length: array.length / 3 }, (_, i) => i);
  return Array.from(order).flatMap((i) => [0, 1, 2].map((axis) => Math.fround(array[3 * i + axis]!)));
}

function ours(bytes: Uint8Array, name: string): number[] {
  const read = readMesh(bytes, name);
  if ('kind' in read) throw new Error(JSON.stringify(read));
  return Array.from(read.triangles).flatMap((i) => [0, 1, 2].map((axis) => Math.fround(read.positions[3 * i + axis]!)));
}

const ply = (options: { binary: boolean; littleEndian?: boolean }) => {
  const written = new PLYExporter().parse(knot, undefined as never, options) as unknown as string | ArrayBuffer;
  return typeof written === 'string' ? ascii(written) : whole(written);
};
const theirPly = (bytes: Uint8Array) => new PLYLoader().parse(bufferOf(bytes));
const theirStl = (bytes: Uint8Array) => new STLLoader().parse(bufferOf(bytes));

describe('files of another program are read as its own loaders read them', () => {
  it.each([
    ['binary STL', 'a.stl', whole(new STLExporter().parse(knot, { binary: true })), theirStl],
    ['text STL', 'a.stl', ascii(new STLExporter().parse(knot)), theirStl],
    ['text PLY', 'a.ply', ply({ binary: false }), theirPly],
    ['little-endian PLY', 'a.ply', ply({ binary: true, littleEndian: true }), theirPly],
    ['big-endian PLY', 'a.ply', ply({ binary: true, littleEndian: false }), theirPly],
  ])('%s', (_, name, bytes, theirs) => {
    const corners = ours(bytes, name);
    expect(corners).toHaveLength(60 * 12 * 2 * 9);
    expect(corners).toEqual(cornersOf(theirs(bytes)));
  });

  it('OBJ', () => {
    const text = new OBJExporter().parse(knot);
    const theirs = new OBJLoader().parse(text).children[0] as Mesh;
    expect(ours(ascii(text), 'a.OBJ')).toEqual(cornersOf(theirs.geometry));
  });

  it('a binary STL whose title begins with "solid" is told by its length', () => {
    const bytes = whole(new STLExporter().parse(new Mesh(new BoxGeometry(1, 2, 3)), { binary: true })).slice();
    bytes.set(ascii('solid board'));
    expect(ours(bytes, 'a.stl')).toEqual(cornersOf(theirStl(bytes)));
  });
});

const square = 'v 0 0 0\nv 1 0 0\nv 1 1 0\nv 0 1 0\n';
const plyHead = (vertices: number, faces: number, list = 'property list uchar int vertex_indices\n') =>
  `ply\nformat ascii 1.0\ncomment made up\nelement vertex ${vertices}\nproperty float x\nproperty float y\nproperty float z\n` +
  `element face ${faces}\n${list}end_header\n`;

describe('what is allowed in a file and seldom met', () => {
  it.each([
    ['counted from the end', `${square}f -4 -3 -2 -1\n`],
    ['with texture and normal', `${square}f 1/1/1 2//2 3/3 4\n`],
    ['over two lines', `${square}f 1 2 \\\n 3 4\n`],
  ])('faces of OBJ %s', (_, text) => {
    expect(readMesh(ascii(text), 'a.obj')).toMatchObject({ triangles: Uint32Array.of(0, 1, 2, 0, 2, 3) });
  });

  it('polygons of PLY, with other properties around their corners', () => {
    const head = plyHead(4, 1, 'property uchar red\nproperty list uchar int vertex_index\n');
    const read = readMesh(ascii(`${head}0 0 0\n1 0 0\n1 1 0\n0 1 0\n255 4 0 1 2 3\n`), 'a.ply');
    expect(read).toMatchObject({ triangles: Uint32Array.of(0, 1, 2, 0, 2, 3) });
  });

  it('numbers in every form that C prints', () => {
    const read = readMesh(ascii('v 1e3 -2.5E-1 +.5\nv 0.1234567890123456789 7. 1e-30\nv 1 1 1\nf 1 2 3\n'), 'a.obj');
    const expected = [1000, -0.25, 0.5, Number('0.1234567890123456789'), 7, 1e-30, 1, 1, 1];
    expect('kind' in read ? read : [...read.positions]).toEqual(expected);
  });
});

const stl = whole(new STLExporter().parse(knot, { binary: true }));
const stlText = ascii(new STLExporter().parse(knot));
const withNaN = stl.slice();
new DataView(withNaN.buffer).setFloat32(84 + 50 * 7 + 16, NaN, true);

describe('what cannot be read is told by kind and place', () => {
  it.each([
    ['a picture', 'a.stl', ascii('\u0089PNG\r\n'.repeat(40)), { kind: 'notMesh' }],
    ['a letter', 'a.stl', ascii('Dear club, '.repeat(40)), { kind: 'notMesh' }],
    ['an empty file', 'a.stl', new Uint8Array(0), { kind: 'notMesh' }],
    ['an empty OBJ', 'a.obj', ascii('# nothing\n'), { kind: 'notMesh' }],
    ['half of a binary STL', 'a.stl', stl.subarray(0, 30_000), { kind: 'truncated', has: 30_000, needs: stl.length }],
    ['half of a text STL', 'a.stl', stlText.subarray(0, stlText.length / 2), { kind: 'truncated', of: 'lines' }],
    ['half of a PLY', 'a.ply', ply({ binary: true }).subarray(0, 9000), { kind: 'truncated', has: 9000 }],
    ['half of a text PLY', 'a.ply', ascii(`${plyHead(3, 1)}0 0 0\n1 0 0\n`), { kind: 'truncated' }],
    ['STL without triangles', 'a.stl', ascii('solid a\nendsolid a\n'.padEnd(90)), { kind: 'noTriangles' }],
    ['binary STL without triangles', 'a.stl', new Uint8Array(84), { kind: 'noTriangles' }],
    ['a cloud of points', 'a.ply', ascii(`${plyHead(2, 0)}0 0 0\n1 0 0\n`), { kind: 'cloud', points: 2 }],
    ['points in OBJ', 'a.obj', ascii(square), { kind: 'cloud', points: 4 }],
    [
      'another PLY',
      'a.ply',
      ascii(
        'ply\nformat binary_vax 1.0\nelement vertex 1\nproperty float x\nproperty float y\nproperty float z\nelement face 1\nproperty list uchar int vertex_indices\nend_header\n',
      ),
      { kind: 'format' },
    ],
    ['not a number', 'a.stl', withNaN, { kind: 'noNumber', triangle: 8, count: 1 }],
    ['a word for a number', 'a.obj', ascii('v 0 0 0\nv 1 o 0\n'), { kind: 'badLine', line: 2, text: 'o' }],
    ['a point that is not there', 'a.obj', ascii(`${square}f 1 2 9\n`), { kind: 'noPoint', point: 9, points: 4 }],
    [
      'a PLY that names such a point',
      'a.ply',
      ascii(`${plyHead(3, 1)}0 0 0\n1 0 0\n0 1 0\n3 0 1 3\n`),
      { kind: 'noPoint' },
    ],
  ])('%s', (_, name, bytes, fault) => {
    expect(readMesh(bytes, name)).toMatchObject(fault);
  });

  it('every shortening of every file ends in a finding or in triangles, never in an exception', () => {
    for (const [name, bytes] of [
      ['a.stl', stl],
      ['a.stl', stlText],
      ['a.ply', ply({ binary: false })],
      ['a.ply', ply({ binary: true })],
      ['a.obj', ascii(new OBJExporter().parse(knot))],
    ] as const)
      for (let length = 0; length < bytes.length; length += 9973) {
        const read = readMesh(bytes.subarray(0, length), name);
        if (name !== 'a.obj') expect(read).toHaveProperty('kind');
      }
  });
});
