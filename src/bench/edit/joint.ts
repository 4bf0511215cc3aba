import type { GlueUpSpec, Job, MemberWithJoint } from '../../job/job.js';
import type { FromCentre } from '../../job/names.js';
import type { Path } from '../../job/mistake/say.js';
import { documentOf } from '../../job/edit/document.js';
import { valueAt, withValue } from '../../job/edit/value.js';
import { ruleStep, writtenLength } from '../../job/edit/written.js';

/** No strip is dragged thinner than this, mm: a saw and a hand need that much (common practice, no source). */
const THINNEST = 6;

/** A joint that can be moved, and how far. */
export interface MovableJoint {
  /**
   * The strips that give and take, in the list of members; where the outer one runs to the rail it has nothing written
   * to change.
   */
  readonly inner: number;
  readonly outer?: number;
  readonly list: 'members' | 'left';
  /** 1 where outward is to the right, −1 on the left. */
  readonly outward: 1 | -1;
  /** The furthest it goes inward and outward, mm. */
  readonly room: readonly [inward: number, outward: number];
}

/**
 * Which strips a joint's move changes: the next one inside grows, the next one outside gives. Stringers between them
 * keep their thickness and move along. Nothing for a joint without a strip inside, and where the list is not read.
 *
 * @param at which joint
 */
export function movableJoint({ glueUp }: Pick<Job, 'glueUp'>, { side, number }: FromCentre): MovableJoint | undefined {
  if (side === 'C') return undefined;
  const left = side === 'L' && glueUp.left !== undefined;
  const members: readonly MemberWithJoint[] = left ? glueUp.left! : glueUp.right;
  const place = number - (glueUp.centre ? 1 : 0);
  const inner = members.slice(0, place).findLastIndex(({ kind }) => kind === 'strip');
  if (inner < 0 || place >= members.length) return undefined;
  const outward = members.findIndex(
    ({ kind, thickness }, i) => i >= place && kind === 'strip' && thickness !== undefined,
  );
  // Only strips next to the joint, stringers aside: one further out is another joint's matter.
  const outer =
    outward >= 0 && members.slice(place, outward).every(({ kind }) => kind === 'stringer') ? outward : undefined;
  const spare = (i: number) => Math.max(0, thinnest(members[i]!) - THINNEST);
  return {
    inner,
    ...(outer !== undefined && { outer }),
    list: left ? 'left' : 'members',
    outward: side === 'R' ? 1 : -1,
    room: [spare(inner), outer === undefined ? Infinity : spare(outer)],
  };
}

/**
 * The job's text with a joint moved, in whole marks of the rule, as far as the strips beside it allow.
 *
 * @param by how far outward, mm; negative toward the centreline
 */
export function withJointMoved(text: string, job: Job, at: FromCentre, by: number): string {
  const joint = movableJoint(job, at);
  if (!joint) return text;
  const step = ruleStep(job.units);
  const whole = Math.trunc(Math.min(Math.max(by, -joint.room[0]), joint.room[1]) / step + 1e-9 * Math.sign(by)) * step;
  if (whole === 0) return text;
  const grown = withThickness(text, job, joint, joint.inner, whole);
  return joint.outer === undefined ? grown : withThickness(grown, job, joint, joint.outer, -whole);
}

function withThickness(text: string, job: Job, { list }: MovableJoint, member: number, more: number): string {
  const { thickness } = membersIn(job.glueUp, list)[member]!;
  const path: Path = ['glueUp', list, member, 'thickness'];
  const set = (into: string, at: Path, mm: number) =>
    withValue(into, at, writtenLength(mm + more, job.units, valueAt(documentOf(text), at)));
  if (thickness === undefined) return text;
  if (typeof thickness === 'number') return set(text, path, thickness);
  return set(set(text, [...path, 'nose'], thickness.nose), [...path, 'tail'], thickness.tail);
}

function membersIn({ right, left }: GlueUpSpec, list: 'members' | 'left'): readonly MemberWithJoint[] {
  return list === 'left' ? left! : right;
}

function thinnest({ thickness = Infinity }: MemberWithJoint): number {
  return typeof thickness === 'number' ? thickness : Math.min(thickness.nose, thickness.tail);
}
