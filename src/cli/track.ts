import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { reason } from '../disk/reason.js';
import { fileBytes } from '../disk/textFile.js';
import { planOf } from '../plan.js';
import { trackCommand as track } from '../shop/track.js';
import { TRACK_HELP } from '../shop/trackHelp.js';
import { REFUSED, type Command } from './io.js';
import { jobFrom } from './jobFile.js';
import { trackedBlocks } from './trackedBlocks.js';
import { canWriteTo, whyNotNamed, writtenAlone } from './writing.js';

const PAGE = fileURLToPath(new URL('../../page/shop', import.meta.url));

export const trackCommand: Command = {
  async run([file, ...args], io) {
    if (file === undefined || file.startsWith('-')) {
      io.err(`The name of the job file is missing.\n\n${TRACK_HELP}`);
      return REFUSED;
    }
    const read = jobFrom(file, io);
    if (!read) return REFUSED;
    const { job } = read;
    try {
      return await track(args, {
        job: job.name,
        jobFile: read.file,
        units: job.units,
        blocks: trackedBlocks(planOf(job)),
        pageFolder: PAGE,
        out: io.out,
        err: io.err,
        isTerminal: io.isTerminal,
        // Asked only by what goes on: whoever asks takes Ctrl+C over.
        get stopped() {
          return io.stopped();
        },
        readBytes: fileBytes,
        writeList: async (name, text) => {
          const misnamed = whyNotNamed(name, '.csv');
          if (misnamed) io.err(misnamed);
          return !misnamed && canWriteTo(dirname(name), io) && writtenAlone(name, 'track', read, io, text);
        },
      });
    } catch (error) {
      io.err(`${file}: ${reason(error)}`);
      return REFUSED;
    }
  },
};
