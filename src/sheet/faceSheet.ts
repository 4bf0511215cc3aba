import { keepOutsOn } from '../chamber/keepOut.js';
import { blockedBy } from '../chamber/obstacle.js';
import { printLength } from '../length/length.js';
import type { Plan } from '../plan.js';
import { benchOf, type Bench } from './bench.js';
import { chamberMark } from './chamberMark.js';
import { depthWords } from './depthWords.js';
import type { Drawing, Shape } from './drawing.js';
import { finishedLineAt, type FinishedLine } from './finished.js';
import { heightFitting, widthOf } from './lettering.js';
import { chambersOf, type MirroredRow } from './mirror.js';
import { edgeOf, poleMarksOf, stationsOf } from './poleMarks.js';
import { circle, line, polygon, text } from './primitives.js';
import { webMark } from './web.js';
import { say, WORDS } from './words.js';

/** How far marks stand out from the finished line, mm, and how large what is written at them. */
const TICK = 12;
const LETTERS = 5;
/** From the end of a tick to the middle of its words, mm. */
const BESIDE = 5;

/**
 * The face sheet of a row at full size: the finished deck and bottom line where the joint was, the chambers with numbers and depths, webs,
 * pole marks above the deck line, stations below the bottom line, keep-outs. Seen by the one who marks the face, deck up. One sheet
 * serves a row and its mirror image.
 */
