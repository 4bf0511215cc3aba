import { printLength } from '../length/length.js';
import type { Plan } from '../plan.js';
import type { Bench } from './bench.js';
import type { Shape } from './drawing.js';
import type { FinishedLine } from './finished.js';
import { heightFitting, widthOf } from './lettering.js';
import { chambersOf, type MirroredRow } from './mirror.js';
import { poleMarksOf, stationsOf } from './poleMarks.js';
import { line, text } from './primitives.js';
import { say, WORDS } from './words.js';

/** How far marks stand out from the finished line, mm, and how large what is written at them. */
export const TICK = 12;
const LETTERS = 5;
/** From the end of a tick to the middle of its words, mm. */
export const BESIDE = 5;

/** Where the chambers are centred: from over the deck line to the chamber and on to under the bottom line, so that nothing crosses its number. */
export function poleTicks(plan: Plan, { row }: MirroredRow, line_: FinishedLine, bench: Bench): Shape[] {
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
export function stationTicks(plan: Plan, { row }: MirroredRow, line_: FinishedLine, bench: Bench): Shape[] {
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
export function solidPlaces(plan: Plan, { row }: MirroredRow, line_: FinishedLine, bench: Bench): Shape[] {
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

/** At both ends of the face: how far it is from the nose tip, and what joint and piece this is, in large letters over the ends. */
export function endMarks(
  plan: Plan,
  { row }: MirroredRow,
  { from, to, heightsAt }: FinishedLine,
  bench: Bench,
): Shape[] {
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
