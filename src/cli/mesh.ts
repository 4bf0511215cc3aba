import { basename, dirname, extname } from 'node:path';
import words from '../../templates/command.json' with { type: 'json' };
import { planOf } from '../plan.js';
import { MESH_FILES, meshBytes, type MeshFile } from '../scan/write/meshFile.js';
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
    const { where, what: lacking, file } = words.named.out;
    if (!out) return refuse(io, { where, what: lacking, remedy: file }, 'mesh');
    const inTheWay = misnamed(out, ...MESH_FILES) ?? notWritable(dirname(out));
    if (inTheWay) return refuse(io, inTheWay);
    const read = jobFrom(asked.operands[0]!, io);
    if (!read) return REFUSED;
    // The surface of the plan itself, as measured after shaping: the one that its walls are proved against.
    const { proved, mesh } = planOf(read.job).board;
    const bytes = meshBytes(proved, extname(out).toLowerCase() as MeshFile, `chamberwright, ${read.job.name}`);
    if (!(await writtenAlone(out, 'mesh', read, io, bytes))) return REFUSED;
    const what =
      proved === mesh ? `within ${mesh.chordError} mm of the smooth surface` : 'those of the scan, its holes closed';
    io.out(`${basename(out)}: ${proved.patches.length} triangles, ${what}`);
    return WELL;
  },
};
