import type { Point } from '../../contour/point.js';
import { printLength } from '../../length/length.js';
import type { Plan } from '../../plan.js';
import type { FaceOnBench } from './faceOnBench.js';
import type { Caption, Shape } from '../drawing.js';
import type { FaceLine } from '../../view/faceLine.js';
import { chambersOf, type MirroredRow } from '../mirror.js';
import { poleMarksOf, stationsOf } from './poleMarks.js';
import { line, text } from '../primitives.js';
import { say, WORDS } from '../../words/say.js';

/** How far marks reach in from the finished line, mm, and how large what is written at them. */
export const TICK = 7;
const LETTERS = 5;
const SMALL = 3.5;
/** From the finished line to the middle of the words beyond it, mm. */
export const BESIDE = 5;

/**
 * Where the chambers are centred: from the deck line and from the bottom line inward, within the walls, so that they
 * are still there when the sheet is cut along the finished line.
 */
export function poleTicks(
  plan: Plan,
  { row }: MirroredRow,
  line_: FaceLine,
  bench: FaceOnBench,
  must: readonly [number, number],
): Shape[] {
  return poleMarksOf(plan, row).flatMap(({ s }) => (isWithin(must, bench.x(s)) ? ticksAt(s, line_, bench) : []));
}

const isWithin = ([from, to]: readonly [number, number], x: number): boolean => x >= from && x <= to;

function ticksAt(s: number, { heightsAt }: FaceLine, bench: FaceOnBench): Shape[] {
  const heights = heightsAt(s);
  if (!heights) return [];
  const { deck, bottom } = heights;
  return [
    line('mark', bench.point(s, deck), bench.point(s, deck - TICK)),
    line('mark', bench.point(s, bottom), bench.point(s, bottom + TICK)),
  ];
}

/**
 * What the marks of the pole are called and where they stand: beside their ticks, or over the deck line. Beyond the
 * stretch that a sheet must show a mark is there with its name or not at all.
 */
export function poleWords(
  plan: Plan,
  { row }: MirroredRow,
  line_: FaceLine,
  bench: FaceOnBench,
  must: readonly [number, number],
): Caption[] {
  return poleMarksOf(plan, row).flatMap(({ name, s }): Caption[] => {
    const heights = line_.heightsAt(s);
    if (!heights) return [];
    const at = printLength(s, plan.job.units);
    const edge = bench.point(s, heights.deck);
    const places = [say(WORDS.face.mark, { mark: name, at }), name].flatMap((words) => atTick(words, edge, 1, LETTERS));
    if (isWithin(must, bench.x(s))) return [{ places, beside: edge }];
    return [{ places: places.map((place) => [...place, ...ticksAt(s, line_, bench)]), optional: true }];
  });
}

/** The stations of the board, on the bottom line. */
export function stationTicks(plan: Plan, { row }: MirroredRow, line_: FaceLine, bench: FaceOnBench): Shape[] {
  return stationsOn(plan, row, line_).map(({ s, bottom }) =>
    line('mark', bench.point(s, bottom), bench.point(s, bottom + TICK)),
  );
}

/** What the stations are called. */
export function stationWords(plan: Plan, { row }: MirroredRow, line_: FaceLine, bench: FaceOnBench): Caption[] {
  return stationsOn(plan, row, line_).map(({ x, s, bottom }) => {
    const words = say(WORDS.face.station, { at: printLength(x, plan.job.units) });
    const beside = bench.point(s, bottom);
    return { places: atTick(words, beside, -1, SMALL), beside, optional: true };
  });
}

function stationsOn(plan: Plan, { face }: MirroredRow['row'], { heightsAt }: FaceLine) {
  return stationsOf(plan).flatMap((x) => {
    const s = x / face.along[0];
    const heights = heightsAt(s);
    return heights ? [{ x, s, bottom: heights.bottom }] : [];
  });
}

/**
 * Words at a tick on the finished line: to either side of it within the face, or beyond the line, further out.
 *
 * @param way up where the line is the deck's, down where it is the bottom's
 */
