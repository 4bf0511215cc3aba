import { NEAR, type Fault } from './fault.js';
import { leastHeight } from './height.js';
import { beyondCutter, flattened, polygonsApart, roundingOf } from './plane.js';
import { rollsAround } from './rolls.js';
import { depthTo, endJoint, footprintOf, type Published, type RoutedChamber } from './published.js';

/** Chambers that enter the solid nose or tail with any point of theirs, at any depth. */
export function inSolidEnds(routed: readonly RoutedChamber[], { job: { chambers: rules }, board }: Published): Fault[] {
  return routed.flatMap((one): Fault[] => {
    const xs = footprintOf(one).map(([x]) => x);
    const ends = [
      { by: 'nose', has: Math.min(...xs), needs: rules.solidNose },
      { by: 'tail', has: board.length - Math.max(...xs), needs: rules.solidTail },
    ];
    return ends
      .filter(({ has, needs }) => has < needs - NEAR)
      .map((end) => ({ kind: 'solid-end', where: one.chamber.id, ...end }));
  });
}

/** Neighbours of a row with less than a web between them. */
export function thinWebs(routed: readonly RoutedChamber[], { job: { chambers: rules }, layup }: Published): Fault[] {
  return layup.rows.flatMap((row) => {
    const inRow = routed.filter((one) => one.row === row).sort((a, b) => a.from - b.from);
    return inRow.slice(1).flatMap((one, i): Fault[] => {
      const before = inRow[i]!;
      // Across the row they may stand beside each other; what counts is how far they are apart.
      const has =
        one.from - before.to >= rules.web - NEAR
          ? rules.web
          : polygonsApart(before.chamber.profile, one.chamber.profile);
      return has < rules.web - NEAR
        ? [{ kind: 'web', where: one.chamber.id, by: before.chamber.id, has, needs: rules.web }]
        : [];
    });
  });
}

/**
 * Chambers that leave less than the floor before a solid member, or before their far face where they do not go right
 * through it: the least that is left, and the most, tell which.
 */
export function thinFloors(routed: readonly RoutedChamber[], { job: { chambers: rules } }: Published): Fault[] {
  return routed.flatMap(({ chamber, row, from, to }): Fault[] => {
    const joint = endJoint(row);
    if (!joint) return [];
    const left = [from, to].map((s) => depthTo(joint, row, s) - chamber.depth[1]);
    const goesThrough = row.end === 'face' && Math.max(...left) <= THROUGH;
    const has = Math.min(...left);
    return goesThrough || has >= rules.floor - NEAR
      ? []
      : [{ kind: 'floor', where: chamber.id, by: joint.id, has, needs: rules.floor }];
  });
}

/** What is left of a far face this thin, mm, is gone: no more than saw dust. */
const THROUGH = 0.05;

/** Chambers with a corner or a neck that the cutter does not come into. */
export function beyondTheCutter(routed: readonly RoutedChamber[], { job: { chambers: rules } }: Published): Fault[] {
  const radius = rules.cutterDiameter / 2;
  // Chambers that are mirror images share their contour.
  const known = new Map<RoutedChamber['chamber']['contour'], number>();
  return routed.flatMap(({ chamber: { id, contour } }): Fault[] => {
    const left = known.get(contour) ?? leftBy(contour, radius);
    known.set(contour, left);
    return left > 0 ? [{ kind: 'corner', where: id, has: left, needs: radius }] : [];
  });
}

/** What a cutter leaves of a pocket, mm²; 0 where that is no more than rounding. */
function leftBy(contour: RoutedChamber['chamber']['contour'], radius: number): number {
  if (rollsAround(contour, radius, UNREACHED)) return 0;
  const pocket = flattened(contour);
  const left = beyondCutter(pocket, radius, UNREACHED);
  return left > roundingOf(pocket) ? left : 0;
}

/** What a cutter may leave in a corner that turns so little that it is not eased, mm. */
const UNREACHED = 0.06;

/** Chambers smaller than the smallest. */
export function tooSmall(routed: readonly RoutedChamber[], { job: { chambers: rules } }: Published): Fault[] {
  const { smallest } = rules;
  return routed.flatMap(({ chamber, from, to }): Fault[] => {
    const sizes = [
      ['length', to - from, smallest.length],
      ['height', leastHeight(chamber.contour), smallest.height],
      ['depth', chamber.depth[1] - chamber.depth[0], smallest.depth],
    ] as const;
    return sizes
      .filter(([, has, needs]) => has < needs - NEAR)
      .map(([by, has, needs]) => ({ kind: 'small', where: chamber.id, by, has, needs }));
  });
}
