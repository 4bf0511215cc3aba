import { basename, dirname } from 'node:path';
import words from '../../templates/command.json' with { type: 'json' };
import type { Mesh } from '../board/mesh.js';
import { planOf } from '../plan.js';
import { understood } from '../typed/args.js';
import { REFUSED, WELL, type Command } from './io.js';
import { jobFrom } from './jobFile.js';
import { refuse } from './refuse.js';
import { misnamed, notWritable, writtenAlone } from './writing.js';

export const meshCommand: Command = {
  async run(args, io) {
    const asked = understood(args, { out: { type: 'string', short: 'o' } }, 1);
    if ('remedy' in asked) return refuse(io, asked, 'mesh');
    const { out } = asked.values;
    const { where, what, file } = words.named.out;
    if (!out) return refuse(io, { where, what, remedy: file }, 'mesh');
    const inTheWay = misnamed(out, '.stl') ?? notWritable(dirname(out));
    if (inTheWay) return refuse(io, inTheWay);
    const read = jobFrom(asked.operands[0]!, io);
    if (!read) return REFUSED;
    // The surface of the plan itself, as measured after shaping: the one that its walls are proved against.
    const { mesh } = planOf(read.job).board;
    if (!(await writtenAlone(out, 'mesh', read, io, stlOf(mesh, read.job.name)))) return REFUSED;
    io.out(`${basename(out)}: ${mesh.patches.length} triangles, within ${mesh.chordError} mm of the smooth surface`);
    return WELL;
  },
};

/**
 * Binary STL: 80 bytes of title, the count, then normal, three corners and an empty attribute for each triangle,
 * little-endian.
 */
function stlOf({ positions, triangles, normals }: Mesh, name: string): Uint8Array {
  const count = triangles.length / 3;
  const bytes = new Uint8Array(84 + 50 * count);
  // "solid" at the beginning would make it look like the other kind of STL.
  bytes.set(new TextEncoder().encode(`mm, chamberwright, ${name}`).slice(0, 80));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  for (let t = 0; t < count; t++) {
    const at = 84 + 50 * t;
    for (let axis = 0; axis < 3; axis++) {
      view.setFloat32(at + 4 * axis, normals[3 * t + axis]!, true);
      for (let corner = 0; corner < 3; corner++) {
        view.setFloat32(at + 12 + 12 * corner + 4 * axis, positions[3 * triangles[3 * t + corner]! + axis]!, true);
      }
    }
  }
  return bytes;
}
