import { SAME_SIZE } from './cutPart.js';

/**
 * A piece of sheet and how it is cut up, edge to edge: its kids lie side by side along its `axis`, each as wide as the
 * piece is across. Every size here has one saw cut added to it (sheets too), so that sizes add up without the saw and
 * the last cut of a piece costs nothing.
 */
export interface Region {
  /** Which kind of blank this is, or `OPEN` for a piece that is cut up further. */
  readonly kind: number;
  /** A blank that lies across the sheet. */
  readonly turned: boolean;
  /** Along which direction of the sheet the kids lie: 0 its length, 1 its width. */
  readonly axis: 0 | 1;
  /** Stages of cuts that were made to get this piece. */
  readonly level: number;
  /** Extent along `axis`. */
  room: number;
  /** Extent along the parent's axis, so square to `axis`. */
  across: number;
  /** What is left of `room` behind the last kid. */
  free: number;
  kids: Region[];
}

export const OPEN = -1;

/** A sheet before the first cut; `axis` 1 begins with rips (strips as long as the sheet), 0 with cross-cuts. */
export function wholeSheet(length: number, width: number, axis: 0 | 1): Region {
  const [room, across] = axis === 0 ? [length, width] : [width, length];
  return { kind: OPEN, turned: false, axis, level: 0, room, across, free: room, kids: [] };
}

export function copyRegion(region: Region): Region {
  const { kind, turned, axis, level, room, across, free } = region;
  const kids = new Array<Region>(region.kids.length);
  for (let i = 0; i < kids.length; i++) kids[i] = copyRegion(region.kids[i]!);
  return { kind, turned, axis, level, room, across, free, kids };
}

/** Calls `visit` with every piece that is cut up further. */
export function eachOpen(region: Region, visit: (open: Region) => void): void {
  visit(region);
  for (const kid of region.kids) if (kid.kind === OPEN) eachOpen(kid, visit);
}

/** Calls `visit` with every blank in a piece. */
export function eachBlank(region: Region, visit: (blank: Region) => void): void {
  for (const kid of region.kids) {
    if (kid.kind === OPEN) eachBlank(kid, visit);
    else visit(kid);
  }
}

/** Takes a kid out of its parent; the foam goes back to what is free. */
export function takeOut(parent: Region, index: number): Region {
  const [kid] = parent.kids.splice(index, 1) as [Region];
  parent.free += kid.across;
  return kid;
}

/** Narrows every piece to what its kids need and gives the rest back to its parent; empty pieces vanish. */
export function tighten(region: Region): void {
  for (let i = region.kids.length - 1; i >= 0; i--) {
    const kid = region.kids[i]!;
    if (kid.kind !== OPEN) continue;
    tighten(kid);
    if (kid.kids.length === 0) {
      takeOut(region, i);
      continue;
    }
    let spare = Infinity;
    for (const inner of kid.kids) spare = inner.kind === OPEN ? Math.min(spare, inner.free) : 0;
    if (spare <= SAME_SIZE) continue;
    kid.across -= spare;
    region.free += spare;
    for (const inner of kid.kids) {
      inner.room -= spare;
      inner.free -= spare;
    }
  }
}
