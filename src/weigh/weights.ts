import type { Block } from '../block/block.js';
import type { Board } from '../board/board.js';
import type { Chamber } from '../chamber/chamber.js';
import { depthOf } from '../layup/frame.js';
import type { LaidMember, Layup, Row } from '../layup/layup.js';
import { memberVolumes } from './members.js';

/** What the bare board weighs as the work goes on, kg: before glass, glue and fittings. */
export interface Weights {
  readonly shaped: number;
  /** After routing. */
  readonly chambered: number;
  /** With the blocks in. */
  readonly filled: number;
}

export function weightsOf(board: Board, layup: Layup, chambers: readonly Chamber[], blocks: readonly Block[]): Weights {
  const shaped = sum(
    memberVolumes(board, layup).map(({ member, volume }) => (volume / 1000) * member.material.density),
  );
  const rows = new Map(layup.rows.map((row) => [row.id, row]));
  const removed = sum(chambers.map((chamber) => removedWeight(chamber, rows.get(chamber.row)!)));
  return { shaped, chambered: shaped - removed, filled: shaped - removed + sum(blocks.map((b) => b.weight)) };
}

/** What the router takes out of each member for one chamber, kg. */
function removedWeight(chamber: Chamber, row: Row): number {
  const s = chamber.profile.map(([each]) => each);
  const middle = (Math.min(...s) + Math.max(...s)) / 2;
  const area = chamber.volume / chamber.depth[1];
  return sum(
    row.members.map(
      (member) => overlap(chamber.depth, memberDepths(member, row, middle)) * area * (member.material.density / 1000),
    ),
  );
}

/** From where to where a member lies behind the row's face at `s`. */
function memberDepths(member: LaidMember, { face }: Row, s: number): [number, number] {
  const ends = [member.left, member.right].map((joint) => {
    if (!joint) return Infinity;
    const { at, slope } = depthOf(face, joint);
    return at + slope * s;
  });
  return [Math.min(...ends), Math.max(...ends)];
}

function overlap(a: readonly [number, number], b: readonly [number, number]): number {
  return Math.max(0, Math.min(a[1], b[1]) - Math.max(a[0], b[0]));
}

function sum(values: readonly number[]): number {
  return values.reduce((a, b) => a + b, 0);
}
