import { existsSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import words from '../../templates/command.json' with { type: 'json' };
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
import { refuse } from './refuse.js';
import { say } from '../words/say.js';
import { writtenAlone } from './writing.js';

const ENDING = '.routed.csv';

/** Writes the chambers of rows that are routed beside the job, so that every later plan keeps them as they are. */
export const routedCommand: Command = {
  async run(args, io) {
    const asked = typed(args, { undo: { type: 'boolean' } });
    if ('remedy' in asked) return refuse(io, asked, 'routed');
    const [file, ...named] = asked.positionals;
    if (file === undefined || named.length === 0)
      return refuse(io, { where: file ?? words.typed.where.file, ...words.named.rows }, 'routed');
    const read = jobFrom(file, io);
    if (!read) return REFUSED;
    const plan = planOf(read.job);
    const rows = named.map((name) => plan.layup.rows.find(({ id }) => id.toLowerCase() === name.toLowerCase())?.id);
    const unknown = named.filter((_, i) => rows[i] === undefined);
    if (unknown.length > 0) {
      const { what, remedy } = words.routed.unknown;
      const there = plan.layup.rows.map(({ id }) => id).join(', ');
      return refuse(io, { where: unknown.join(', '), what, remedy: say(remedy, { rows: there }) });
    }
    if (!asked.values.undo && !verdictOf(plan, proofOf(plan)).stands) {
      const { what, remedy } = words.routed.fallen;
      return refuse(io, { where: basename(file), what, remedy: say(remedy, { file: basename(file) }) });
    }
    const table = join(dirname(read.file), basename(read.file).replace(/\.(ya?ml|json)$/i, '') + ENDING);
    const text = existsSync(table) ? textFile(table) : undefined;
    if (typeof text === 'object') return refuse(io, { ...text, remedy: words.routed.spoilt });
    const before = text === undefined ? [] : readRouted(text);
    if (typeof before === 'string') return refuse(io, { where: table, what: before, remedy: words.routed.spoilt });
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
