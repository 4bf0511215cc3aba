import { NEAR, type Fault } from './fault.js';
import { lineToPolygon, type Pair } from './plane.js';
import type { Published, RoutedChamber } from './published.js';
import { sectionAt } from './keepOuts.js';
import { nearestTo, type SortedMesh } from './surface.js';

/**
 * Places around a dot's edge that its margin is measured from: the edge bulges between them by less than a thousandth
 * of its radius.
 */
const AROUND = 72;

/**
 * Planned dots that lie nearer to the finished surface than their margin. What landed elsewhere is told, and can't be
 * planned away.
 */
export function nearSurface({ glue, job, layup }: Published, surface: SortedMesh): Fault[] {
  const { margin } = job.dots;
  return glue.dots.flatMap((dot): Fault[] => {
    const joint = layup.joints.find(({ id }) => id === dot.joint);
    if (dot.glued || !joint) return [];
    const size = Math.hypot(1, joint.slope);
    const edge = Array.from({ length: AROUND }, (_, i): [number, number, number] => {
      const angle = (2 * Math.PI * i) / AROUND;
      const x = (dot.s + (dot.diameter / 2) * Math.cos(angle)) / size;
      return [x, joint.at + joint.slope * x, dot.z + (dot.diameter / 2) * Math.sin(angle)];
    });
    const has = nearestTo(surface, edge, margin);
    return has < margin - NEAR ? [{ kind: 'margin', where: dot.id, has, needs: margin }] : [];
  });
}

/**
 * Chambers that come nearer to a dot or a smear than the clearance, unless they hold it wholly and the job allows that.
 */
export function nearGlue(routed: readonly RoutedChamber[], published: Published): Fault[] {
  const { clearance, may } = published.job.dots;
  const spots = [
    ...published.glue.dots.map(({ id, joint, s, z, diameter }) => {
      const at: Pair = [s, z];
      return { id, joint, from: at, to: at, radius: diameter / 2 };
    }),
    ...published.glue.smears.map(({ id, joint, from, to, width }) => ({ id, joint, from, to, radius: width / 2 })),
  ];
  return routed.flatMap((one) =>
    spots.flatMap(({ id, joint, from, to, radius }): Fault[] => {
      const off = radius + clearance;
      if (Math.min(from[0], to[0]) > one.to + FAR + off || Math.max(from[0], to[0]) < one.from - FAR - off) return [];
      const section = sectionAt(one, joint, published);
      if (!section) return [];
      const gap = lineToPolygon(from, to, section);
      if (gap >= off - NEAR || (may.includes('swallow') && gap <= NEAR - off)) return [];
      return [{ kind: 'glue', where: one.chamber.id, by: id, has: gap - radius, needs: clearance }];
    }),
  );
}

/**
 * How far along its far face a chamber may stand from where it stands on its own, mm: more than any flare shifts it.
 */
const FAR = 100;
