import type { Chamber } from '../chamber/chamber.js';
import { keepOutsOn } from '../chamber/keepOut.js';
import { blockedBy, type Blocked } from '../chamber/obstacle.js';
import { stretchOf } from '../chamber/stretch.js';
import type { Plan } from '../plan.js';
import type { Bench } from './bench.js';
import type { Shape } from './drawing.js';
import { spanAt, type FinishedLine } from './finished.js';
import { heightFitting } from './lettering.js';
import { chambersOf, type MirroredRow } from './mirror.js';
import { circle, line, polygon, text } from './primitives.js';

/** What of the face a keep-out takes from the chambers of this row, with its name: from deck to bottom, or as far as it reaches in. */
export function keepOutBands(plan: Plan, { row }: MirroredRow, line_: FinishedLine, bench: Bench): Shape[] {
  const chambers = chambersOf(plan, row);
  const deep = Math.max(...chambers.map(({ depth }) => depth[1]));
  return keepOutsOn(plan.board, plan.layup, plan.job).flatMap((obstacle): Shape[] => {
    const blocked = blockedBy(obstacle, row, deep);
    // What a chamber passes before it reaches that deep is on the plan, not on the face.
    if (!blocked || chambers.some((chamber) => meets(chamber, blocked))) return [];
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
export function glueMarks({ glue }: Plan, { row }: MirroredRow, bench: Bench): Shape[] {
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
