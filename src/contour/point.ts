/** A place in a plane, mm: `[x, y]` of a drawing, `[s, z]` of a face, `[y, z]` of a cross-section. */
export type Point = readonly [number, number];
