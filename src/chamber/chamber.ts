import type { Vertex } from '../length/vertex.js';
import type { Patch } from '../board/mesh.js';

/** One routed pocket: a profile on its face and a depth into the piece. Face frame of its row, mm. */
export interface Chamber {
  /** `R2-07`: its row and its place from the nose; `R2-07a` where one place holds two. Stable when other rows change. */
  readonly id: string;
  readonly row: string;
  /** The place on the grid, counted from the nose, 1 and up. */
  readonly place: number;
  /** The cut itself, counter-clockwise with true arcs at the corners; `x` is `s`, `y` is `z`. */
  readonly contour: readonly Vertex[];
  /** The same as straight lines that hold the contour wholly inside: what the walls are proved with. `[s, z]` pairs. */
  readonly profile: readonly (readonly [number, number])[];
  /** `t` where the chamber begins and ends. */
  readonly depth: readonly [number, number];
  readonly wall: Readonly<Record<Patch, number>>;
  /** Where on the finished surface each wall is thinnest, board frame. */
  readonly at: Readonly<Record<Patch, readonly [number, number, number]>>;
  /** What the cutter takes out of the piece, litres. */
  readonly volume: number;
}

/** Something a builder must know about a place in a row. The words for it are found where it is shown. */
export interface Note {
  readonly kind: 'solid' | 'trimmed' | 'split';
  /** Row or chamber. */
  readonly where: string;
  readonly why: Why;
  /** Names of the keep-outs, where one is the reason. */
  readonly by: readonly string[];
  /** How much shorter than its place a trimmed chamber is, mm. */
  readonly shorter?: number;
}

/**
 * `shallow` – the row is nowhere as deep as the smallest chamber; `ends` – solid nose or tail; `keep-out`; `room` – the walls leave too
 * little; `cutter` – the cutter does not fit into the corners; `unproved` – no chamber of the smallest size kept its walls in the proof.
 */
export type Why = 'shallow' | 'ends' | 'keep-out' | 'room' | 'cutter' | 'unproved';

/** Solid between two neighbouring chambers of a row, `s` from and to, mm. */
export interface Web {
  readonly row: string;
  readonly between: readonly [string, string];
  readonly from: number;
  readonly to: number;
}
