import type { Point } from '../../contour/point.js';
import words from '../../../templates/dots.json' with { type: 'json' };
import type { Dot, Smear } from '../../dot/dot.js';
import { jointFaces, type JointFace } from '../../dot/jointFace.js';
import { printLength } from '../../length/length.js';
import type { Vertex } from '../../contour/vertex.js';
import type { Plan } from '../../plan.js';
import type { Caption, Drawing, Shape } from '../drawing.js';
import { faceLineAt, type FaceLine } from '../../view/faceLine.js';
import { legendOf } from '../legendOf.js';
import { wrapped } from '../lettering.js';
import { circle, contour, line, polygon, text } from '../primitives.js';
import { areMirroredJoints } from '../../symmetry/pairs.js';
import { say } from '../../words/say.js';

/** Arms of the cross at a dot's middle stand out by so much, mm. */
const ARM = 4;
/** Letters of a dot's name, of its place, and of notes, mm. */
const NAME = 7;
const LETTERS = 5;
const SMALL = 3.5;
/** How wide the notes run, mm. */
const NOTES_WIDTH = 120;
/** The ends of a blank that is no box are drawn so far over and under the joint, mm. */
const SPARE = 10;

/** The dotted joints that hold glue, left to right. */
export function dottedJoints(plan: Plan): JointFace[] {
  const glued = new Set([...plan.glue.dots, ...plan.glue.smears].map(({ joint }) => joint));
  return jointFaces(plan.layup).filter(({ joint }) => glued.has(joint.id));
}

/** A joint and, where there is one, the joint on the other side that is its mirror image. */
export interface MirroredJoint extends JointFace {
  readonly mirror?: JointFace;
}

/** The joints that need a sheet of their own: of two that mirror each other the right one, with the left beside it. */
export function sheetJoints(plan: Plan): MirroredJoint[] {
  const all = dottedJoints(plan);
  const mirrorOf = ({ joint }: JointFace) =>
    joint.at > 0 ? all.find((other) => areMirroredJoints(plan, joint, other.joint)) : undefined;
  const taken = new Set(all.map(mirrorOf));
  return all.filter((at) => !taken.has(at)).map((at) => ({ ...at, ...(mirrorOf(at) && { mirror: mirrorOf(at)! }) }));
}

/** Where the nose end of the rough blank lies on a joint, `s`, mm: places are told from there. */
export function blankStart(plan: Plan, { face }: JointFace): number {
  return -plan.job.dots.blank.nose / face.along[0];
}

/** How far a place on a joint lies over the finished bottom line and under the finished deck line there, mm. */
export function heightsOn(finished: FaceLine, s: number, z: number): { over: number; under: number } {
  // Beyond the board's ends there is no line; no dot lies there.
  const { bottom, deck } = finished.heightsAt(s) ?? { bottom: 0, deck: 0 };
  return { over: z - bottom, under: deck - z };
}

/**
 * The dots of one joint at full size on the rough blank, as the glue goes on: the blank's ends, the finished deck and
 * bottom line between them, each dot with its place from the blank's end and from those two lines. Seen from the left
 * of the joint, nose at the left, deck up.
 */
export function dotsSheet(plan: Plan, at: MirroredJoint): Drawing {
  const { units, dots: spec } = plan.job;
  const { blank } = spec;
  const finished = faceLineAt(plan.board, at.face);
  const start = blankStart(plan, at);
  const end = (plan.board.length + blank.tail) / at.face.along[0];
  const heights = finished.loops.flat().map(([, z]) => z);
  const isBox = blank.thickness !== undefined;
  const top = isBox ? blank.thickness - blank.below : Math.max(...heights) + SPARE;
  const low = isBox ? -blank.below : Math.min(...heights) - SPARE;
  const print = (mm: number) => printLength(mm, units);
  const values = {
    joint: at.joint.id,
    other: at.mirror?.joint.id ?? '',
    nose: print(blank.nose),
    below: print(blank.below),
    diameter: print(spec.diameter),
  };
  const notes = [...words.notes, ...(isBox ? [words.box] : []), ...(at.mirror ? [words.mirror] : [])]
    .map((note) => say(note, values))
    .concat(words.care);
  const placeOf = ({ s, z }: Dot): string[] => {
    const { over, under } = heightsOn(finished, s, z);
    return [
      say(words.place, { along: print(s - start) }),
      say(words.heights, { over: print(over), under: print(under) }),
    ];
  };
  const { joint } = at;
  const dots = plan.glue.dots.filter((dot) => dot.joint === joint.id);
  const smears = plan.glue.smears.filter((smear) => smear.joint === joint.id);
  const title = say(at.mirror ? words.titleMirror : words.title, values);
  return {
    id: `dots-${joint.id}`,
    title,
    notes,
    name: say(words.name, { title }),
    legend: legendOf('dots'),
    captions: [
      ...dots.map((dot) => dotWords(dot, placeOf(dot))),
      ...smears.map(smearWords),
      alongEdge(words.blank, start + 2 * ARM, end, top - 2 * LETTERS),
      ...(isBox ? [alongEdge(words.underside, start + 2 * ARM, end, low + LETTERS)] : []),
      ...notesBelow(notes, start + 2 * ARM, end, low - 2 * LETTERS),
    ],
    shapes: [
      ...blankEdges(start, end, low, top, isBox),
      ...finished.loops.map((loop) => polygon('edge', loop)),
      ...dots.flatMap(dotMark),
      ...smears.map(smearMark),
    ],
  };
}

