import { SAME_SIZE } from './cutPart.js';
import type { Nest, NestProblem, NestedSheet } from './nest.js';
import { rulesOf, valued } from './nest.js';
import { openPiece } from './place.js';
import { copyRegion, fullness, kindsIn, OPEN, takeOut, type Region } from './region.js';

/** What a layout takes of the width of its sheets of one size, mm. */
export function widthTaken({ sheets }: Nest, stock: number): number {
  return Math.max(0, ...sheets.filter((sheet) => sheet.stock === stock).map(({ root }) => widthOf(root)));
}

function widthOf(root: Region): number {
  if (root.axis === 1) return root.extent - root.free;
  return Math.max(...root.children.map((child) => (child.kind === OPEN ? child.extent - child.free : child.extent)));
}

/** The same layout on sheets of another width that holds it. */
export function widened(nest: Nest, problem: NestProblem): Nest {
  const rules = rulesOf(problem);
  return {
    ...nest,
    sheets: nest.sheets.map(({ stock, root }) =>
      valued(stock, ofWidth(root, problem.stock[stock]!.width), problem, rules),
    ),
  };
}

function ofWidth(old: Region, width: number): Region {
  const root = copyRegion(old);
  if (root.axis === 1) {
    root.free += width - root.extent;
    root.extent = width;
    return root;
  }
  const more = width - root.across;
  root.across = width;
  root.children = root.children.map((child) => {
    if (child.kind === OPEN) {
      child.extent += more;
      child.free += more;
      return child;
    }
    if (more <= SAME_SIZE) return { ...child, extent: width };
    const strip = openPiece(1, 1, width, child.across);
    strip.free -= child.extent;
    return { ...strip, children: [{ ...child, axis: 0, level: 2, extent: child.across, across: child.extent }] };
  });
  return root;
}

/** On narrower sheets, without the pieces that these do not hold, the emptiest first. */
export function narrowed(nest: Nest, problem: NestProblem): Nest {
  const rules = rulesOf(problem);
  const missing: number[] = [];
  const sheets = nest.sheets.map(({ stock, root: old }): NestedSheet => {
    const width = problem.stock[stock]!.width;
    const root = copyRegion(old);
    const giveUp = (parent: Region, i: number) => missing.push(...kindsIn(takeOut(parent, i)));
    const shorten = (piece: Region) => {
      while (piece.extent - piece.free > width) {
        const worths = piece.children.map((child) => fullness(child, piece));
        giveUp(piece, worths.indexOf(Math.min(...worths)));
      }
    };
    if (root.axis === 1) shorten(root);
    else {
      for (let i = root.children.length - 1; i >= 0; i--) {
        const child = root.children[i]!;
        if (child.kind === OPEN) shorten(child);
        else if (child.extent > width) giveUp(root, i);
        if (child.kind === OPEN && child.children.length === 0) giveUp(root, i);
      }
    }
    return valued(stock, ofWidth(root, width), problem, rules);
  });
  return { sheets: sheets.filter(({ root }) => root.children.length > 0), missing: [...nest.missing, ...missing] };
}
