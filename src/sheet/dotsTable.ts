import words from '../../templates/dots.json' with { type: 'json' };
import type { GlueSide } from '../dot/dot.js';
import { printLength } from '../length/length.js';
import type { Plan } from '../plan.js';
import { blankStart, dottedJoints } from './dotsSheet.js';
import type { TablePage, TableRow } from './pages.js';
import { lengthCell } from './pole.js';
import { say, WORDS } from './words.js';

/** Every dot and smear, joint by joint: its place on the rough blank, its size, how far inside the finished surface, and what lies beside it. */
export function dotsTable(plan: Plan): TablePage {
  const { units } = plan.job;
  const { below } = plan.job.dots.blank;
  const { columns } = words.table;
  const length = (mm: number) => lengthCell(mm, units);
  return {
    kind: 'table',
    title: words.table.title,
    notes: words.table.notes,
    columns: [
      { title: columns.dot, kind: 'text' },
      { title: columns.along, kind: 'number' },
      { title: columns.up, kind: 'number' },
      { title: columns.size, kind: 'number' },
      { title: columns.margin, kind: 'number' },
      { title: columns.sides, kind: 'text' },
    ],
    rows: dottedJoints(plan).flatMap((at): TableRow[] => {
      const start = blankStart(plan, at);
      const here = <T extends { joint: string }>(all: readonly T[]) => all.filter(({ joint }) => joint === at.joint.id);
      return [
        { kind: 'heading', text: say(words.title, { joint: at.joint.id }) },
        ...here(plan.glue.dots).map(({ id, s, z, diameter, margin, glued, sides }): TableRow => ({
          kind: 'row',
          cells: [
            glued ? `${id} (${words.table.glued})` : id,
            length(s - start),
            length(z + below),
            length(diameter),
            lengthCell(margin, units, 'there'),
            sayWays(sides),
          ],
        })),
        ...here(plan.glue.smears).map(({ id, from, to, width, sides }): TableRow => {
          const along = (s: number) => printLength(s - start, units);
          const where = say(words.table.smear, { from: along(from[0]), to: along(to[0]) });
          const up = (from[1] + to[1]) / 2 + below;
          return {
            kind: 'row',
            cells: [`${id}: ${where}`, length(from[0] - start), length(up), length(width), '', sayWays(sides)],
          };
        }),
      ];
    }),
  };
}

function sayWays(sides: readonly GlueSide[]): string {
  return sides
    .map(({ row, way, chambers }) => say(words.table.way[way], { row, chambers: chambers.join(WORDS.joinWith) }))
    .join('; ');
}
