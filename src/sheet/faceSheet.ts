import type { Plan } from '../plan.js';
import { benchOf, type Bench } from './bench.js';
import { chamberMark } from './chamberMark.js';
import { faceWords } from './depthWords.js';
import type { Drawing, Shape } from './drawing.js';
import { BESIDE, endMarks, poleTicks, solidPlaces, stationTicks, TICK } from './faceMarks.js';
import { glueMarks, keepOutBands } from './faceObstacles.js';
import { finishedLineAt, type FinishedLine } from './finished.js';
import { guideMarks } from './guideMarks.js';
import { widthOf } from './lettering.js';
import { routingOf } from './routingOf.js';
import { chambersOf, type MirroredRow } from './mirror.js';
import { edgeOf } from './poleMarks.js';
import { polygon, text } from './primitives.js';
import { webMark } from './web.js';
import { say, WORDS } from './words.js';

/**
 * The face sheet of a row at full size: the finished deck and bottom line where the joint was, the chambers with numbers and depths, webs,
 * pole marks above the deck line, stations below the bottom line, keep-outs. Seen by the one who marks the face, deck up. One sheet
 * serves a row and its mirror image.
 */
export function faceSheet(plan: Plan, { row, mirror, far = false }: MirroredRow): Drawing {
  const { units } = plan.job;
  const bench = benchOf(row.face, plan.board.length);
  const line = finishedLineAt(plan.board, row.face);
  const chambers = chambersOf(plan, row);
  const others = mirror ? chambersOf(plan, mirror) : [];
  const glue = plan.glue.dots.filter(({ joint }) => joint === row.face.joint);
  const notes = notesOf(
    { row, ...(mirror && { mirror }), far },
    bench,
    chambers.some((each) => routingOf(plan, each).from.length > 1),
  );
  return {
    id: faceName({ row, far }),
    title: titleOf({ row, ...(mirror && { mirror }), far }),
    notes,
    shapes: [
      ...line.loops.map((loop) =>
        polygon('outline', bench.noseAt === 'left' ? loop : [...loop].reverse().map(([s, z]) => bench.point(s, z))),
      ),
      ...chambers.slice(1).flatMap((chamber, i) => webMark(chambers[i]!, chamber, bench, units, glue)),
      ...chambers.flatMap((chamber, i) =>
        chamberMark(chamber, bench, faceWords(chamber, row, plan), others[i] ? [others[i].id] : []),
      ),
      ...guideMarks(plan, { row }, bench),
      ...poleTicks(plan, { row }, line, bench),
      ...stationTicks(plan, { row }, line, bench),
      ...solidPlaces(plan, { row }, line, bench),
      ...keepOutBands(plan, { row }, line, bench),
      ...glueMarks(plan, { row }, bench),
      ...endMarks(plan, { row }, line, bench),
      ...notesOnSheet(notes, plan, line, bench),
    ],
  };
}

/** What the sheet shows, at its nose end under the bottom line, large enough to be read at the bench. */
function notesOnSheet(
  notes: readonly string[],
  { board }: Plan,
  { from, heightsAt }: FinishedLine,
  bench: Bench,
): Shape[] {
  const letters = 3.5;
  const start = from + 8;
  const reach = start + Math.max(...notes.map((note) => widthOf(note, letters)));
  let low = Infinity;
  for (let s = start; s <= Math.min(reach, board.length); s += 10)
    low = Math.min(low, heightsAt(s)?.bottom ?? Infinity);
  const top = low - TICK - 2 * BESIDE - letters;
  const align = bench.noseAt === 'left' ? 'left' : 'right';
  return notes.map((note, i) => text(note, [bench.x(start), top - 2 * letters * i], letters, align));
}

/** What a face sheet is called by: `face-R2`, `face-C1-far`. */
export function faceName({ row, far }: MirroredRow): string {
  return far ? `face-${row.id}-far` : `face-${row.id}`;
}

function titleOf({ row, mirror, far }: MirroredRow): string {
  const title = mirror
    ? say(WORDS.face.titleMirror, { row: row.id, other: mirror.id })
    : say(WORDS.face.title, { row: row.id });
  return far ? say(WORDS.face.titleFar, { title, face: row.face.id }) : title;
}

function notesOf({ row, mirror, far }: MirroredRow, bench: Bench, halves: boolean): string[] {
  const { joint, id: face, on } = row.face;
  const place = { piece: row.piece, joint, face, on: WORDS.face.on[on] };
  const members = row.members
    .map(({ id, kind }) => say(WORDS.face.member, { id, kind: WORDS.kind[kind] }))
    .join(WORDS.joinWith);
  return [
    mirror
      ? say(WORDS.face.whereMirror, {
          ...place,
          otherPiece: mirror.piece,
          otherJoint: mirror.face.joint,
          otherFace: mirror.face.id,
        })
      : say(WORDS.face.where, place),
    say(WORDS.face.members, { members }),
    say(WORDS.face.noseAt, { side: WORDS.face.side[bench.noseAt] }),
    say(WORDS.face.pole, { edge: edgeOf(row) }),
    ...(mirror ? [say(WORDS.face.turn, { other: mirror.id })] : []),
    ...(halves ? [say(far ? WORDS.face.secondHalf : WORDS.face.firstHalf, { joint: row.through?.joint ?? '' })] : []),
  ];
}
