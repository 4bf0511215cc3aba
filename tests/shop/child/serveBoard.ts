// Serves the rescue board's tracker for a test, as its own program: node serveBoard.mjs TRACKER PAGE-FOLDER
// [SHARE-ADDRESS [PORT]] TRACKER is a file, or ADDRESS#BOARD on a PostgreSQL server.
import { startShopServer } from '../../../src/shop/server/shopServer.js';
import { openFile } from '../../../src/shop/store/file/openFile.js';
import { openServer } from '../../../src/shop/store/postgres/openServer.js';
import { sayInLines } from '../../../src/finding/say.js';
import { rescueBlocks } from '../rescueBoard.js';

const [tracker, pageFolder, share, port] = process.argv.slice(2);
const [address, board] = tracker!.split('#');
const opened = board ? await openServer(address!, board, `${board}.tracker.db`) : await openFile(tracker!);
if (!opened.ok) throw new Error(sayInLines(opened.problem));
const server = await startShopServer({
  store: opened.store,
  job: 'Rescue board 12',
  units: 'mm',
  blocks: rescueBlocks(),
  pageFolder: pageFolder!,
  ...(share ? { share } : {}),
  ...(port ? { port: Number(port) } : {}),
  failed: (error) => console.error(error),
});
if ('problem' in server) throw new Error(sayInLines(server.problem));
process.stdout.write(
  `${JSON.stringify({ port: server.port, ownerLink: server.ownerLink, phoneLink: server.phoneLink() })}\n`,
);