function atTick(words: string, [x, y]: Point, way: 1 | -1, height: number): Shape[][] {
  const beside = (off: number, up: number) => [
    [text(words, [x + off, up], height, 'left')],
    [text(words, [x - off, up], height, 'right')],
  ];
  const within = [height / 2 + 1, height / 2 + 3].map((down) => y - way * down);
  const beyond = [BESIDE, BESIDE + 8, BESIDE + 16].map((far) => y + way * far);
  return [
    ...within.flatMap((up) => beside(2, up)),
    ...within.flatMap((up) => beside(10, up)),
    ...beyond.flatMap((up) => [[text(words, [x, up], height)], ...beside(3, up)]),
  ];
}

/** The places of the row that hold no chamber say so, where there is room. */
export function solidPlaces(plan: Plan, { row }: MirroredRow, line_: FaceLine, bench: FaceOnBench): Caption[] {
  const held = new Set(chambersOf(plan, row).map(({ place }) => place));
  const { pitch } = plan.job.chambers;
  return poleMarksOf(plan, row).flatMap(({ place, s: centre }): Caption[] => {
    if (held.has(place)) return [];
    const places = [7, 5, 3.5].flatMap((height) =>
      [0, 0.1, -0.1, 0.2, -0.2, 0.3, -0.3].flatMap((off) => {
        const s = centre + off * pitch;
        const heights = line_.heightsAt(s);
        return heights ? [[text(WORDS.face.solid, bench.point(s, (heights.deck + heights.bottom) / 2), height)]] : [];
      }),
    );
    return [{ places, optional: true }];
  });
}

/**
 * At both ends of the face: how far it is from the nose tip, and what joint and piece this is, in large letters beyond
 * the ends, or within the stretch that a sheet must show.
 */
export function endMarks(
  plan: Plan,
  { row }: MirroredRow,
  { from, to, heightsAt }: FaceLine,
  bench: FaceOnBench,
  must: readonly [number, number],
): Caption[] {
  const { units } = plan.job;
  return [from, to].map((s, i): Caption => {
    const z = heightsAt(s)?.deck ?? 0;
    const outward = (i === 0) === (bench.noseAt === 'left') ? -1 : 1;
    const [x] = bench.point(s, z);
    const words = say(i === 0 ? WORDS.face.begins : WORDS.face.ends, {
      length: printLength(s * row.face.along[0], units),
    });
    const align = outward < 0 ? 'right' : 'left';
    const end = i === 0 ? WORDS.nose : WORDS.tail;
    const joint = say(WORDS.face.jointAt, { joint: row.face.joint, piece: row.piece });
    const block = (away: number, up: number, named = end) => [
      text(named, [away, z + up + 9], 7, align),
      text(joint, [away, z + up - 1], 5, align),
      text(words, [away, z + up - 9], 3.5, align),
    ];
    const beyond = [0, 10, -10, 20, -20, 30, -30].map((up) => block(x + outward * 4, up));
    const low = (away: number, up: number, named = end) => [
      text(say(WORDS.face.end, { end: named, joint }), [away, z + up + 3.5], 5, align),
      text(words, [away, z + up - 3.5], 3.5, align),
    ];
    // Within the face the end itself may be on another strip, or nowhere: an arrow leads to it.
    const toEnd = say(WORDS.face.toEnd[outward < 0 ? 'left' : 'right'], { end });
    // Where a seam lies beyond the end, over it or under it instead, in fewer lines where it is narrow.
    const shown = Math.abs(x - must[outward < 0 ? 0 : 1]);
    const inward = [0, shown].flatMap((begins) => Array.from({ length: 18 }, (_, k) => begins + 4 + 12 * k));
    const ups = [20, 27, 35, -35, -42, 50, -50, 65, -65, -14, -21, -28];
    const within = [block, low].flatMap((lines) =>
      inward.flatMap((off) => ups.map((up) => lines(x - outward * off, up, toEnd))),
    );
    const beside = [0, 7, -7, 14, -14, 21, -21].map((up) => low(x + outward * 4, up));
    return { places: [...beyond, ...beside, ...within], optional: true };
  });
}
