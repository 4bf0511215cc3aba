import type { GlueUpSpec } from '../job/job.js';
import { lay } from './lay.js';
import type { Layup } from './layup.js';
import { piecesOf } from './pieces.js';
import { rowsOf } from './rows.js';

/** The glue-up laid out on a board of so many mm. */
export function layupOf(glueUp: GlueUpSpec, length: number): Layup {
  const { joints, members } = lay(glueUp, length);
  const pieces = piecesOf(members);
  return { joints, members, pieces, rows: rowsOf(pieces) };
}
