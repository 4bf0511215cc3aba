import { existsSync, realpathSync } from 'node:fs';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { reason } from '../disk/reason.js';
import { textFile } from '../disk/textFile.js';
import { isJobName } from '../open/jobFolder.js';
import { startBenchServer, type BenchServer } from '../open/server.js';
import { understood } from '../typed/args.js';
import { browse } from './browse.js';
import { REFUSED, WELL, type Command } from './io.js';
import { USAGE } from './usage.js';

const OPTIONS = { port: { type: 'string', default: '0' }, 'no-browser': { type: 'boolean', default: false } } as const;
const LAST_PORT = 65_535;

/**
 * Serves the page of a job until it is stopped.
 *
 * @param pageFolder the folder with the built page (`dist/page/bench`)
 * @param browse opens a browser at an address
 */
export function openWith(pageFolder: string, browse: (link: string) => void): Command {
  return {
    async run(args, io) {
      const asked = understood(args, OPTIONS, 1);
      const port = 'why' in asked ? NaN : Number(asked.values.port);
      const isPort = Number.isInteger(port) && port >= 0 && port <= LAST_PORT;
      if ('why' in asked || !isPort) {
        const why = 'why' in asked ? asked.why : `--port takes a number from 0 to ${LAST_PORT}.`;
        io.err(`${why}\n\n  chamberwright ${USAGE.open}`);
        return REFUSED;
      }
      const job = asked.operands[0]!;
      const name = basename(job);
      const refused = (why: string): number => {
        io.err(why);
        return REFUSED;
      };
      const isNamed = (file: string) => isJobName(basename(file));
      if (!isNamed(job)) return refused(`${job} is no job file: its name ends in .yaml, .yml or .json.`);
      const text = textFile(job);
      if (typeof text !== 'string')
        return refused(`${job}: ${text.why} → name a job file, or begin one with: chamberwright new ${job}`);
      // Where a link was named, the job and its tables are where it leads.
      const file = realpathSync(job);
      if (!isNamed(file))
        return refused(`${job} leads to ${file}: the name of a job file ends in .yaml, .yml or .json.`);
      if (!existsSync(pageFolder))
        return refused(`The page is not built (${basename(pageFolder)} is missing). Run: npm run build`);
      let server: BenchServer;
      try {
        server = await startBenchServer({
          job: file,
          pageFolder,
          port,
          failed: (error) => io.err(`Something went wrong in the server: ${String(error)}`),
        });
      } catch (error) {
        return refused(`The page cannot be served: ${reason(error)}. Choose another --port.`);
      }
      io.out(`${name} is on the bench: ${server.link}`);
      io.out('Ctrl+C ends it. What is not saved stays in the open page as long as that is open.');
      if (!asked.values['no-browser']) browse(server.link);
      await io.stopped();
      await server.close();
      return WELL;
    },
  };
}

export const openCommand = openWith(fileURLToPath(new URL('../../page/bench', import.meta.url)), browse);
