/** Left, centre or right, as seen by someone standing on the deck and facing the nose. */
export type Side = 'L' | 'C' | 'R';

/**
 * Where something lies across the board, counted from the centreline outward; `number` is 0 for the only one at the
 * centre.
 */
export interface FromCentre {
  readonly side: Side;
  readonly number: number;
}

/*
 * Everything that is named by its place has a letter of its own in front, so that no two things share a name. Rows, and
 * chambers and blocks after them, have none.
 */
export const rowName = (at: FromCentre): string => placed(at);
export const memberName = (at: FromCentre): string => `M${placed(at)}`;
export const jointName = (at: FromCentre): string => `J${placed(at)}`;
export const pieceName = (at: FromCentre): string => `P${placed(at)}`;

/** Which face of a piece it is: toward the centreline or toward the rail; of a piece on the centreline, by the hand. */
export type FaceSide = 'in' | 'out' | 'left' | 'right';

export const faceName = (piece: FromCentre, on: FaceSide): string => `F${placed(piece)}-${on}`;

/** Dots and smears are named after their joint and counted from the nose, 1 and up. */
export const dotName = (joint: FromCentre, count: number): string => `D${placed(joint)}.${count}`;
export const smearName = (joint: FromCentre, count: number): string => `S${placed(joint)}.${count}`;

/** A place of a row, and the chamber and block there; halves of a split one have a letter behind it. */
export const placeName = (row: string, place: number): string => `${row}-${String(place).padStart(2, '0')}`;

/** The same place on the other side of the board. */
export function opposite({ side, number }: FromCentre): FromCentre {
  return { side: side === 'L' ? 'R' : side === 'R' ? 'L' : 'C', number };
}

/**
 * A joint's name as a job file says it: `JL2`, or `L2`, as joints were called before they had a letter of their own.
 */
export function jointNamed(written: string): string {
  const name = written.trim().toUpperCase();
  const isBare = (['L', 'C', 'R'] as const).some((side) => name.startsWith(side));
  return isBare ? `J${name}` : name;
}

function placed({ side, number }: FromCentre): string {
  return number === 0 ? side : `${side}${number}`;
}
