import words from '../../../templates/dots.json' with { type: 'json' };
import type { GlueSide } from '../../dot/dot.js';
import { printLength } from '../../length/length.js';
import type { Plan } from '../../plan.js';
import { blankStart, dottedJoints, heightsOn } from './dotsSheet.js';
import { faceLineAt } from '../../view/faceLine.js';
import type { TablePage, TableRow } from '../pages.js';
import { lengthCell } from '../face/pole.js';
import { say, WORDS } from '../../words/say.js';

/**
 * Every dot and smear, joint by joint: its place on the joint, its size, how far inside the finished surface, and what
 * lies beside it.
 */
export function dotsTable(plan: Plan): TablePage {
  const { units } = plan.job;
  const { nose, below, thickness } = plan.job.dots.blank;
  // Only a box has an underside to measure from.
  const isBox = thickness !== undefined;
  const up = (z: number) => (isBox ? [length(z + below)] : []);
  const { columns } = words.table;
  const length = (mm: number) => lengthCell(mm, units);
  return {
    kind: 'table',
    title: words.table.title,
    notes: [
      ...words.table.notes,
      ...(nose > 0 ? [say(words.table.standsOut, { nose: printLength(nose, units) })] : []),
    ],
    columns: [
      { title: columns.dot, kind: 'text' },
      { title: columns.along, kind: 'number' },
      { title: columns.over, kind: 'number' },
      { title: columns.under, kind: 'number' },
      ...(isBox ? [{ title: columns.up, kind: 'number' as const }] : []),
      { title: columns.size, kind: 'number' },
      { title: columns.margin, kind: 'number' },
      { title: columns.sides, kind: 'text' },
    ],
    rows: dottedJoints(plan).flatMap((at): TableRow[] => {
      const start = blankStart(plan, at);
      const finished = faceLineAt(plan.board, at.face);
      const heights = (s: number, z: number) => {
        const { over, under } = heightsOn(finished, s, z);
        return [length(over), length(under), ...up(z)];
      };
      const here = <T extends { joint: string }>(all: readonly T[]) => all.filter(({ joint }) => joint === at.joint.id);
      return [
        { kind: 'heading', text: say(words.title, { joint: at.joint.id }) },
        ...here(plan.glue.dots).map(({ id, s, z, diameter, margin, glued, sides }): TableRow => ({
          kind: 'row',
          cells: [
            glued ? `${id} (${words.table.glued})` : id,
            length(s - start),
            ...heights(s, z),
            length(diameter),
            lengthCell(margin, units, 'there'),
            sayWays(sides),
          ],
        })),
        ...here(plan.glue.smears).map(({ id, from, to, width, sides }): TableRow => {
          const along = (s: number) => printLength(s - start, units);
          const where = say(words.table.smear, { from: along(from[0]), to: along(to[0]) });
          const [s, z] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
          return {
            kind: 'row',
            cells: [`${id}: ${where}`, length(from[0] - start), ...heights(s, z), length(width), '', sayWays(sides)],
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
