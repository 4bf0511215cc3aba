import type { GlueUpSpec, JointKind, Member, MemberWithJoint } from '../job/job.js';
import { jointName, memberName, type FromCentre } from '../job/names.js';
import type { Joint, LaidMember } from './layup.js';

/** A joint's line in plan before it has a name: `y = at + slope · x`. */
interface Line {
  readonly at: number;
  readonly slope: number;
}

/**
 * Lays the members side by side from the left rail to the right rail, board frame, mm.
 *
 * A member of one thickness has it square to its inner joint; a tapering strip has its two thicknesses across the board
 * at `x` = 0 and `x` = `length`. Throws nothing: a glue-up wider than the board is the reader's finding.
 */
export function lay(glueUp: GlueUpSpec, length: number): { joints: Joint[]; members: LaidMember[] } {
  const right = layHalf(glueUp.right, glueUp, length);
  const left = layHalf(glueUp.left ?? glueUp.right, glueUp, length);
  const mirrored = left.lines.map(({ at, slope }) => ({ at: 0 - at, slope: 0 - slope }));

  const jointPlace = (side: 'L' | 'R', i: number): FromCentre =>
    glueUp.centre ? { side, number: i + 1 } : { side: i === 0 ? 'C' : side, number: i };
  const rightJoints = right.lines.map((line, i) => named(line, jointPlace('R', i), right.kinds[i]!));
  const leftJoints = mirrored.map((line, i) => named(line, jointPlace('L', i), left.kinds[i]!));
  if (!glueUp.centre) leftJoints.shift();

  const joints = [...[...leftJoints].reverse(), ...rightJoints];
  const specs: (FromCentre & { member: Member })[] = [
    ...left.members.map((member, i) => ({ side: 'L' as const, number: i + 1, member })).reverse(),
    ...(glueUp.centre ? [{ side: 'C' as const, number: 0, member: glueUp.centre }] : []),
    ...right.members.map((member, i) => ({ side: 'R' as const, number: i + 1, member })),
  ];
  const members = specs.map(({ member, ...at }, i): LaidMember => {
    const { kind, material, routing, thickness } = member;
    return { id: memberName(at), ...at, kind, material, routing, thickness, left: joints[i - 1], right: joints[i] };
  });
  return { joints, members };
}

function named(line: Line, place: FromCentre, kind: JointKind): Joint {
  return { id: jointName(place), ...place, kind, at: line.at, slope: line.slope };
}

/** The inner joint of each member of one half, as if it were the right one. */
function layHalf(members: readonly MemberWithJoint[], { centre, centreJoint }: GlueUpSpec, length: number) {
  let line: Line = centre ? outward({ at: 0, slope: 0 }, halved(centre), length) : { at: 0, slope: 0 };
  const lines: Line[] = [];
  for (const member of members) {
    lines.push(line);
    line = outward(line, member, length);
  }
  const kinds = members.map((m, i) => (i === 0 && !centre ? centreJoint : m.joint));
  return { lines, kinds, members };
}

function halved(member: Member): Member {
  const { thickness } = member;
  if (thickness === undefined) return member;
  return {
    ...member,
    thickness: typeof thickness === 'number' ? thickness / 2 : { nose: thickness.nose / 2, tail: thickness.tail / 2 },
  };
}

/** The outer joint of a member whose inner joint is `line`. */
function outward(line: Line, { thickness }: Member, length: number): Line {
  if (thickness === undefined) return line;
  if (typeof thickness === 'number') return { at: line.at + thickness * Math.hypot(1, line.slope), slope: line.slope };
  return { at: line.at + thickness.nose, slope: line.slope + (thickness.tail - thickness.nose) / length };
}
