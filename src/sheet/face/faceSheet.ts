import type { Plan } from '../../plan.js';
import { onBench, type FaceOnBench } from './faceOnBench.js';
import type { Chamber } from '../../chamber/chamber.js';
import { arrowCaptions, chamberCaption } from './chamberMark.js';
import { faceWords } from './depthWords.js';
import type { Caption, Drawing } from '../drawing.js';
import { BESIDE, endMarks, poleTicks, poleWords, solidPlaces, stationTicks, stationWords, TICK } from './faceMarks.js';
import { glueMarks, keepOutBands, keepOutNames } from './faceObstacles.js';
import { faceLineAt, type FaceLine } from '../../view/faceLine.js';
import { guideMarks } from './guideMarks.js';
import { legendOf } from '../legendOf.js';
import { wrapped } from '../lettering.js';
import { routingOf } from './routingOf.js';
import { chambersOf, type MirroredRow } from '../mirror.js';
import { edgeOf } from './poleMarks.js';
import { contour, polygon, text } from '../primitives.js';
import { webMark, webWidth } from './web.js';
import { say, WORDS } from '../../words/say.js';

/**
 * The face sheet of a row at full size: the finished deck and bottom line where the joint was, the chambers with
 * numbers and depths, webs, pole marks above the deck line, stations below the bottom line, keep-outs. Seen by the one
 * who marks the face, deck up. One sheet serves a row and its mirror image.
 */
export function faceSheet(plan: Plan, { row, mirror, far = false }: MirroredRow): Drawing {
  const { units } = plan.job;
  const bench = onBench(row.face, plan.board.length);
  const line = faceLineAt(plan.board, row.face);
  const chambers = chambersOf(plan, row);
  const others = mirror ? chambersOf(plan, mirror) : [];
  const must = mustShow(chambers, bench);
  const notes = faceNotes(plan, { row, ...(mirror && { mirror }), far });
  const rows = [row.id, ...(mirror ? [mirror.id] : [])];
  const title = titleOf({ row, ...(mirror && { mirror }), far });
  const shown = chambers.map((chamber, i) =>
    chamberCaption(chamber, bench, line, faceWords(chamber, row, plan), others[i] ? [others[i].id] : []),
  );
  return {
    id: faceName({ row, far }),
    title,
    notes,
    name: say(WORDS.face.name[bench.noseAt], { row: rows.join(' / '), face: row.face.id }),
    sense: WORDS.face.sense[bench.noseAt],
    legend: legendOf('face'),
    must,
    captions: [
      ...shown,
      ...poleWords(plan, { row }, line, bench, must),
      ...keepOutNames(plan, { row }, line, bench),
      ...endMarks(plan, { row }, line, bench, must),
      ...stationWords(plan, { row }, line, bench),
      ...chambers.slice(1).flatMap((chamber, i) => webWidth(chambers[i]!, chamber, bench, units)),
      ...solidPlaces(plan, { row }, line, bench),
      ...chambers.flatMap((chamber) => arrowCaptions(chamber, bench)),
      ...notesOnSheet(notes, plan, line, bench),
    ],
    shapes: [
      ...line.loops.map((loop) =>
        polygon('edge', bench.noseAt === 'left' ? loop : [...loop].reverse().map(([s, z]) => bench.point(s, z))),
      ),
      ...chambers.slice(1).flatMap((chamber, i) => webMark(chambers[i]!, chamber, bench)),
      ...chambers.map((chamber) => contour('chamber', bench.contour(chamber.contour))),
      ...guideMarks(plan, { row }, bench),
      ...poleTicks(plan, { row }, line, bench, must),
      ...stationTicks(plan, { row }, line, bench),
      ...keepOutBands(plan, { row }, line, bench),
      ...glueMarks(plan, { row }, bench),
    ],
  };
}

/** How far beyond the outermost chambers a sheet goes on, mm, so that it is laid to the edges there. */
const BEYOND = 60;

/** From the first chamber to the last: before and behind them the finished line merely goes on. */
function mustShow(chambers: readonly Chamber[], bench: FaceOnBench): readonly [number, number] {
  const along = chambers.flatMap(({ contour }) => contour.map((vertex) => bench.x(vertex.x)));
  return [Math.min(...along) - BEYOND, Math.max(...along) + BEYOND];
}

/** Letters of the notes, how wide they run, and the steps in which a place is looked for, mm. */
const NOTE = { height: 3.5, width: 120, along: 60, down: 6 } as const;

/**
 * What the sheet shows, each sentence under the bottom line near its nose end, or over the deck line, where there is
 * room: the marking table says it too.
 */
function notesOnSheet(notes: readonly string[], { board }: Plan, finished: FaceLine, bench: FaceOnBench): Caption[] {
  const { height, width, along, down } = NOTE;
  const align = bench.noseAt === 'left' ? 'left' : 'right';
  const starts = Array.from({ length: Math.floor(board.length / 2 / along) }, (_, i) => finished.from + 8 + along * i);
  const edges = starts.map((start) => edgesOver(finished, start, start + width));
  return notes.map((note, n) => {
    const lines = wrapped(note, width, height);
    const block = (start: number, top: number) =>
      lines.map((words, i) => text(words, [bench.x(start), top - 1.6 * height * i], height, align));
    const places = [0, 2, 4].flatMap((level) =>
      starts.flatMap((start, i) => {
        const { bottom, deck } = edges[i]!;
        const off = TICK + 2 * BESIDE + height + (n + level) * down;
        return [block(start, bottom - off), block(start, deck + off + 1.6 * height * (lines.length - 1))];
      }),
    );
    return { places, optional: true };
  });
}

/** The lowest bottom and the highest deck over a stretch of the face. */
function edgesOver({ heightsAt }: FaceLine, from: number, to: number): { bottom: number; deck: number } {
  let [bottom, deck] = [Infinity, -Infinity];
  for (let s = from; s <= to; s += 10) {
    const heights = heightsAt(s);
    bottom = Math.min(bottom, heights?.bottom ?? Infinity);
    deck = Math.max(deck, heights?.deck ?? -Infinity);
  }
  return { bottom, deck };
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

/** What a face sheet shows, in sentences. */
export function faceNotes(plan: Plan, { row, mirror, far = false }: MirroredRow): string[] {
  const halves = chambersOf(plan, row).some((each) => routingOf(plan, each).from.length > 1);
  return notesOf({ row, ...(mirror && { mirror }), far }, onBench(row.face, plan.board.length), halves);
}

function notesOf({ row, mirror, far }: MirroredRow, bench: FaceOnBench, halves: boolean): string[] {
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
    WORDS.face.solidEnds,
    ...(halves ? [say(far ? WORDS.face.secondHalf : WORDS.face.firstHalf, { joint: row.through?.joint ?? '' })] : []),
  ];
}
