import type { Chamber } from '../../chamber/chamber.js';
import { depthOf, toBoard, toFace } from '../../layup/frame.js';
import type { Row } from '../../layup/layup.js';
import type { Plan } from '../../plan.js';
import type { MirroredRow } from '../mirror.js';
import { routingOf } from './routingOf.js';

/**
 * A row that is routed from both its faces, as it is seen at the far one: the plan with that row and its chambers in
 * the far face's frame. Only the chambers that are cut from there too are in it. Undefined for a row that is routed
 * from one face.
 */
export function seenFromFar(plan: Plan, { row, mirror }: MirroredRow): { plan: Plan; row: MirroredRow } | undefined {
  const both = [row, ...(mirror ? [mirror] : [])];
  if (!plan.routing.rows.some((each) => each.row === row.id && each.from.length > 1)) return undefined;
  const turned = new Map(both.map((each) => [each.id, turnedRow(each)]));
  return {
    plan: {
      ...plan,
      layup: { ...plan.layup, rows: plan.layup.rows.map((each) => turned.get(each.id) ?? each) },
      routing: {
        ...plan.routing,
        settings: plan.routing.settings.map((setting) => {
          const of = both.find(({ id }) => setting.chamber.startsWith(`${id}-`));
          return of ? { ...setting, s: acrossTo(of, plan)(setting.s) } : setting;
        }),
      },
      chambers: plan.chambers.flatMap((chamber): Chamber[] => {
        const of = both.find(({ id }) => id === chamber.row);
        if (!of) return [chamber];
        return routingOf(plan, chamber).from.length > 1 ? [turnedChamber(chamber, of, plan)] : [];
      }),
    },
    row: { row: turned.get(row.id)!, ...(mirror && { mirror: turned.get(mirror.id)! }), far: true },
  };
}

function turnedRow(row: Row): Row {
  return { ...row, face: row.through!, through: row.face, members: [...row.members].reverse() };
}

/**
 * Where a place along the near face comes out at the far face: straight across, which on faces that are not quite
 * parallel is a little along.
 */
function acrossTo({ face, through }: Row, { layup }: Plan): (s: number) => number {
  const { at, slope } = depthOf(
    face,
    layup.joints.find(({ id }) => id === through!.joint)!,
  );
  return (s) => {
    const [x, y] = toBoard(face, s, 0, at + slope * s);
    return toFace(through!, x, y)[0];
  };
}

function turnedChamber(chamber: Chamber, row: Row, plan: Plan): Chamber {
  const across = acrossTo(row, plan);
  return {
    ...chamber,
    contour: chamber.contour.map((vertex) => ({ ...vertex, x: across(vertex.x) })),
    profile: chamber.profile.map(([s, z]) => [across(s), z] as const),
  };
}
