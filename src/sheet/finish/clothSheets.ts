import words from '../../../templates/finish.json' with { type: 'json' };
import type { Point } from '../../contour/point.js';
import type { LaminatedSide } from '../../finish/finishOf.js';
import { USUAL_GLASS } from '../../job/usual-glass.js';
import { printLength } from '../../length/length.js';
import type { Plan } from '../../plan.js';
import { say } from '../../words/say.js';
import type { Caption, Drawing, Shape } from '../drawing.js';
import { legendOf } from '../legendOf.js';
import { line, polygon, text } from '../primitives.js';
import { finishOnce } from './finishOnce.js';

/** Height of letters, mm. */
const LETTERS = 5;
/** Length of a mark, mm. */
const TICK = 20;
/** Between points of the cut, mm; at its ends, where it turns, as shares of the lap. */
const STEP = 10;
const TURN = 24;
/** Sides that differ by less are cut as one, mm. */
const ALIKE = 0.5;

/**
 * The cut of a layer of cloth with its laps, laid flat at full size: of each side that is laminated half of it, or both
 * halves where left and right differ.
 */
export function clothSheets(plan: Plan): Drawing[] {
  return finishOnce(plan).sides.flatMap((of) =>
    of.outline.every(({ left, right }) => Math.abs(left - right) < ALIKE)
      ? [half(of, 'right', 'both', plan)]
      : [half(of, 'right', 'right', plan), half(of, 'left', 'left', plan)],
  );
}

/** Half a cloth, nose on the left, its straight edge along the centreline at `y` = 0; `x` along the tape. */
function half(
  { side, girths, outline, cutOut, layers }: LaminatedSide,
  of: 'left' | 'right',
  serves: 'both' | 'left' | 'right',
  { job }: Plan,
): Drawing {
  const { units, glass = USUAL_GLASS } = job;
  const { lap } = glass;
  const w = words.sheet;
  const end = girths.at(-1)!.along;
  const cut = placesTo(end, lap).map((x): Point => [x, cutOut[of](x)]);
  const edge = girths.map((girth): Point => [girth.along, girth[of]]);
  const print = (mm: number) => printLength(mm, units);
  const named = { side: w.side[side], half: w.half[serves] };
  const title = say(w.title, named);
  const inside = outline.filter(({ along }) => along > 0 && along < end);
  return {
    id: `cloth-${side}${serves === 'both' ? '' : `-${serves}`}`,
    title,
    name: title,
    notes: [say(w.note[serves], { layers: layers.length, lap: print(lap) })],
    legend: legendOf('cloth'),
    units,
    shapes: [
      polygon('cut', [[-lap, 0], ...cut, [end + lap, 0]]),
      line('edge', ...edge),
      ...inside.flatMap((girth) => ticksAt(girth.along, girth[of])),
    ],
    captions: [
      captionAt(say(w.nose, named), [10, 60, 120], 'left'),
      captionAt(
        w.tail,
        [10, 60, 120].map((off) => end - off),
        'right',
      ),
      ...inside.map(({ along, [of]: out }): Caption => {
        const said = say(w.station, { at: print(along), out: print(out) });
        const beside: Point = [along, out - TICK / 2];
        const ups = [0.5, 0.3, 0.8, 1.3].flatMap((share) => [out - share * TICK, share * TICK]);
        return {
          places: ups.flatMap((up) => [
            [text(said, [along + 2, up], LETTERS, 'left')],
            [text(said, [along - 2, up], LETTERS, 'right')],
          ]),
          beside,
        };
      }),
    ],
  };
}

/** A station's mark at the centreline and at the apex: what runs between them would lie under seams. */
function ticksAt(along: number, out: number): Shape[] {
  if (out <= 2 * TICK) return [line('mark', [along, 0], [along, out])];
  return [line('mark', [along, 0], [along, TICK]), line('mark', [along, out - TICK], [along, out])];
}

/** Places along the cut from nose to tail: close together where it turns about the ends. */
function placesTo(end: number, lap: number): number[] {
  const turn = Array.from({ length: TURN }, (_, i) => lap * (1 - Math.cos((i / TURN) * (Math.PI / 2))));
  const count = Math.ceil(end / STEP);
  return [
    ...turn.map((x) => x - lap),
    ...Array.from({ length: count + 1 }, (_, i) => (i / count) * end),
    ...turn.toReversed().map((x) => end + lap - x),
  ];
}

function captionAt(said: string, places: readonly number[], align: 'left' | 'right'): Caption {
  return { places: places.map((x) => [text(said, [x, 2 * LETTERS], LETTERS, align)]) };
}
