import { SAME_SIZE } from './cutPart.js';

/**
 * A piece of sheet and how it is cut up, edge to edge: its children lie side by side along its `axis`, each as wide as
 * the piece is across. Every size here has one saw cut added to it (sheets too), so that sizes add up without the saw
 * and the last cut of a piece costs nothing.
 */
export interface Region {
  /** Which kind of blank this is, or `OPEN` for a piece that is cut up further. */
  readonly kind: number;
  /** A blank that lies across the sheet. */
  readonly turned: boolean;
  /** Along which direction of the sheet the children lie: 0 its length, 1 its width. */
  readonly axis: 0 | 1;
  /** Stages of cuts that were made to get this piece. */
  readonly level: number;
  /** Extent along `axis`. */
  extent: number;
  /** Extent along the parent's axis, so square to `axis`. */
  across: number;
  /** What is left of `room` behind the last child. */
  free: number;
  children: Region[];
}

export const OPEN = -1;

/** A sheet before the first cut; `axis` 1 begins with rips (strips as long as the sheet), 0 with cross-cuts. */
export function wholeSheet(length: number, width: number, axis: 0 | 1): Region {
  const [room, across] = axis === 0 ? [length, width] : [width, length];
  return { kind: OPEN, turned: false, axis, level: 0, extent: room, across, free: room, children: [] };
}

export function copyRegion(region: Region): Region {
  const { kind, turned, axis, level, extent: room, across, free } = region;
  const children = new Array<Region>(region.children.length);
  for (let i = 0; i < children.length; i++) children[i] = copyRegion(region.children[i]!);
  return { kind, turned, axis, level, extent: room, across, free, children: children };
}

/** Calls `visit` with every piece that is cut up further. */
export function eachOpen(region: Region, visit: (open: Region) => void): void {
  visit(region);
  for (const child of region.children) if (child.kind === OPEN) eachOpen(child, visit);
}

/** Calls `visit` with every blank in a piece. */
export function eachBlank(region: Region, visit: (blank: Region) => void): void {
  for (const child of region.children) {
    if (child.kind === OPEN) eachBlank(child, visit);
    else visit(child);
  }
}

/** The share of a piece that is blanks, 0..1. */
export function fullness(child: Region, parent: Region): number {
  if (child.kind !== OPEN) return 1;
  let area = 0;
  eachBlank(child, (blank) => (area += blank.extent * blank.across));
  return area / (child.across * parent.across);
}

/** The kinds of all blanks in a piece, which may be a blank itself. */
export function kindsIn(piece: Region): number[] {
  if (piece.kind !== OPEN) return [piece.kind];
  const kinds: number[] = [];
  eachBlank(piece, ({ kind }) => kinds.push(kind));
  return kinds;
}

/** Takes a child out of its parent; the foam goes back to what is free. */
export function takeOut(parent: Region, index: number): Region {
  const [child] = parent.children.splice(index, 1) as [Region];
  parent.free += child.across;
  return child;
}

/** Narrows every piece to what its children need and gives the rest back to its parent; empty pieces vanish. */
export function tighten(region: Region): void {
  for (let i = region.children.length - 1; i >= 0; i--) {
    const child = region.children[i]!;
    if (child.kind !== OPEN) continue;
    tighten(child);
    if (child.children.length === 0) {
      takeOut(region, i);
      continue;
    }
    let spare = Infinity;
    for (const inner of child.children) spare = inner.kind === OPEN ? Math.min(spare, inner.free) : 0;
    if (spare <= SAME_SIZE) continue;
    child.across -= spare;
    region.free += spare;
    for (const inner of child.children) {
      inner.extent -= spare;
      inner.free -= spare;
    }
  }
}
