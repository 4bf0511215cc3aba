import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gluingOf } from '../block/gluing.js';
import { planOf, type Plan } from '../plan.js';
import { TRACK_HELP, trackCommand as track } from '../shop/track.js';
import type { TrackedBlock } from '../shop/trackedBlock.js';
import { jobFrom, reason } from './files.js';
import { REFUSED, type Command } from './io.js';

const PAGE = fileURLToPath(new URL('../../page/shop', import.meta.url));

export const trackCommand: Command = {
  usage: TRACK_HELP.replace('chamberwright ', ''),
  async run([file, ...args], io) {
    if (file === undefined || file.startsWith('-')) {
      io.err(`The name of the job file is missing.\n\n${TRACK_HELP}`);
      return REFUSED;
    }
    const job = await jobFrom(file, io);
    if (!job) return REFUSED;
    try {
      return await track(args, {
        job: job.name,
        jobFile: file,
        units: job.units,
        blocks: trackedBlocks(planOf(job)),
        pageFolder: PAGE,
        out: io.out,
        err: io.err,
        isTerminal: io.isTerminal,
        stopped: io.stopped(),
        readText: (name) => readFileSync(name, 'utf8'),
        writeText: (name, text) => writeFileSync(name, text),
      });
    } catch (error) {
      io.err(`${file}: ${reason(error)}`);
      return REFUSED;
    }
  },
};

/** The plan's blocks as the shop follows them, in the gluing batches of the papers. */
function trackedBlocks(plan: Plan): TrackedBlock[] {
  const sides = new Map(plan.layup.rows.map((row) => [row.id, row.side]));
  const batches = new Map(
    gluingOf(plan).batches.flatMap(({ number, blocks }) => blocks.map((id) => [id, String(number)] as const)),
  );
  return plan.blocks.map(({ id, row, made: { length, height, thickness } }, i): TrackedBlock => {
    const batch = batches.get(id);
    return {
      id,
      row,
      place: plan.chambers[i]!.place,
      side: sides.get(row)!,
      sizes: { length, height, thickness },
      outline: plan.chambers[i]!.profile,
      ...(batch !== undefined && { batch }),
    };
  });
}
