/** How far two points of a mesh lie from each other, in its unit. */
export function distance3(positions: Float64Array, i: number, j: number): number {
  return Math.hypot(
    positions[3 * i]! - positions[3 * j]!,
    positions[3 * i + 1]! - positions[3 * j + 1]!,
    positions[3 * i + 2]! - positions[3 * j + 2]!,
  );
}
