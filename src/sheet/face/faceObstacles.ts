import type { Point } from '../../contour/point.js';
import { spanAt } from '../../contour/span.js';
import type { Chamber } from '../../chamber/chamber.js';
import { keepOutsOn } from '../../chamber/keepOut.js';
import { blockedBy, type Blocked } from '../../chamber/obstacle.js';
import { stretchOf } from '../../chamber/stretch.js';
import type { Plan } from '../../plan.js';
import type { FaceOnBench } from './faceOnBench.js';
import type { Caption, Shape } from '../drawing.js';
import { type FaceLine } from '../../view/faceLine.js';
import { widthOf } from '../lettering.js';
import { chambersOf, type MirroredRow } from '../mirror.js';
import { circle, line, polygon, text } from '../primitives.js';

/** What of the face a keep-out takes from the chambers of this row: from deck to bottom, or as far as it reaches in. */
export function keepOutBands(plan: Plan, { row }: MirroredRow, line_: FaceLine, bench: FaceOnBench): Shape[] {
  return bandsOn(plan, row, line_).map(({ corners }) =>
    polygon(
      'keepout',
      corners.map(([s, z]) => bench.point(s, z)),
    ),
  );
}

/** What the keep-outs are called: in them, or beside them on a leader. */
export function keepOutNames(plan: Plan, { row }: MirroredRow, line_: FaceLine, bench: FaceOnBench): Caption[] {
  return bandsOn(plan, row, line_).map(({ name, from, to, low, high }) => {
    const middle = (from + to) / 2;
    const inside = [5, 3.5].flatMap((height) =>
      [0.5, 0.75, 0.25].flatMap((share) => {
        const at = bench.point(middle, low + share * (high - low));
        return [[text(name, at, height)], [text(name, at, height, 'centre', { angleInDegrees: 90 })]];
      }),
    );
    const spot = bench.point(middle, (low + high) / 2);
    const half = widthOf(name, 5) / 2;
    const beside = [12, 20, 28, 36].flatMap((out) =>
      [0, 1, -1, 2, -2].flatMap((step) =>
        [high + out, low - out].map((z): Shape[] => {
          const at = bench.point(middle + step * half, z);
          const foot: Point = [at[0], at[1] + (z > high ? -4 : 4)];
          return [text(name, at, 5), line('dimension', spot, foot)];
        }),
      ),
    );
    return { places: [...inside, ...beside] };
  });
}

/** How far within the finished line a keep-out's band is drawn, mm, so that the two lines are not taken for one. */
const WITHIN = 1.5;

function bandsOn(plan: Plan, row: MirroredRow['row'], line_: FaceLine) {
  const chambers = chambersOf(plan, row);
  const deep = Math.max(...chambers.map(({ depth }) => depth[1]));
  return keepOutsOn(plan.board, plan.layup, plan.job).flatMap((obstacle) => {
    const blocked = blockedBy(obstacle, row, deep);
    // What a chamber passes before it reaches that deep is on the plan, not on the face.
    if (!blocked || chambers.some((chamber) => meets(chamber, blocked))) return [];
    const { from, to, low, high } = blocked;
    const heights = line_.heightsAt((from + to) / 2);
    if (!heights) return [];
    const corner = (s: number, up: boolean): Point => {
      const skin = line_.heightsAt(s) ?? heights;
      return [s, up ? Math.min(high, skin.deck - WITHIN) : Math.max(low, skin.bottom + WITHIN)];
    };
    const corners = [corner(from, false), corner(to, false), corner(to, true), corner(from, true)];
    const ends = { low: Math.max(low, heights.bottom), high: Math.min(high, heights.deck) };
    return [{ name: obstacle.name, from, to, ...ends, corners }];
  });
}

/** Whether a chamber enters a blocked rectangle of its face. */
function meets({ profile }: Chamber, { from, to, low, high }: Blocked): boolean {
  const taken = stretchOf(profile);
  const [start, end] = [Math.max(from, taken.from), Math.min(to, taken.to)];
  const span = end - start > TOUCH ? spanAt(profile, (start + end) / 2) : undefined;
  return span !== undefined && span[0] < high && span[1] > low;
}

/** Chambers and keep-outs that share less than this along the face, mm, only touch. */
const TOUCH = 0.1;

/** The glue on this face's joint: each dot, and each smear as a line along its middle with a dot at either end. */
export function glueMarks({ glue }: Plan, { row }: MirroredRow, bench: FaceOnBench): Shape[] {
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
