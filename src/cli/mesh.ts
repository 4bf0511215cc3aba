import { writeFile } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { boardOf } from '../board/board.js';
import type { Mesh } from '../board/mesh.js';
import { understood } from './args.js';
import { folderReady, jobFrom, reason, writeWhole } from './files.js';
import { REFUSED, WELL, type Command } from './io.js';

export const meshCommand: Command = {
  usage: `mesh JOB -o FILE.stl
    Writes the finished surface that the walls are proved against as a closed mesh (binary STL, mm), so that
    anyone with a solid-geometry program can prove the plan wrong.`,
  async run(args, io) {
    const asked = understood(args, { out: { type: 'string', short: 'o' } }, 1);
    if ('why' in asked || !asked.values.out) {
      io.err(
        `${'why' in asked ? asked.why : 'Where to? Name a file with -o.'}\n\n  chamberwright ${meshCommand.usage}`,
      );
      return REFUSED;
    }
    const { out } = asked.values;
    if (!(await folderReady(dirname(out), io))) return REFUSED;
    const job = await jobFrom(asked.operands[0]!, io);
    if (!job) return REFUSED;
    const { mesh } = boardOf(job.board);
    try {
      await writeWhole(out, (path) => writeFile(path, stlOf(mesh, job.name)));
    } catch (error) {
      io.err(`${out}: ${reason(error)} → choose another file`);
      return REFUSED;
    }
    io.out(`${basename(out)}: ${mesh.patches.length} triangles, within ${mesh.chordError} mm of the smooth surface`);
    return WELL;
  },
};

/** Binary STL: 80 bytes of title, the count, then normal, three corners and an empty attribute for each triangle, little-endian. */
function stlOf({ positions, triangles, normals }: Mesh, name: string): Uint8Array {
  const count = triangles.length / 3;
  const bytes = new Uint8Array(84 + 50 * count);
  // "solid" at the beginning would make it look like the other kind of STL.
  bytes.set(new TextEncoder().encode(`mm, ${name}`).slice(0, 80));
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
