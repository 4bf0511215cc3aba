import { existsSync, realpathSync } from 'node:fs';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import words from '../../templates/command.json' with { type: 'json' };
import { diskFinding } from '../disk/diskFinding.js';
import { isJobName } from '../open/jobFolder.js';
import { startBenchServer, type BenchServer } from '../open/server.js';
import { understood } from '../typed/args.js';
import { say } from '../words/say.js';
import { browse } from './browse.js';
import { WELL, type Command } from './io.js';
import { jobText } from './jobFile.js';
import { refuse } from './refuse.js';

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
      if ('remedy' in asked) return refuse(io, asked, 'open');
      const port = Number(asked.values.port);
      if (!(Number.isInteger(port) && port >= 0 && port <= LAST_PORT)) {
        const { what, remedy } = words.open.port;
        return refuse(io, { where: '--port', what: say(what, { last: LAST_PORT }), remedy }, 'open');
      }
      const job = asked.operands[0]!;
      const name = basename(job);
      const isNamed = (file: string) => isJobName(basename(file));
      if (!isNamed(job)) return refuse(io, { where: job, ...words.job.name });
      const text = jobText(job);
      if (typeof text !== 'string') return refuse(io, text);
      // Where a link was named, the job and its tables are where it leads.
      const file = realpathSync(job);
      if (!isNamed(file)) {
        const { what, remedy } = words.job.leads;
        return refuse(io, { where: job, what: say(what, { file }), remedy });
      }
      const { page, serve } = words.open;
      if (!existsSync(pageFolder))
        return refuse(io, { ...page, what: say(page.what, { folder: basename(pageFolder) }) });
      let server: BenchServer;
      try {
        server = await startBenchServer({
          job: file,
          pageFolder,
          port,
          failed: (error) => io.err(`Something went wrong in the server: ${String(error)}`),
        });
      } catch (error) {
        return refuse(io, { ...serve, what: say(serve.what, { why: diskFinding('', error).what }) });
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
