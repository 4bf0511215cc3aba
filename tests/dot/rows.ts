import type { JointOnRow } from '../../src/chamber/onRow.js';
import type { Face, Row } from '../../src/layup/layup.js';

/** A face through `y` at x = 0, turned by an angle; its piece lies toward +y (1) or −y (−1). */
export function faceOf(joint: string, y: number, turn: number, way: 1 | -1): Face {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return {
    id: `F${joint}`,
    on: 'in',
    piece: 'PR1',
    joint,
    origin: [0, y],
    along: [c, s],
    inward: [0 - way * s, way * c],
  };
}

/** A row from the centreline to a joint `wide` mm out, which stands at an angle to it. */
export function rowTo(wide: number, turn: number): Row {
  return {
    id: 'R1',
    side: 'R',
    number: 1,
    piece: 'PR1',
    face: faceOf('JC', 0, 0, 1),
    through: faceOf('JR1', wide, turn, -1),
    members: [],
    end: 'face',
    parity: 0,
  };
}

export const nearOn = (row: Row): JointOnRow => ({ row, face: row.face, near: true });
export const farOn = (row: Row): JointOnRow => ({ row, face: row.through!, near: false });
