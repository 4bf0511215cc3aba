import type { Triangles } from '../triangles.js';

/** The kinds of mesh file that are written, by their ending. */
export const MESH_FILES = ['.stl', '.ply', '.obj'] as const;
export type MeshFile = (typeof MESH_FILES)[number];

/**
 * Triangles as a file, mm: binary STL, binary PLY (little-endian, in double precision) or OBJ. STL has single
 * precision: some ten-thousandths of a millimetre.
 */
export function meshBytes(mesh: Triangles, kind: MeshFile, title: string): Uint8Array {
  if (kind === '.stl') return stlOf(mesh, title);
  return kind === '.ply' ? plyOf(mesh, title) : objOf(mesh, title);
}

/**
 * Binary STL: 80 bytes of title, the count, then normal, three corners and an empty attribute for each triangle,
 * little-endian.
 */
function stlOf({ positions: p, triangles }: Triangles, title: string): Uint8Array {
  const count = triangles.length / 3;
  const bytes = new Uint8Array(84 + 50 * count);
  // "solid" at the beginning would make it look like the other kind of STL.
  bytes.set(new TextEncoder().encode(`mm, ${title}`).slice(0, 80));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  for (let t = 0; t < count; t++) {
    const at = 84 + 50 * t;
    const [a, b, c] = [3 * triangles[3 * t]!, 3 * triangles[3 * t + 1]!, 3 * triangles[3 * t + 2]!];
    const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
    const [vx, vy, vz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
    const normal = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const size = Math.hypot(...normal) || 1;
    for (let axis = 0; axis < 3; axis++) {
      view.setFloat32(at + 4 * axis, normal[axis]! / size, true);
      for (let corner = 0; corner < 3; corner++)
        view.setFloat32(at + 12 + 12 * corner + 4 * axis, p[3 * triangles[3 * t + corner]! + axis]!, true);
    }
  }
  return bytes;
}

function plyOf({ positions, triangles }: Triangles, title: string): Uint8Array {
  const axes = ['x', 'y', 'z'].map((axis) => `property double ${axis}\n`).join('');
  const head = new TextEncoder().encode(
    `ply\nformat binary_little_endian 1.0\ncomment mm, ${oneLine(title)}\nelement vertex ${positions.length / 3}\n${axes}` +
      `element face ${triangles.length / 3}\nproperty list uchar uint vertex_indices\nend_header\n`,
  );
  const bytes = new Uint8Array(head.length + 8 * positions.length + (13 * triangles.length) / 3);
  bytes.set(head);
  const view = new DataView(bytes.buffer);
  let at = head.length;
  for (let i = 0; i < positions.length; i++, at += 8) view.setFloat64(at, positions[i]!, true);
  for (let t = 0; t < triangles.length; t += 3, at += 13) {
    bytes[at] = 3;
    for (let corner = 0; corner < 3; corner++) view.setUint32(at + 1 + 4 * corner, triangles[t + corner]!, true);
  }
  return bytes;
}

function objOf({ positions, triangles }: Triangles, title: string): Uint8Array {
  const lines = [`# mm, ${oneLine(title)}`];
  for (let i = 0; i < positions.length; i += 3)
    lines.push(`v ${positions[i]!} ${positions[i + 1]!} ${positions[i + 2]!}`);
  for (let t = 0; t < triangles.length; t += 3)
    lines.push(`f ${triangles[t]! + 1} ${triangles[t + 1]! + 1} ${triangles[t + 2]! + 1}`);
  return new TextEncoder().encode(`${lines.join('\n')}\n`);
}

/** A title that ends no line of a header. */
const oneLine = (title: string) => title.replace(/[\r\n]+/g, ' ');
