import { z } from 'zod';
import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import type { GlueUpSpec, JointKind, Member, MemberWithJoint } from '../job.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';
import type { FindMaterial } from './materials.js';

function memberKeys(q: Quantities) {
  const bounds = {
    least: 0.5,
    most: 1000,
    because: 'members are thicker than a glue line and thinner than the board is wide',
  };
  return {
    strip: z.string().meta({ description: 'material of a foam strip' }).optional(),
    stringer: z.string().meta({ description: 'material of a wooden stringer' }).optional(),
    thickness: z
      .union([
        q.length('thickness across the board', bounds),
        z.strictObject({
          nose: q.length('across the board at the nose tip', bounds),
          tail: q.length('across the board at the tail', bounds),
        }),
      ])
      .meta({
        description:
          'thickness across the board; {nose, tail} for a member that tapers; left out for the outermost, which runs to the rail',
      })
      .optional(),
    router: z
      .enum(['open', 'solid'])
      .meta({
        description: 'whether the router may go into it; strips are open, stringers solid, unless this says otherwise',
      })
      .optional(),
  };
}

const jointSchema = z.enum(['bonded', 'dotted']);

function memberSchema(q: Quantities) {
  return z.strictObject({
    ...memberKeys(q),
    joint: jointSchema
      .meta({
        description:
          'the joint on its inner side: bonded for good, or dotted with glue and opened again; bonded unless this says otherwise',
      })
      .optional(),
  });
}

export function glueUpSchema(q: Quantities) {
  return z
    .strictObject({
      centre: z.strictObject(memberKeys(q)).meta({ description: 'a member that straddles the centreline' }).optional(),
      centreJoint: jointSchema
        .meta({ description: 'where no member straddles it: the joint along the centreline' })
        .optional(),
      members: z
        .array(memberSchema(q))
        .meta({ description: 'the members from the centre outward; the last runs to the rail' }),
      left: z.array(memberSchema(q)).meta({ description: 'the members of the left side, where it differs' }).optional(),
    })
    .meta({ description: 'how the blank is glued up from strips and stringers' });
}

export type GlueUpFile = z.infer<ReturnType<typeof glueUpSchema>>;
type MemberFile = GlueUpFile['members'][number];

export function toGlueUp(file: GlueUpFile, material: FindMaterial, units: Units, say: Say): GlueUpSpec {
  if (file.centre && file.centreJoint) {
    say.error(
      ['centreJoint'],
      'a member straddles the centreline, so no joint runs along it',
      'leave out centreJoint, or centre',
    );
  }
  const centreJoint = file.centreJoint ?? 'bonded';
  const inner = file.centre ? undefined : centreJoint;
  const right = toHalf(file.members, inner, material, units, say.at('members'));
  const left = file.left && toHalf(file.left, inner, material, units, say.at('left'));
  const centre = file.centre && toMember(file.centre, material, say.at('centre'));
  if (centre && centre.thickness === undefined) {
    say.error(
      ['centre'],
      'the centre member has no thickness',
      `add its whole thickness, for instance ${printLength(12, units)}`,
    );
  }
  const joints = [
    ...(inner ? [inner] : []),
    ...right.map(({ joint }) => joint),
    ...(left ?? []).map(({ joint }) => joint),
  ];
  if (right.length > 0 && !joints.includes('dotted')) {
    say.warning(
      ['members'],
      'no joint is dotted, so the blank cannot be opened and no chamber routed',
      'write joint: dotted where it is to be opened',
    );
  }
  return { centreJoint, right, ...(centre && { centre }), ...(left && { left }) };
}

function toHalf(
  file: readonly MemberFile[],
  centreJoint: JointKind | undefined,
  material: FindMaterial,
  units: Units,
  say: Say,
): MemberWithJoint[] {
  if (file.length === 0)
    say.error([], 'no member is listed', 'at least one: {strip: eps-15} runs from the centre to the rail');
  return file.map((member, i) => {
    const here = say.at(i);
    if (i === 0 && centreJoint && member.joint !== undefined && member.joint !== centreJoint) {
      here.error(
        ['joint'],
        `the joint along the centreline is ${member.joint} here and ${centreJoint} as centreJoint`,
        'say it once, as centreJoint',
      );
    }
    const last = i === file.length - 1;
    if (last && member.thickness !== undefined) {
      here.error(
        ['thickness'],
        'the outermost member has a thickness',
        'leave it out: it runs to the rail; or add the member outside it',
      );
    }
    if (!last && member.thickness === undefined) {
      here.error(
        [],
        'this member has no thickness',
        `add it, for instance thickness: ${printLength(50, units)}; only the outermost goes without`,
      );
    }
    return { ...toMember(member, material, here), joint: (i === 0 && centreJoint) || (member.joint ?? 'bonded') };
  });
}

function toMember(file: Omit<MemberFile, 'joint'>, material: FindMaterial, say: Say): Member {
  const { strip, stringer, thickness, router } = file;
  if (strip !== undefined && stringer !== undefined)
    say.error(['stringer'], 'it is a strip and a stringer', 'keep one of them');
  if (strip === undefined && stringer === undefined) {
    say.error([], 'it does not say what the member is', 'add strip: and its foam, or stringer: and its wood');
  }
  const kind = stringer === undefined ? 'strip' : 'stringer';
  const name = stringer ?? strip;
  return {
    kind,
    material: name === undefined ? { name: '', density: NaN, source: '' } : material(name, [kind], say),
    routing: router ?? (kind === 'strip' ? 'open' : 'solid'),
    ...(thickness === undefined ? {} : { thickness }),
  };
}
