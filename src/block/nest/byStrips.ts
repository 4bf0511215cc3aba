import type { Nest, NestProblem, NestedSheet } from './nest.js';
import { allWanted, costOf, rulesOf } from './nest.js';
import type { PlaceRules } from './place.js';
import { mostValuable } from './knapsack.js';
import { finished, recreate } from './recreate.js';
import type { OpenLayout, Strategy } from './recreate.js';
import type { Region } from './region.js';
import { copyRegion, fullness, kindsIn, wholeSheet } from './region.js';
import { anyTaste, stripsOf, type StripSpace } from './strip.js';

/** How much chance mixes into which strips a sheet is filled with. */
const NOISE = 0.02;

/**
 * Takes one or two sheets apart into their strips, some of the strips into their blanks, and puts together again what
 * is loose and what was missing: as strips, each as full as can be, and as sheets of the strips that fill them best.
 * @param budget - what all sheets together may cost
 */
export function movedStrips(
  nest: Nest,
  problem: NestProblem,
  budget: number,
  rules: PlaceRules,
  draw: () => number,
): Nest {
  const sheets = nest.sheets.slice();
  const pick = (from: NestedSheet[]) => from[Math.floor(draw() * from.length)];
  const first = pick(sheets);
  const touched: NestedSheet[] = [];
  const used = problem.stock.map(() => 0);
  for (const { stock } of sheets) used[stock]!++;
  const layout: OpenLayout = { sheets: [], used, budget: budget - costOf(nest, problem) };
  let stock: number;
  let axis: 0 | 1;
  let count = 0;
  if (first) {
    touched.push(first);
    const alike = sheets.filter(
      (each) => each !== first && each.stock === first.stock && each.root.axis === first.root.axis,
    );
    const second = draw() < 0.5 ? undefined : pick(alike);
    if (second) touched.push(second);
    [stock, axis] = [first.stock, first.root.axis];
    count = touched.length;
  } else {
    stock = Math.floor(draw() * problem.stock.length);
    axis = problem.firstCuts[0]!;
  }
  // A further sheet, where there may be one.
  const { cost, count: there } = problem.stock[stock]!;
  if (used[stock]! < there && cost <= layout.budget && (count === 0 || draw() < 0.5)) {
    count++;
    used[stock]!++;
    layout.budget -= cost;
  }
  const keep = draw() < 0.3 ? 0 : draw();
  const kept: Region[] = [];
  const loose = nest.missing.slice();
  for (const { root } of touched) {
    for (const child of root.children) {
      if (keep > 0 && draw() < keep * fullness(child, root)) kept.push(child);
      else loose.push(...kindsIn(child));
    }
  }
  if (kept.length === 0) axis = problem.firstCuts[Math.floor(draw() * problem.firstCuts.length)]!;
  const space = spaceOf(problem.stock[stock]!, axis);
  const { strips, missing } = stripsOf(loose, problem, space, anyTaste(draw), draw);
  const filled = sheetsOf([...kept, ...strips], count, problem.stock[stock]!, space, problem, draw);
  for (const root of filled.roots) layout.sheets.push({ stock, root });
  for (let i = filled.roots.length; i < count; i++) {
    used[stock]!--;
    layout.budget += cost;
  }
  missing.push(...filled.left.flatMap(kindsIn));
  if (missing.length > 0) {
    const roots = layout.sheets.map(({ stock: of, root }) => ({ stock: of, root: copyRegion(root) }));
    layout.sheets.splice(0, Infinity, ...roots);
  }
  const still = missing.length > 0 ? recreate(layout, missing, problem, rules, PLAIN, draw) : [];
  const rest = new Set(touched);
  return { sheets: [...sheets.filter((each) => !rest.has(each)), ...finished(layout, problem, rules)], missing: still };
}

const PLAIN: Strategy = { order: 'area', noise: 0, overlooked: 0, stock: 'cheapest' };

/** The first layout: everything in strips, the cheapest foam first. */
export function inStrips(problem: NestProblem, draw: () => number): Nest {
  const rules = rulesOf(problem);
  const order = problem.stock
    .map((size, stock) => ({ ...size, stock, rate: size.cost / (size.length * size.width) }))
    .sort((a, b) => a.rate - b.rate);
  const layout: OpenLayout = { sheets: [], used: problem.stock.map(() => 0), budget: Infinity };
  let missing = allWanted(problem);
  for (const { stock, count, ...size } of order) {
    if (missing.length === 0 || count === 0) continue;
    const axis = problem.firstCuts[Math.floor(draw() * problem.firstCuts.length)]!;
    const space = spaceOf(size, axis);
    const made = stripsOf(missing, problem, space, anyTaste(draw), draw);
    const filled = sheetsOf(made.strips, count, size, space, problem, draw);
    for (const root of filled.roots) layout.sheets.push({ stock, root });
    missing = [...made.missing, ...filled.left.flatMap(kindsIn)];
  }
  return { sheets: finished(layout, problem, rules), missing };
}

function spaceOf({ length, width }: { length: number; width: number }, axis: 0 | 1): StripSpace {
  return axis === 1 ? { axis, length, width } : { axis, length: width, width: length };
}

/** As many sheets as there may be, each of the strips that fill it best. */
function sheetsOf(
  strips: readonly Region[],
  count: number,
  size: { length: number; width: number },
  space: StripSpace,
  problem: NestProblem,
  draw: () => number,
): { roots: Region[]; left: Region[] } {
  const worth = (strip: Region) => kindsIn(strip).reduce((sum, kind) => sum + problem.wanted[kind]!.value, 0);
  let left = [...strips].sort((a, b) => b.across - a.across);
  const roots: Region[] = [];
  while (roots.length < count && left.length > 0) {
    const items = left.map((strip) => ({ size: strip.across, value: worth(strip) * (1 + NOISE * draw()) }));
    const chosen = new Set(mostValuable(items, space.width));
    if (chosen.size === 0) break;
    const root = wholeSheet(size.length, size.width, space.axis);
    for (const strip of left.filter((_, i) => chosen.has(i))) {
      root.children.push(strip);
      root.free -= strip.across;
    }
    roots.push(root);
    left = left.filter((_, i) => !chosen.has(i));
  }
  return { roots, left };
}
