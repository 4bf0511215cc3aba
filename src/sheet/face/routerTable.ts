import { columnsOf } from '../table.js';
import words from '../../../templates/guides.json' with { type: 'json' };
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import type { Plan } from '../../plan.js';
import { depthLinesOf, saidRouting } from '../../rout/depthLines.js';
import type { Cell, TablePage, TableRow } from '../pages.js';
import { lengthCell } from './pole.js';
import { say, WORDS } from '../../words/say.js';

/**
 * Row by row, for each depth that its chambers have: which they are, from which face, and the stop of each pass; the
 * deepest last.
 */
export function setUpTable(plan: Plan): TablePage {
  const { units, routing, chambers } = plan.job;
  const { columns } = words.setUp;
  const print = (mm: number) => printLength(mm, units);
  const values = {
    cutter: print(chambers.cutterDiameter),
    bush: print(routing.bush),
    stock: print(routing.guideStock),
  };
  return {
    kind: 'table',
    title: words.setUp.title,
    notes: [...words.setUp.notes.map((note) => say(note, values)), words.care],
    columns: columnsOf(
      [columns.deep, 'number'],
      [columns.stops, 'text'],
      [columns.chambers, 'text'],
      [columns.from, 'text'],
    ),
    rows: plan.routing.rows
      .filter((row) => row.chambers.length > 0)
      .flatMap((row): TableRow[] => [
        {
          kind: 'heading',
          text:
            row.needs === undefined
              ? say(words.setUp.row, { row: row.row })
              : say(words.setUp.needs, { row: row.row, needs: printAs('needed', row.needs, units) }),
        },
        ...depthLinesOf(row, routing, units).map(({ from, depth, stops, chambers: served }): TableRow => ({
          kind: 'row',
          cells: [
            lengthCell(depth, units),
            stops.map(print).join(', '),
            served.join(WORDS.joinWith),
            from.length > 1 ? say(words.setUp.both, { from: from.join(' + ') }) : from.join(),
          ],
        })),
      ]),
  };
}

/**
 * Every chamber for a spreadsheet, a line for each face it is routed from, the header first: the same figures as on the
 * papers.
 */
export function routingRows(plan: Plan): Cell[][] {
  const { routing, units } = plan.job;
  const print = (mm: number) => printLength(mm, units);
  return [
    words.csv.map((title) => say(title, { units })),
    ...plan.routing.rows.flatMap(({ chambers }) =>
      chambers.flatMap((chamber) => {
        const { depth, stops } = saidRouting(chamber, routing, units);
        return chamber.from.map((face): Cell[] => [
          chamber.chamber,
          face,
          depth,
          stops.join(' '),
          print(depth),
          stops.map(print).join(', '),
        ]);
      }),
    ),
  ];
}
