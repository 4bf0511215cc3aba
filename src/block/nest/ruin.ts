import { kindsIn, OPEN, takeOut } from './region.js';
import type { Region } from './region.js';

/** How often a piece is looked into rather than taken out whole. */
const DESCEND = 0.8;

/** Takes pieces at random out of the sheets until at least `count` blanks are out. @returns the kinds taken out */
export function ruin(roots: readonly Region[], count: number, draw: () => number): number[] {
  const out: number[] = [];
  const full = roots.filter((root) => root.children.length > 0);
  while (out.length < count && full.length > 0) {
    const which = Math.floor(draw() * full.length);
    const piece = takeAny(full[which]!, draw);
    if (full[which]!.children.length === 0) full.splice(which, 1);
    out.push(...kindsIn(piece));
  }
  return out;
}

function takeAny(root: Region, draw: () => number): Region {
  let parent = root;
  for (;;) {
    const index = Math.floor(draw() * parent.children.length);
    const child = parent.children[index]!;
    if (child.kind !== OPEN || child.children.length === 0 || draw() > DESCEND) return takeOut(parent, index);
    parent = child;
  }
}
