import { columnsOf, row as rowOf } from '../table.js';
import { printAs, type Acted } from '../../length/rounded.js';
import { printLength } from '../../length/length.js';
import type { Plan } from '../../plan.js';
import { reachOf } from './chamberEnds.js';
import { depthWords } from './depthWords.js';
import { faceNotes } from './faceSheet.js';
import { faceLineAt } from '../../view/faceLine.js';
import { chambersOf, type MirroredRow } from '../mirror.js';
import { offsetsOf, type MarkedLine, type Offset } from './offsets.js';
import type { Cell, TablePage, TableRow } from '../pages.js';
import { lengthCell } from './pole.js';
import { say, WORDS } from '../../words/say.js';

/** A corner further than this from where its chamber begins or ends says where it lies: the end leans. mm. */
const UPRIGHT = 0.3;

/**
 * What a tape says about a row: where each chamber begins and ends along the face, how far the corners of its ends lie
 * from deck and bottom line, what its long lines go through between them, how deep it is.
 */
export function markingTable(plan: Plan, { row, mirror, far }: MirroredRow): TablePage {
  const line = faceLineAt(plan.board, row.face);
  const others = mirror ? chambersOf(plan, mirror) : [];
  const { columns } = WORDS.marking;
  const title = say(WORDS.marking.title, { row: [row.id, ...(mirror ? [mirror.id] : [])].join(WORDS.joinWith) });
  return {
    kind: 'table',
    title: far ? say(WORDS.face.titleFar, { title, face: row.face.id }) : title,
    notes: [
      ...faceNotes(plan, { row, ...(mirror && { mirror }), ...(far && { far }) }),
      ...WORDS.marking.notes.map((note) => say(note, { radius: printLength(radiusOf(plan), plan.job.units) })),
    ],
    columns: columnsOf(
      [columns.chamber, 'text'],
      [columns.from, 'number'],
      [columns.to, 'number'],
      [columns.underDeckFrom, 'number'],
      [columns.underDeckBetween, 'number'],
      [columns.underDeckTo, 'number'],
      [columns.overBottomFrom, 'number'],
      [columns.overBottomBetween, 'number'],
      [columns.overBottomTo, 'number'],
      [columns.deep, 'text'],
    ),
    rows: chambersOf(plan, row).flatMap((chamber, i): TableRow[] => {
      const { from, to } = reachOf(chamber);
      const id = others[i] ? `${chamber.id} ${others[i].id}` : chamber.id;
      const lines = offsetsOf(chamber, line);
      const [deck, bottom] = [heightCells(lines.upper, from, to, plan), heightCells(lines.lower, from, to, plan)];
      const between = (cells: typeof deck, k: number): Cell => cells.between[k] ?? '';
      const bends = Math.max(deck.between.length, bottom.between.length);
      return [
        rowOf(
          id,
          lengthCell(from, plan.job.units, 'noseEnd'),
          lengthCell(to, plan.job.units, 'tailEnd'),
          deck.nose,
          between(deck, 0),
          deck.tail,
          bottom.nose,
          between(bottom, 0),
          bottom.tail,
          depthWords(chamber, row, plan),
        ),
        ...Array.from({ length: bends - 1 }, (_, k) =>
          rowOf(id, '', '', '', between(deck, k + 1), '', '', between(bottom, k + 1), '', ''),
        ),
      ];
    }),
  };
}

/** What the corners of chambers are rounded with. */
const radiusOf = ({ job }: Plan): number => job.chambers.cutterDiameter / 2;

/** A long line's heights: at its ends, with where they lie when an end leans, and what it goes through between. */
function heightCells({ nose, tail, between }: MarkedLine, from: number, to: number, { job: { units } }: Plan) {
  const height = ({ height: mm }: Offset) => lengthCell(mm, units, 'skin');
  const at = (offset: Offset, where: string): Cell => {
    const { value, text } = height(offset) as Extract<Cell, object>;
    return { value, text: say(WORDS.marking.at, { height: text, where }) };
  };
  const end = (offset: Offset, place: number, kind: Acted): Cell =>
    Math.abs(offset.s - place) <= UPRIGHT ? height(offset) : at(offset, printAs(kind, offset.s, units));
  const [middle] = between;
  return {
    nose: end(nose, from, 'noseEnd'),
    tail: end(tail, to, 'tailEnd'),
    between: !middle
      ? [WORDS.marking.straight]
      : between.length === 1
        ? [height(middle)]
        : between.map((bend) => at(bend, printLength(bend.s, units))),
  };
}