export function faceSheet(plan: Plan, { row, mirror }: MirroredRow): Drawing {
  const { units } = plan.job;
  const bench = benchOf(row.face, plan.board.length);
  const line = finishedLineAt(plan.board, row.face);
  const chambers = chambersOf(plan, row);
  const others = mirror ? chambersOf(plan, mirror) : [];
  const notes = notesOf({ row, ...(mirror && { mirror }) }, bench);
  return {
    id: `face-${row.id}`,
    title: mirror
      ? say(WORDS.face.titleMirror, { row: row.id, other: mirror.id })
      : say(WORDS.face.title, { row: row.id }),
    notes,
    shapes: [
      ...line.loops.map((loop) =>
        polygon('outline', bench.noseAt === 'left' ? loop : [...loop].reverse().map(([s, z]) => bench.point(s, z))),
      ),
      ...chambers.slice(1).flatMap((chamber, i) => webMark(chambers[i]!, chamber, bench, units)),
      ...chambers.flatMap((chamber, i) =>
        chamberMark(chamber, bench, depthWords(chamber, row, plan), others[i] ? [others[i].id] : []),
      ),
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

function notesOf({ row, mirror }: MirroredRow, bench: Bench): string[] {
  const place = { piece: row.piece, joint: row.face.joint };
  const members = row.members
    .map(({ id, kind }) => say(WORDS.face.member, { id, kind: WORDS.kind[kind] }))
    .join(WORDS.joinWith);
  return [
    mirror
      ? say(WORDS.face.whereMirror, { ...place, otherPiece: mirror.piece, otherJoint: mirror.face.joint })
      : say(WORDS.face.where, place),
    say(WORDS.face.members, { members }),
    say(WORDS.face.noseAt, { side: WORDS.face.side[bench.noseAt] }),
    say(WORDS.face.pole, { edge: edgeOf(row) }),
    ...(mirror ? [say(WORDS.face.turn, { other: mirror.id })] : []),
  ];
}

/** Where the chambers are centred: from over the deck line to the chamber and on to under the bottom line, so that nothing crosses its number. */
function poleTicks(plan: Plan, { row }: MirroredRow, line_: FinishedLine, bench: Bench): Shape[] {
  const { units, chambers: spec } = plan.job;
  const longest = widthOf('B00', LETTERS);
  return poleMarksOf(plan, row).flatMap(({ name, s }): Shape[] => {
    const heights = line_.heightsAt(s);
    if (!heights) return [];
    const { deck, bottom } = heights;
    const at = printLength(s, units);
    const both = say(WORDS.face.mark, { mark: name, at });
    const words = widthOf(both, LETTERS) < spec.pitch ? both : longest < spec.pitch ? name : '';
    return [
      line('mark', bench.point(s, deck), bench.point(s, deck + TICK)),
      line('mark', bench.point(s, bottom), bench.point(s, bottom - TICK)),
      text(words, bench.point(s, deck + TICK + BESIDE), LETTERS),
    ];
  });
}

/** The stations of the board, under the bottom line; the nearer ones to a pole mark further down, clear of its tick. */
function stationTicks(plan: Plan, { row }: MirroredRow, line_: FinishedLine, bench: Bench): Shape[] {
  const { along } = row.face;
  let free = -Infinity;
  return stationsOf(plan).flatMap((x): Shape[] => {
    const s = x / along[0];
    const heights = line_.heightsAt(s);
    if (!heights) return [];
    const words = say(WORDS.face.station, { at: printLength(x, plan.job.units) });
    const half = widthOf(words, 3.5) / 2;
    const fits = s - half > free;
    if (fits) free = s + half;
    return [
      line('mark', bench.point(s, heights.bottom), bench.point(s, heights.bottom - TICK)),
      ...(fits ? [text(words, bench.point(s, heights.bottom - TICK - BESIDE), 3.5)] : []),
    ];
  });
}

/** The places of the row that hold no chamber say so, where there is room. */
function solidPlaces(plan: Plan, { row }: MirroredRow, line_: FinishedLine, bench: Bench): Shape[] {
  const held = new Set(chambersOf(plan, row).map(({ place }) => place));
  return poleMarksOf(plan, row).flatMap(({ place, s }): Shape[] => {
    const heights = line_.heightsAt(s);
    if (held.has(place) || !heights) return [];
    const words = WORDS.face.solid;
    const tall = heights.deck - heights.bottom - 4;
    const height = heightFitting(words, { width: plan.job.chambers.pitch * 0.6, height: tall / 2 }, 7, 2.5);
    return height ? [text(words, bench.point(s, (heights.deck + heights.bottom) / 2), height)] : [];
  });
}

/** What of the face a keep-out takes from the chambers of this row, with its name: from deck to bottom, or as far as it reaches in. */
function keepOutBands(plan: Plan, { row }: MirroredRow, line_: FinishedLine, bench: Bench): Shape[] {
  const deep = Math.max(...chambersOf(plan, row).map(({ depth }) => depth[1]));
  return keepOutsOn(plan.board, plan.layup, plan.job).flatMap((obstacle): Shape[] => {
    const blocked = blockedBy(obstacle, row, deep);
    if (!blocked) return [];
    const { from, to, low, high } = blocked;
    const heights = line_.heightsAt((from + to) / 2);
    if (!heights) return [];
    const corner = (s: number, up: boolean): readonly [number, number] => {
      const skin = line_.heightsAt(s) ?? heights;
      return bench.point(s, up ? Math.min(high, skin.deck) : Math.max(low, skin.bottom));
    };
    const bottom = Math.max(low, heights.bottom);
    const tall = Math.min(high, heights.deck) - bottom;
    const room = { width: to - from - 4, height: tall / 2 };
    const letters = heightFitting(obstacle.name, room, 5, 2.5);
    return [
      polygon('keepout', [corner(from, false), corner(to, false), corner(to, true), corner(from, true)]),
      ...(letters ? [text(obstacle.name, bench.point((from + to) / 2, bottom + tall * 0.75), letters)] : []),
    ];
  });
}

/** The glue on this face's joint: each dot, and each smear as a line along its middle with a dot at either end. */
function glueMarks({ glue }: Plan, { row }: MirroredRow, bench: Bench): Shape[] {
  const spot = (s: number, z: number, diameter: number) => circle('dot', ...bench.point(s, z), diameter / 2, 'dark');
  return [
    ...glue.dots.filter(({ joint }) => joint === row.face.joint).map(({ s, z, diameter }) => spot(s, z, diameter)),
    ...glue.smears
      .filter(({ joint }) => joint === row.face.joint)
      .flatMap(({ from, to, width }): Shape[] => [
        line('dot', bench.point(...from), bench.point(...to)),
        spot(...from, width),
        spot(...to, width),
      ]),
  ];
}

/** At both ends of the face: how far it is from the nose tip, and what joint and piece this is, in large letters over the ends. */
function endMarks(plan: Plan, { row }: MirroredRow, { from, to, heightsAt }: FinishedLine, bench: Bench): Shape[] {
  const { units } = plan.job;
  return [from, to].flatMap((s, i): Shape[] => {
    const z = heightsAt(s)?.deck ?? 0;
    const outward = (i === 0) === (bench.noseAt === 'left') ? -1 : 1;
    const [x] = bench.point(s, z);
    const words = say(WORDS.face.begins, { length: printLength(s * row.face.along[0], units) });
    const away = x + outward * 4;
    const align = outward < 0 ? 'right' : 'left';
    const end = i === 0 ? WORDS.nose : WORDS.tail;
    const joint = say(WORDS.face.jointAt, { joint: row.face.joint, piece: row.piece });
    return [
      text(end, [away, z + 7], 7, align),
      text(joint, [away, z - 3], 5, align),
      text(words, [away, z - 10], 3.5, align, { layer: 'dimension' }),
    ];
  });
}
