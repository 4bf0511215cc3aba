import { faceName, pieceName, type FaceSide, type FromCentre, type Side } from '../job/names.js';
import type { Face, Joint, LaidMember, Piece } from './layup.js';

/** Breaks the laid members apart at the dotted joints, left to right, and names the pieces from the centre outward. */
export function piecesOf(members: readonly LaidMember[]): Piece[] {
  const groups: LaidMember[][] = [];
  for (const member of members) {
    if (groups.length === 0 || member.left?.kind === 'dotted') groups.push([]);
    groups[groups.length - 1]!.push(member);
  }
  return countFromCentre(groups, sideOf, (members, at): Piece => ({ id: pieceName(at), ...at, members }));
}

/** A group that holds the centreline is central; one that ends at it belongs to its side. */
function sideOf(members: readonly LaidMember[]): Side {
  const left = members[0]!.left;
  const right = members[members.length - 1]!.right;
  if (left && left.at >= 0) return 'R';
  if (right && right.at <= 0) return 'L';
  return 'C';
}

/**
 * Counts things lying left to right from the centre outward, on either side; a lone central one has the number
 * `loneCentre`.
 */
export function countFromCentre<T, Named>(
  things: readonly T[],
  sideOf: (thing: T) => Side,
  named: (thing: T, at: FromCentre) => Named,
  loneCentre = 0,
): Named[] {
  const sides = things.map(sideOf);
  const lefts = sides.filter((side) => side === 'L').length;
  const centres = sides.filter((side) => side === 'C').length;
  const count = { L: 0, C: 0, R: 0 };
  return things.map((thing, i) => {
    const side = sides[i]!;
    const place = ++count[side];
    const number = side === 'L' ? lefts - place + 1 : side === 'C' && centres === 1 ? loneCentre : place;
    return named(thing, { side, number });
  });
}

/** The piece's face at a joint on its left or right. */
export function faceAt(piece: Piece, joint: Joint, on: 'left' | 'right'): Face {
  const size = Math.hypot(1, joint.slope);
  const turn = on === 'left' ? 1 : -1;
  const side: FaceSide = piece.side === 'C' ? on : (piece.side === 'R') === (on === 'left') ? 'in' : 'out';
  return {
    id: faceName(piece, side),
    on: side,
    piece: piece.id,
    joint: joint.id,
    origin: [0, joint.at],
    along: [1 / size, joint.slope / size],
    inward: [(-turn * joint.slope) / size, turn / size],
  };
}
