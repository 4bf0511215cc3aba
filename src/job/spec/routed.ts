import type { Point } from '../../contour/point.js';
import type { Vertex } from '../../contour/vertex.js';

/** A row that is routed: what later plans keep. Face frame of the row, mm. */
export interface RoutedRow {
  readonly row: string;
  /** The day it was said, ISO 8601. */
  readonly day: string;
  /** Where its face was, board frame: a glue-up that puts it elsewhere is another board. */
  readonly face: { readonly origin: readonly [number, number]; readonly along: readonly [number, number] };
  /** Nose to tail. */
  readonly chambers: readonly RoutedChamber[];
}

/** A chamber as it was planned when its row was routed. */
export interface RoutedChamber {
  readonly id: string;
  readonly place: number;
  readonly depth: readonly [number, number];
  /** Litres. */
  readonly volume: number;
  readonly contour: readonly Vertex[];
  readonly profile: readonly Point[];
}
