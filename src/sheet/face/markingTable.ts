import { columnsOf } from '../table.js';
import { spanAt } from '../../contour/span.js';
import type { Plan } from '../../plan.js';
import { depthWords } from './depthWords.js';
import { faceNotes } from './faceSheet.js';
import { faceLineAt } from '../../view/faceLine.js';
import { chambersOf, type MirroredRow } from '../mirror.js';
import type { TablePage, TableRow } from '../pages.js';
import { lengthCell } from './pole.js';
import { say, WORDS } from '../../words/say.js';

/** Where the height of a chamber's end is taken: just beyond its eased corner, as a share of the cutter's radius. */
const BEYOND_CORNER = 1.2;

/**
 * What a tape says about a row: where each chamber begins and ends along the face, how far its ends lie from deck and
 * bottom line, how deep it is.
 */
export function markingTable(plan: Plan, { row, mirror, far }: MirroredRow): TablePage {
  const { units, chambers: spec } = plan.job;
  const line = faceLineAt(plan.board, row.face);
  const others = mirror ? chambersOf(plan, mirror) : [];
  const { columns } = WORDS.marking;
  const title = say(WORDS.marking.title, { row: [row.id, ...(mirror ? [mirror.id] : [])].join(WORDS.joinWith) });
  return {
    kind: 'table',
    title: far ? say(WORDS.face.titleFar, { title, face: row.face.id }) : title,
    notes: [...faceNotes(plan, { row, ...(mirror && { mirror }), ...(far && { far }) }), ...WORDS.marking.notes],
    columns: columnsOf(
      [columns.chamber, 'text'],
      [columns.from, 'number'],
      [columns.to, 'number'],
      [columns.underDeckFrom, 'number'],
      [columns.overBottomFrom, 'number'],
      [columns.underDeckTo, 'number'],
      [columns.overBottomTo, 'number'],
      [columns.deep, 'text'],
    ),
    rows: chambersOf(plan, row).map((chamber, i): TableRow => {
      const s = chamber.contour.map((v) => v.x);
      const [from, to] = [Math.min(...s), Math.max(...s)];
      const inset = Math.min((BEYOND_CORNER * spec.cutterDiameter) / 2, (to - from) / 2);
      const ends = [from + inset, to - inset].flatMap((at) => {
        const edge = spanAt(chamber.profile, at);
        const skin = line.heightsAt(at);
        return edge && skin
          ? [lengthCell(skin.deck - edge[1], units, 'skin'), lengthCell(edge[0] - skin.bottom, units, 'skin')]
          : ['', ''];
      });
      const id = others[i] ? `${chamber.id} ${others[i].id}` : chamber.id;
      return {
        kind: 'row',
        cells: [
          id,
          lengthCell(from, units, 'noseEnd'),
          lengthCell(to, units, 'tailEnd'),
          ...ends,
          depthWords(chamber, row, plan),
        ],
      };
    }),
  };
}
