import { counted } from '../length/counted.js';
import { PATCHES } from '../board/mesh.js';
import { stretchOf } from '../chamber/stretch.js';
import { printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import { sayScan } from '../job/sayScan.js';
import { sayFin } from '../fin/sayFin.js';
import { printWeight } from '../length/weight.js';
import type { Plan } from '../plan.js';
import { sayStock } from '../view/sayStock.js';
import { sayNote } from '../verdict/note.js';
import { WORDS } from '../words/say.js';

const { on: ON } = WORDS.face;

/** A plan in lines to read at a terminal. */
export function reportOf(plan: Plan): string[] {
  const { job, board, chambers, blocks, layup, asked } = plan;
  const { units } = job;
  const length = (mm: number) => printLength(mm, units);
  const needed = (mm: number) => printAs('needed', mm, units);
  const filled = blocks.reduce((sum, block) => sum + block.volume, 0);
  return [
    job.name,
    `  ${printLength(board.length, units, 'feet')} long, ${length(board.width)} wide, ${length(board.thickness)} thick, ${board.volume.toFixed(1)} litres`,
    `  ${counted(layup.pieces.length, 'piece')}, ${counted(layup.rows.length, 'row')}, ${counted(chambers.length, 'chamber')} and as many blocks, ${filled.toFixed(1)} litres routed out`,
    ...sayScan(job.board.scan, units).map((line) => `  ${line}`),
    ...weightLines(plan),
    ...(plan.stock && job.stock
      ? ['  stock:', ...sayStock(plan.stock, job.stock, units).map((line) => `  ${line}`)]
      : []),
    ...(plan.fins.length > 0
      ? [
          `  ${counted(plan.fins.length, 'fin')} built:`,
          ...plan.fins.flatMap((fin) => sayFin(fin, units)).map((line) => `  ${line}`),
        ]
      : []),
    `  walls asked, routing tolerance included: deck ${needed(asked.deck)}, bottom ${needed(asked.bottom)}, rail ${needed(asked.rail)}`,
    '',
    ...layup.rows.flatMap((row) => {
      const into = row.members.map((m) => `${m.id} ${m.material.name}`).join(', ');
      const end = { face: 'right through', solid: 'to a floor before the solid member', rail: 'blind toward the rail' }[
        row.end
      ];
      return [
        `Row ${row.id}: in piece ${row.piece}, routed from its ${ON[row.face.on]} at joint ${row.face.joint}, into ${into}; ${end}`,
        ...table([
          ['chamber', 'from nose', 'length', 'height', 'depth', 'deck', 'bottom', 'rail', 'litres'],
          ...chambers
            .filter((chamber) => chamber.row === row.id)
            .map((chamber) => {
              const block = blocks.find(({ id }) => id === chamber.id)!;
              const { from } = stretchOf(chamber.profile);
              return [
                chamber.id,
                printAs('noseEnd', from, units),
                printAs('opening', block.length, units),
                printAs('opening', block.height, units),
                printAs('depth', chamber.depth[1], units),
                ...PATCHES.map((patch) => printAs('there', chamber.wall[patch], units)),
                chamber.volume.toFixed(2),
              ];
            }),
        ]),
        '',
      ];
    }),
    ...(plan.notes.length > 0 ? ['To know:', ...plan.notes.map((note) => `  ${sayNote(note, units)}`)] : []),
  ];
}

function weightLines({ weights, job }: Plan): string[] {
  const weight = (kg: number) => printWeight(kg, job.units);
  return [
    '  weight, and the range it lies in nine times out of ten:',
    ...table(
      weights.stages.map(({ stage, weight: kg, low, high }) => [
        `  ${stage}`,
        weight(kg),
        `${weight(low)} to ${weight(high)}`,
      ]),
    ),
  ];
}

/** Rows of cells in columns: the first to the left, the others to the right. */
function table(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0]!.map((_, i) => Math.max(...rows.map((row) => row[i]!.length)));
  return rows.map(
    (row) => `  ${row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join('  ')}`,
  );
}