/** The blank's box where it is one; else only its ends: strips are sawn to the rocker. */
function blankEdges(from: number, to: number, low: number, high: number, isBox: boolean): Shape[] {
  const corners: Point[] = [
    [from, high],
    [from, low],
    [to, low],
    [to, high],
  ];
  if (isBox) return [polygon('joint', corners)];
  return [from, to].map((s) => line('joint', [s, low], [s, high]));
}

function dotMark({ s, z, diameter }: Dot): Shape[] {
  const out = diameter / 2 + ARM;
  return [
    { ...circle('dot', s, z, diameter / 2), hatch: 'light' },
    line('mark', [s - out, z], [s + out, z]),
    line('mark', [s, z - out], [s, z + out]),
  ];
}

/**
 * A dot's name and place: over it or under it, beside it, or further off on a leader where the finished line or a seam
 * is in the way.
 */
function dotWords({ id, s, z, diameter }: Dot, place: readonly string[]): Caption {
  const out = diameter / 2 + ARM;
  const pitch = 1.6 * LETTERS;
  const both = NAME + place.length * pitch;
  const block = (x: number, y: number, align: 'left' | 'centre' | 'right'): Shape[] => [
    text(id, [x, y + (both - NAME) / 2], NAME, align),
    ...place.map((words_, i) => text(words_, [x, y + both / 2 - NAME - (i + 0.6) * pitch], LETTERS, align)),
  ];
  const near = [
    block(s, z + out + both / 2 + 2, 'centre'),
    block(s, z - out - both / 2 - 2, 'centre'),
    block(s + out + 2, z, 'left'),
    block(s - out - 2, z, 'right'),
  ];
  const far = [20, 35, 50, 65].flatMap((up) =>
    [0, 25, -25, 50, -50, 75, -75].flatMap((along) =>
      [1, -1].map((side): Shape[] => {
        const y = z + side * (out + up);
        const foot: Point = [s + along, y - side * (both / 2 + 1.5)];
        return [...block(s + along, y, 'centre'), line('dimension', [s, z + (side * diameter) / 2], foot)];
      }),
    ),
  );
  return { places: [...near, ...far] };
}

/** Places along an edge, from its beginning on, for what it is called. */
function alongEdge(name: string, from: number, to: number, y: number): Caption {
  const starts = Array.from({ length: 1 + Math.floor(Math.max(0, to - from) / 40) }, (_, i) => from + 40 * i);
  return { places: starts.map((x) => [text(name, [x, y], LETTERS, 'left')]) };
}

/** What the sheet shows, each sentence in lines that fit a page, under the blank near its nose end. */
function notesBelow(notes: readonly string[], from: number, to: number, top: number): Caption[] {
  const starts = Array.from({ length: 1 + Math.floor(Math.max(0, to - from) / 40) }, (_, i) => from + 20 * i);
  let down = 0;
  return notes.map((note) => {
    const lines = wrapped(note, NOTES_WIDTH, SMALL);
    const first = top - down;
    down += 1.6 * SMALL * lines.length + 2;
    const places = [0, 2, 4, 6].flatMap((level) =>
      starts.map((x) => lines.map((words_, i) => text(words_, [x, first - 1.6 * SMALL * (level + i)], SMALL, 'left'))),
    );
    return { places };
  });
}

/** A streak with round ends. A bulge of 1 is half a circle. */
function smearMark({ from, to, width }: Smear): Shape {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [us, uz] = length > 0 ? [(to[0] - from[0]) / length, (to[1] - from[1]) / length] : [1, 0];
  const half = width / 2;
  const beside = ([s, z]: Point, side: 1 | -1): Vertex => ({ x: s - side * half * uz, y: z + side * half * us });
  const outline: Vertex[] = [
    beside(from, -1),
    { ...beside(to, -1), bulge: 1 },
    beside(to, 1),
    { ...beside(from, 1), bulge: 1 },
  ];
  return contour('dot', outline, 'medium');
}

function smearWords({ id, from, to, width }: Smear): Caption {
  const [x, half] = [(from[0] + to[0]) / 2, width / 2];
  const over = Math.max(from[1], to[1]) + half;
  const under = Math.min(from[1], to[1]) - half;
  const levels = [LETTERS, 2 * LETTERS, 4 * LETTERS].flatMap((off) => [over + off, under - off]);
  return { places: levels.flatMap((y) => [0, 20, -20].map((along) => [text(id, [x + along, y], LETTERS)])) };
}
