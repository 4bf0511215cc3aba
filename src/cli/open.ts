import { fileURLToPath } from 'node:url';
import { OPEN_USAGE, openCommand as openPage } from '../open/open.js';
import type { Command } from './io.js';

const PAGE = fileURLToPath(new URL('../../page/bench', import.meta.url));

export const openCommand: Command = {
  usage: OPEN_USAGE.replace('chamberwright ', ''),
  run: (args, { out, err, stopped }) => openPage(args, { out, err, stopped: stopped(), pageFolder: PAGE }),
};
