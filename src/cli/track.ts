import { createHash } from 'node:crypto';
import { statSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serialize } from 'node:v8';
import words from '../../templates/command.json' with { type: 'json' };
import { diskFinding } from '../disk/diskFinding.js';
import { fileBytes } from '../disk/textFile.js';
import type { Job } from '../job/job.js';
import { trackCommand as track } from '../shop/track.js';
import { TRACK_HELP } from '../shop/trackHelp.js';
import type { ShopServer } from '../shop/server/shopServer.js';
import { sayFinding, sayInLines } from '../finding/say.js';
import type { TrackedBlock } from '../shop/log/trackedBlock.js';
import { countRefits, refitReport } from '../shop/report/trackReport.js';
import { REFUSED, type Command, type Io } from './io.js';
import { jobFrom, type JobRead } from './jobFile.js';
import { refuse } from './refuse.js';
import { version } from './version.js';
import { watchFiles, type Watched } from './watchFiles.js';
import { misnamed, notWritable, writtenAlone } from './writing.js';

const PAGE = fileURLToPath(new URL('../../page/shop', import.meta.url));

export const trackCommand: Command = {
  async run([file, ...args], io) {
    if (file === undefined || file.startsWith('-')) {
      io.err(`${sayFinding(words.track.missing)}\n\n${TRACK_HELP}`);
      return REFUSED;
    }
    const looked: Watched[] = [];
    const read = jobFrom(file, io, looked);
    if (!read) return REFUSED;
    const { job } = read;
    let stopWatching = () => {};
    try {
      return await track(args, {
        job: job.name,
        jobFile: read.file,
        units: job.units,
        plan: () => plannedBlocks(job),
        ...planMarkOf(job),
        pageFolder: PAGE,
        out: io.out,
        err: io.err,
        isTerminal: io.isTerminal,
        // Asked only by what goes on: whoever asks takes Ctrl+C over.
        get stopped() {
          return io.stopped();
        },
        running: (server) => {
          stopWatching = watchFiles(looked, () => followJob(file, server, io));
        },
        readBytes: fileBytes,
        writeList: async (name, text) => {
          const inTheWay = misnamed(name, '.csv') ?? notWritable(dirname(name));
          if (inTheWay) io.err(sayFinding(inTheWay));
          return !inTheWay && writtenAlone(name, 'track', read, io, text);
        },
      });
    } catch (error) {
      return refuse(io, diskFinding(file, error));
    } finally {
      stopWatching();
    }
  },
};

/** The planner is loaded only where something is to be planned: a step is entered sooner than it is. */
async function plannedBlocks(job: Job): Promise<readonly TrackedBlock[]> {
  const [{ planOf }, { trackedBlocks }] = await Promise.all([import('../plan.js'), import('./trackedBlocks.js')]);
  return trackedBlocks(planOf(job));
}

/** What a plan depends on, in short: all that the job says, and the program as it was built. */
function planMarkOf(job: Job): { readonly planMark?: string } {
  const program = statSync(new URL('../plan.js', import.meta.url), { throwIfNoEntry: false });
  if (!program) return {};
  const mark = createHash('sha256').update(serialize(job)).update(`${version()} ${program.mtimeMs} ${program.size}`);
  return { planMark: mark.digest('hex') };
}

/**
 * Puts a job that was changed while the tracker is served in force, if it can be planned, and says what that means.
 * Gives the files that were read.
 */
async function followJob(file: string, server: ShopServer, io: Io): Promise<readonly Watched[]> {
  const looked: Watched[] = [];
  try {
    const read = jobFrom(file, io, looked);
    if (read) await putInForce(read, server, io);
    else
      io.err(`${file} was changed and cannot be planned so. The phones keep the plan before it until it is put right.`);
  } catch (error) {
    refuse(io, diskFinding(file, error));
  }
  return looked;
}

async function putInForce({ job, file }: JobRead, server: ShopServer, io: Io): Promise<void> {
  const done = await server.replacePlan(job.name, await plannedBlocks(job), job.units);
  if (!done.ok) return io.err(sayInLines(done.problem));
  const { isNew, refits } = done.value;
  if (!isNew) return;
  const todo = refits.size === 0 ? 'All blocks in hand still fit.' : `Blocks in hand: ${countRefits(refits)}.`;
  io.out(`${file} was changed; every phone has the new plan. ${todo}`);
  refitReport(refits, job.units).slice(2).forEach(io.out);
}
