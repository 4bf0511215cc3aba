import type { Point } from '../contour/point.js';
import type { Vertex } from '../contour/vertex.js';
import type { Patch } from '../board/mesh.js';

/** One routed pocket: a profile on its face and a depth into the piece. Face frame of its row, mm. */
export interface Chamber {
  /**
   * `R2-07`: its row and its place from the nose; with a letter that says which part of the place it is, where it is
   * one (`letters.ts`). Stable when other rows and places change.
   */
  readonly id: string;
  readonly row: string;
  /** The place on the grid, counted from the nose, 1 and up. */
  readonly place: number;
  /** The cut itself, counter-clockwise with true arcs at the corners; `x` is `s`, `y` is `z`. */
  readonly contour: readonly Vertex[];
  /** The same as straight lines that hold the contour wholly inside: what the walls are proved with. `[s, z]` pairs. */
  readonly profile: readonly Point[];
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
  readonly kind: NoteKind;
  /** Row, chamber, dot or joint. */
  readonly where: string;
  /** The row it is about, and the place in it, where it is about one. */
  readonly row?: string;
  readonly place?: number;
  readonly why: Why;
  /** Names of the keep-outs or dots, where one is the reason; the share that guides lose, in percent. */
  readonly by: readonly string[];
  /** How much shorter than its place a trimmed chamber is, mm. */
  readonly shorter?: number;
  /** The wall that stops it, where a wall does. */
  readonly wall?: Patch;
  /** Where along the joint or face it is, `s`, mm. */
  readonly at?: number;
  /** What there is, and what there would have to be, mm. */
  readonly has?: number;
  readonly needs?: number;
}

/**
 * `solid` – no chamber there; `trimmed` – shorter than its place; `split` – in two; `lowered` – passes under or over
 * something; `small` – much smaller than its neighbours; `shifted` – a row moved so that its webs meet the neighbour's;
 * `glue` – something about dots or smears; `rout` – something about cutter and faces; `guide` – something about guides;
 * `measured` – something measured after shaping.
 */
export type NoteKind =
  'solid' | 'trimmed' | 'split' | 'lowered' | 'small' | 'shifted' | 'glue' | 'rout' | 'guide' | 'measured';

/**
 * Of chambers: `shallow` – the row is nowhere as deep as the smallest chamber; `ends` – solid nose or tail; `keep-out`;
 * `dot` – glue in the way; `stagger` – dots find webs that meet; `room` – the walls leave too little; `cutter` – the
 * cutter does not fit into the corners; `unproved` – no chamber of the smallest size kept its walls in the proof.
 *
 * Of glue: `no-joint` – no dotted joint has that name; `no-joints` – none is dotted at all; `no-room` – a joint is
 * nowhere high enough for a dot within its margin; `gap` – no dot could be put often enough; `near-end` – nor near
 * enough to the end; `off-face` – a dot does not lie on its face; `margin` – it lies too near to the finished surface;
 * `swallowed` – the chamber's cutter takes it away, as allowed; `too-near` – a chamber still comes too near.
 *
 * Of routing: `reach` – the cutter does not reach the far face; `cut-short` – chambers end where the cutter does and
 * could go deeper; `halves` – routed from both faces to meet; `flare` – the faces are not parallel, so that halves
 * would not meet; `blind` – it does not come out at the far face, as its row does, so the floor is left before it;
 * `opening` – a chamber too small for the bush or for any shared guide; `across` – a shared guide would cut across glue
 * that the chamber takes away whole; `kept` – a row that is routed, and kept as it is; `gone` – such a row is not in
 * the glue-up any more; `elsewhere` – its face is not where it was; `share` – guides lose more than the job allows.
 */
export type Why =
  | 'shallow'
  | 'ends'
  | 'keep-out'
  | 'dot'
  | 'stagger'
  | 'room'
  | 'cutter'
  | 'unproved'
  | 'no-joint'
  | 'no-joints'
  | 'no-room'
  | 'gap'
  | 'near-end'
  | 'off-face'
  | 'margin'
  | 'swallowed'
  | 'too-near'
  | 'reach'
  | 'cut-short'
  | 'halves'
  | 'flare'
  | 'blind'
  | 'opening'
  | 'across'
  | 'kept'
  | 'gone'
  | 'elsewhere'
  | 'share'
  | 'no-chamber';

/** Solid between two neighbouring chambers of a row, `s` from and to, mm. */
export interface Web {
  readonly row: string;
  readonly between: readonly [string, string];
  readonly from: number;
  readonly to: number;
}
