/**
 * A vertex of a contour. `bulge` is the tangent of a quarter of the arc's angle to the next vertex, positive
 * counter-clockwise, as in DXF.
 */
export interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}
