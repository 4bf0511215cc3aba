import type { Board } from '../board/board.js';
import type { Note } from '../chamber/chamber.js';
import { boundAt, roomOf } from '../chamber/room.js';
import { shellOf, type Shell } from '../chamber/shell.js';
import { rowsAt, type JointOnRow } from '../chamber/onRow.js';
import { Past } from '../kept/past.js';
import { faceAt } from '../layup/pieces.js';
import type { Face, Joint, Layup } from '../layup/layup.js';

/**
 * A dotted joint as the blank is glued up: its plane within the finished board, and the rows that will be open to it.
 */
export interface JointFace {
  readonly joint: Joint;
  /** One of its two faces; `s` and `z` are the same on both. */
  readonly face: Face;
  readonly rows: readonly JointOnRow[];
}

export function jointFaces(layup: Layup, past: Past = new Past()): JointFace[] {
  return layup.joints.flatMap((joint): JointFace[] => {
    const piece =
      joint.kind === 'dotted' ? layup.pieces.find((each) => each.members[0]!.left?.id === joint.id) : undefined;
    return piece ? [{ joint, face: past.of(faceAt, piece, joint, 'left'), rows: rowsAt(layup, joint.id) }] : [];
  });
}

/** Something is said of a joint that is never opened, or is not there. */
export function unknownJoint(where: string, faces: readonly JointFace[]): Note {
  const by = faces.map(({ joint }) => joint.id);
  return { kind: 'glue', where, why: by.length > 0 ? 'no-joint' : 'no-joints', by };
}

/** Two lines over a joint: how high and how low something may reach at `s`; not-a-number where it may not be at all. */
export interface Lines {
  /** The lines are straight between multiples of this, mm. */
  readonly step: number;
  /** How many multiples there are. */
  readonly count: number;
  top(s: number): number;
  bottom(s: number): number;
}

/** Where the plane of a joint cuts the finished surface. */
export function surfaceLines({ grid }: Board, { face }: JointFace, past: Past): Lines {
  return linesIn(grid, grid.positions, face, past);
}

/**
 * The shell that the middle of a dot of this radius must lie within, for its edge to be `margin` inside the finished
 * surface.
 */
export function dotShell(board: Board, radius: number, margin: number, past: Past): Shell {
  const inside = radius + margin + board.mesh.chordError;
  return past.of(shellOf, board, inside, inside, inside);
}

/** Where a joint can hold the middle of a dot. */
export function dotLines({ grid }: Board, shell: Shell, { face }: JointFace, past: Past): Lines {
  return linesIn(grid, shell, face, past);
}

/** Any depth will do: only the plane of the face itself is asked for. */
const THIN = 1;

function linesIn(grid: Board['grid'], shell: Shell, face: Face, past: Past): Lines {
  const room = past.of(roomOf, grid, shell, face, THIN, 2 * THIN);
  return {
    step: room.step,
    count: room.count,
    top: (s) => boundAt(room, room.top, 0, s),
    bottom: (s) => boundAt(room, room.bottom, 0, s),
  };
}
