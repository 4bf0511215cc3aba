/**
 * The finished surface as triangles, closed and outward-oriented, in the board frame, mm.
 *
 * Layout: `positions` holds x, y, z of each vertex; `triangles` three vertex numbers each, counter-clockwise seen from outside;
 * `patches` one patch code a triangle. `chordError` bounds how far the smooth surface lies from the triangles, mm.
 */
export interface Mesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  readonly patches: Uint8Array;
  readonly chordError: number;
}

/** The three parts of the surface that ask for walls of their own, in the order of the codes in `Mesh.patches`. */
export const PATCHES = ['deck', 'bottom', 'rail'] as const;
export type Patch = (typeof PATCHES)[number];
