import { existsSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { textFile } from '../disk/textFile.js';
import { readRouted, writeRouted } from '../job/parts/routed.js';
import type { RoutedRow } from '../job/spec/routed.js';
import { counted } from '../length/counted.js';
import { planOf, type Plan } from '../plan.js';
import { proofOf } from '../proof/proof.js';
import { typed } from '../typed/args.js';
import { verdictOf } from '../verdict/verdict.js';
import { REFUSED, WELL, type Command } from './io.js';
import { jobFrom } from './jobFile.js';
import { USAGE } from './usage.js';
import { writtenAlone } from './writing.js';

const ENDING = '.routed.csv';

/** Writes the chambers of rows that are routed beside the job, so that every later plan keeps them as they are. */
export const routedCommand: Command = {
  async run(args, io) {
    const asked = typed(args, { undo: { type: 'boolean' } });
    const [file, ...named] = 'why' in asked ? [] : asked.positionals;
    if ('why' in asked || file === undefined || named.length === 0) {
      const why = 'why' in asked ? asked.why : 'Which job, and which rows?';
      io.err(`${why}\n\n  chamberwright ${USAGE.routed}`);
      return REFUSED;
    }
    const read = jobFrom(file, io);
    if (!read) return REFUSED;
    const plan = planOf(read.job);
    const rows = named.map((name) => plan.layup.rows.find(({ id }) => id.toLowerCase() === name.toLowerCase())?.id);
    const unknown = named.filter((_, i) => rows[i] === undefined);
    if (unknown.length > 0) {
      io.err(`There is no row ${unknown.join(', ')} → among ${plan.layup.rows.map(({ id }) => id).join(', ')}`);
      return REFUSED;
    }
    if (!asked.values.undo && !verdictOf(plan, proofOf(plan)).stands) {
      io.err(
        `${basename(file)}: this plan does not stand, so nobody may have routed by it → chamberwright check ${basename(file)}`,
      );
      return REFUSED;
    }
    const table = join(dirname(read.file), basename(read.file).replace(/\.(ya?ml|json)$/i, '') + ENDING);
    const text = existsSync(table) ? textFile(table) : undefined;
    const before = typeof text === 'string' ? readRouted(text) : [];
    if (typeof before === 'string' || (text !== undefined && typeof text !== 'string')) {
      io.err(
        `${table}: ${typeof before === 'string' ? before : (text as { why: string }).why} → put it right, or move it away`,
      );
      return REFUSED;
    }
    const others = before.filter(({ row }) => !rows.includes(row));
    const now = asked.values.undo ? [] : rows.map((row) => rowOf(plan, row!));
    const all = [...others, ...now];
    // The job names it, and yet it is ours to write.
    const ours = { ...read, inputs: read.inputs.filter((input) => input !== table) };
    if (!(await writtenAlone(table, 'routed', ours, io, writeRouted(all)))) return REFUSED;
    const count = now.reduce((sum, { chambers }) => sum + chambers.length, 0);
    io.out(
      asked.values.undo
        ? `${basename(table)}: ${rows.join(', ')} planned anew from now on`
        : `${basename(table)}: ${counted(count, 'chamber')} of ${rows.join(', ')} kept as they are, whatever is changed in the job`,
    );
    if (!read.job.routed)
      io.out(`Write into the job, at the left edge, if it is not there yet:\n  routed: ${basename(table)}`);
    return WELL;
  },
};

function rowOf({ layup, chambers }: Plan, id: string): RoutedRow {
  const { origin, along } = layup.rows.find((row) => row.id === id)!.face;
  return {
    row: id,
    day: new Date().toISOString().slice(0, 10),
    face: { origin, along },
    chambers: chambers.filter(({ row }) => row === id),
  };
}
