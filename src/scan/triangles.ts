/**
 * Triangles as they are in a file or after they were cleaned; no frame of their own but the one they are told in.
 *
 * Layout: `positions` holds x, y, z of each point; `triangles` three point numbers each, counter-clockwise seen from
 * outside where they are turned rightly.
 */
export interface Triangles {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
}
