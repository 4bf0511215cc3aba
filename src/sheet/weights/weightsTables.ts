import { row } from '../table.js';
import { printLength } from '../../length/length.js';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import { printWeight } from '../../length/weight.js';
import type { Plan } from '../../plan.js';
import type { Cell, TablePage } from '../pages.js';
import { partInWords, unknownInWords, WEIGHT_WORDS } from './weightsWords.js';

export function weightCell(kg: number, units: Units): Cell {
  return { value: kg, text: printWeight(kg, units) };
}

/** Nothing is promised closer than a rule is read, mm. */
const LEAST_OFF = { mm: 1, in: MM_PER_INCH / 16 } as const;

/** Weight, balance and swing at every stage. */
export function stagesTable({ weights, job }: Plan): TablePage {
  const { units } = job;
  const { columns } = WEIGHT_WORDS.stages;
  const place = (mm: number): Cell => ({ value: mm, text: printLength(mm, units) });
  return {
    kind: 'table',
    title: WEIGHT_WORDS.stages.title,
    notes: WEIGHT_WORDS.stages.notes,
    columns: [
      { title: columns.stage, kind: 'text' },
      ...[columns.weight, columns.low, columns.high].map((title) => ({ title, kind: 'number' as const })),
      { title: columns.scale, kind: 'text' },
      ...[columns.balance, columns.balanceOff, columns.swing].map((title) => ({ title, kind: 'number' as const })),
    ],
    rows: weights.stages.map(({ stage, weight, low, high, balance, swing }) => {
      const said = (job.weighings ?? []).filter((each) => each.stage === stage);
      return row(
        WEIGHT_WORDS.stage[stage],
        weightCell(weight, units),
        weightCell(low, units),
        weightCell(high, units),
        said.map((each) => printWeight(each.weight, units)).join(', '),
        place(balance.x),
        place(Math.max((balance.high - balance.low) / 2, LEAST_OFF[units])),
        { value: swing, text: swing.toFixed(1) },
      );
    }),
  };
}

/** What the finished board is made of. */
export function partsTable({ weights, job }: Plan): TablePage {
  const { columns } = WEIGHT_WORDS.parts;
  const { parts } = weights.stages[weights.stages.length - 1]!;
  const largest = [...parts].filter(({ weight }) => weight !== 0).sort((a, b) => b.weight - a.weight);
  return {
    kind: 'table',
    title: WEIGHT_WORDS.parts.title,
    notes: WEIGHT_WORDS.parts.notes,
    columns: [
      { title: columns.part, kind: 'text' },
      { title: columns.weight, kind: 'number', total: (sum) => printWeight(sum, job.units) },
    ],
    rows: largest.map(({ id, weight }) => row(partInWords(id), weightCell(weight, job.units))),
  };
}

/** Every density, coat and ratio as it was supposed and as the weighings leave it. */
export function unknownsTable({ weights }: Plan): TablePage {
  const { columns, title, notes, share } = WEIGHT_WORDS.unknowns;
  const number = (value: number): Cell => ({ value, text: String(Number(value.toPrecision(3))) });
  return {
    kind: 'table',
    title,
    notes,
    columns: [
      { title: columns.unknown, kind: 'text' },
      { title: columns.unit, kind: 'text' },
      ...[columns.supposed, columns.spread, columns.learned, columns.left].map((each) => ({
        title: each,
        kind: 'number' as const,
      })),
    ],
    rows: weights.unknowns.map(({ id, unit, value, spread, learned }) =>
      row(
        unknownInWords(id),
        unit === 'share' ? share : unit,
        number(value),
        number(spread),
        number(learned.value),
        number(learned.spread),
      ),
    ),
  };
}
