/** The nine numbers of a 3 × 3 matrix, row by row. */
export type Nine = readonly [number, number, number, number, number, number, number, number, number];

/** A turn and a shift: a point p goes to `turn · p + shift`. `turn` row by row, nine numbers. */
export interface Rigid {
  readonly turn: readonly number[];
  readonly shift: readonly [number, number, number];
}

export const STILL: Rigid = { turn: [1, 0, 0, 0, 1, 0, 0, 0, 1], shift: [0, 0, 0] };

/** Where a point goes. */
export function moved(
  { turn: r, shift }: Rigid,
  [x, y, z]: readonly [number, number, number],
): [number, number, number] {
  return [
    r[0]! * x + r[1]! * y + r[2]! * z + shift[0],
    r[3]! * x + r[4]! * y + r[5]! * z + shift[1],
    r[6]! * x + r[7]! * y + r[8]! * z + shift[2],
  ];
}

/** First `first`, then `then`. */
export function after(then: Rigid, first: Rigid): Rigid {
  const turn: number[] = [];
  for (let row = 0; row < 3; row++)
    for (let column = 0; column < 3; column++)
      turn.push(
        then.turn[3 * row]! * first.turn[column]! +
          then.turn[3 * row + 1]! * first.turn[3 + column]! +
          then.turn[3 * row + 2]! * first.turn[6 + column]!,
      );
  return { turn, shift: moved(then, first.shift) };
}

/** What undoes it. */
export function inverse({ turn: r, shift }: Rigid): Rigid {
  const turn = [r[0]!, r[3]!, r[6]!, r[1]!, r[4]!, r[7]!, r[2]!, r[5]!, r[8]!];
  const [x, y, z] = moved({ turn, shift: [0, 0, 0] }, shift);
  return { turn, shift: [-x, -y, -z] };
}

/** Points x, y, z one after the other, moved: as new ones, or into a list of the same length. */
export function movedAll(
  rigid: Rigid,
  positions: Float64Array,
  found = new Float64Array(positions.length),
): Float64Array {
  const [a, b, c, d, e, f, g, h, i] = rigid.turn as Nine;
  const [u, v, w] = rigid.shift;
  for (let k = 0; k < positions.length; k += 3) {
    const x = positions[k]!;
    const y = positions[k + 1]!;
    const z = positions[k + 2]!;
    found[k] = a * x + b * y + c * z + u;
    found[k + 1] = d * x + e * y + f * z + v;
    found[k + 2] = g * x + h * y + i * z + w;
  }
  return found;
}

/** A turn by an angle about an axis through the origin: 0 x, 1 y, 2 z; positive by the right hand, radians. */
export function turnAbout(axis: 0 | 1 | 2, angle: number): Rigid {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const turn =
    axis === 0
      ? [1, 0, 0, 0, c, -s, 0, s, c]
      : axis === 1
        ? [c, 0, s, 0, 1, 0, -s, 0, c]
        : [c, -s, 0, s, c, 0, 0, 0, 1];
  return { turn, shift: [0, 0, 0] };
}

export const shiftedBy = (x: number, y: number, z: number): Rigid => ({ ...STILL, shift: [x, y, z] });
