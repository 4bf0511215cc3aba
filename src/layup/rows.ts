import { rowName, type Side } from '../job/names.js';
import type { Face, LaidMember, Piece, Row } from './layup.js';
import { countFromCentre, faceAt } from './pieces.js';

type Run = Pick<Row, 'piece' | 'face' | 'through' | 'members' | 'end'>;

/**
 * The rows of all pieces, left to right: every run of open members that a face gives access to. A piece open from face
 * to face has one row, routed from the face nearer the centreline, the right one where both are as near; otherwise each
 * face has its own, ended by a solid member or the rail. Neighbouring rows alternate in parity, so that webs never line
 * up.
 */
export function rowsOf(pieces: readonly Piece[]): Row[] {
  const runs = pieces.flatMap(runsOf);
  const named = countFromCentre(runs, sideOfRun, (run, at) => ({ ...run, id: rowName(at), ...at }), 1);
  const middle = Math.max(
    0,
    named.findIndex((row) => row.side !== 'L'),
  );
  return named.map((row, i): Row => ({ ...row, parity: (Math.abs(i - middle) % 2) as 0 | 1 }));
}

function runsOf(piece: Piece): Run[] {
  const { members } = piece;
  const first = members[0]!;
  const last = members[members.length - 1]!;
  const leftFace = first.left && faceAt(piece, first.left, 'left');
  const rightFace = last.right && faceAt(piece, last.right, 'right');
  const reversed = [...members].reverse();

  if (leftFace && rightFace && members.every((m) => m.routing === 'open')) {
    const fromLeft = Math.abs(first.left!.at) < Math.abs(last.right!.at);
    const [face, through] = fromLeft ? [leftFace, rightFace] : [rightFace, leftFace];
    return [{ piece: piece.id, face, through, members: fromLeft ? members : reversed, end: 'face' }];
  }
  return [
    ...(leftFace ? runFrom(piece, leftFace, members) : []),
    ...(rightFace ? runFrom(piece, rightFace, reversed) : []),
  ];
}

/**
 * The run of open members met from a face, members in the order the cutter meets them; none when the first is solid.
 */
function runFrom(piece: Piece, face: Face, members: readonly LaidMember[]): Run[] {
  const solid = members.findIndex((m) => m.routing === 'solid');
  const run = solid < 0 ? members : members.slice(0, solid);
  if (run.length === 0) return [];
  return [{ piece: piece.id, face, members: run, end: solid < 0 ? 'rail' : 'solid' }];
}

/** A row belongs to the side on which its members lie; one that holds the centreline is central. */
function sideOfRun({ members }: Run): Side {
  const lefts = members.map((m) => m.left?.at ?? -Infinity);
  const rights = members.map((m) => m.right?.at ?? Infinity);
  if (Math.min(...lefts) >= 0) return 'R';
  if (Math.max(...rights) <= 0) return 'L';
  return 'C';
}
