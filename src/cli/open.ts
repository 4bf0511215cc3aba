import { existsSync } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isJobName, readJobFile } from '../open/jobFolder.js';
import { startBenchServer, type BenchServer } from '../open/server.js';
import { understood } from './args.js';
import { browse } from './browse.js';
import { reason } from './files.js';
import { REFUSED, WELL, type Command } from './io.js';

const OPTIONS = { port: { type: 'string', default: '0' }, 'no-browser': { type: 'boolean', default: false } } as const;
const LAST_PORT = 65_535;

/**
 * Serves the page of a job until it is stopped.
 *
 * @param pageFolder the folder with the built page (`dist/page/bench`)
 * @param browse opens a browser at an address
 */
export function openWith(pageFolder: string, browse: (link: string) => void): Command {
  const usage = `open JOB [--port N] [--no-browser]
    Shows the plan in the browser, to be changed there: from above, the rows on the bench, cross-sections, weights.
    The page is for this machine only. The address holds its key: give it to nobody.`;
  return {
    usage,
    async run(args, io) {
      const asked = understood(args, OPTIONS, 1);
      const port = 'why' in asked ? NaN : Number(asked.values.port);
      const isPort = Number.isInteger(port) && port >= 0 && port <= LAST_PORT;
      if ('why' in asked || !isPort) {
        const why = 'why' in asked ? asked.why : `--port takes a number from 0 to ${LAST_PORT}.`;
        io.err(`${why}\n\n  chamberwright ${usage}`);
        return REFUSED;
      }
      const job = asked.operands[0]!;
      const name = basename(job);
      const refused = (why: string): number => {
        io.err(why);
        return REFUSED;
      };
      if (!isJobName(name)) return refused(`${job} is no job file: its name ends in .yaml, .yml or .json.`);
      if (!(await readJobFile(dirname(resolve(job)), name)))
        return refused(`There is no job file ${job}. Begin one with: chamberwright new ${job}`);
      if (!existsSync(pageFolder))
        return refused(`The page is not built (${basename(pageFolder)} is missing). Run: npm run build`);
      let server: BenchServer;
      try {
        server = await startBenchServer({
          job,
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
