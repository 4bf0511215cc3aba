/**
 * How the finished board lies in its stock, mm: its nose tip so far behind the stock's nose end, its lowest bottom so
 * far above the stock's lowest bottom, and its nose raised against its tail by so much, turned about the middle of its
 * length.
 */
export interface Placement {
  readonly along: number;
  readonly up: number;
  readonly noseUp: number;
}

/** Turns `x`, `z` of a board of the given length into the frame of its stock. */
export function placed(
  { along, up, noseUp }: Placement,
  length: number,
): (x: number, z: number) => readonly [x: number, z: number] {
  const sine = noseUp / length;
  const cosine = Math.sqrt(1 - sine * sine);
  const middle = length / 2;
  return (x, z) => [middle + along + (x - middle) * cosine + z * sine, up + z * cosine - (x - middle) * sine];
}

/** The way back: turns `x`, `z` of the stock into the frame of the board that lies in it. */
export function unplaced(
  { along, up, noseUp }: Placement,
  length: number,
): (x: number, z: number) => readonly [x: number, z: number] {
  const sine = noseUp / length;
  const cosine = Math.sqrt(1 - sine * sine);
  const middle = length / 2;
  return (x, z) => {
    const [dx, dz] = [x - middle - along, z - up];
    return [middle + dx * cosine - dz * sine, dx * sine + dz * cosine];
  };
}
