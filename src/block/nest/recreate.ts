import type { NestProblem, NestedSheet, WantedBlank } from './nest.js';
import { valued } from './nest.js';
import { bestPlace, putAt } from './place.js';
import type { BlankKind, PlaceRules } from './place.js';
import { ROUNDING } from './cutPart.js';
import { wholeSheet } from './region.js';
import type { Region } from './region.js';

/** Sheets under work: their trees may be changed. */
export interface OpenLayout {
  readonly sheets: { readonly stock: number; readonly root: Region }[];
  /** How many sheets of each stock are in use, these and all others. */
  readonly used: number[];
  /** What may still be spent on further sheets. */
  budget: number;
}

/** How one round chooses. */
export interface Strategy {
  /** Which blanks go first. */
  readonly order: 'area' | 'length' | 'height' | 'value' | 'long side';
  /** How much chance mixes into the order, 0..1. */
  readonly noise: number;
  /** The share of places that are overlooked. */
  readonly overlooked: number;
  /** Takes the sheet that is cheapest by area, or any that can be paid. */
  readonly stock: 'cheapest' | 'any';
}

/**
 * Gives each of the blanks its best place in the layout, opening sheets as far as the budget allows.
 * @returns what found no place
 */
export function recreate(
  layout: OpenLayout,
  blanks: readonly number[],
  problem: NestProblem,
  rules: PlaceRules,
  strategy: Strategy,
  draw: () => number,
): number[] {
  const missing: number[] = [];
  const roots = layout.sheets.map(({ root }) => root);
  const hopeless = new Set<number>();
  for (const kind of inOrder(blanks, problem, strategy, draw)) {
    const blank = problem.wanted[kind]!;
    let place = hopeless.has(kind) ? undefined : bestPlace(roots, blank, rules, draw, strategy.overlooked);
    if (!place && !hopeless.has(kind)) {
      const sheet = openSheet(layout, blank, problem, strategy, draw);
      if (sheet) {
        layout.sheets.push(sheet);
        roots.push(sheet.root);
        place = bestPlace([sheet.root], blank, rules, draw, 0);
      }
    }
    if (place) {
      putAt(place, kind, blank);
    } else {
      hopeless.add(kind);
      missing.push(kind);
    }
  }
  return missing;
}

export function finished(layout: OpenLayout, problem: NestProblem, rules: PlaceRules): NestedSheet[] {
  return layout.sheets
    .filter(({ root }) => root.children.length > 0)
    .map(({ stock, root }) => valued(stock, root, problem, rules));
}

function openSheet(layout: OpenLayout, blank: BlankKind, problem: NestProblem, strategy: Strategy, draw: () => number) {
  let chosen = -1;
  let least = Infinity;
  problem.stock.forEach((size, stock) => {
    if (layout.used[stock]! >= size.count || size.cost > layout.budget || !fitsOn(blank, size)) return;
    const rank = strategy.stock === 'cheapest' ? size.cost / (size.length * size.width) : draw();
    if (rank < least) [least, chosen] = [rank, stock];
  });
  if (chosen < 0) return undefined;
  const { length, width, cost } = problem.stock[chosen]!;
  const axes = problem.firstCuts;
  layout.used[chosen]!++;
  layout.budget -= cost;
  return { stock: chosen, root: wholeSheet(length, width, axes[Math.floor(draw() * axes.length)]!) };
}

/** Whether a blank can be cut from an untouched sheet. */
export function fitsOn(blank: BlankKind, sheet: { readonly length: number; readonly width: number }): boolean {
  const lies = (along: number, across: number) => along <= sheet.length + ROUNDING && across <= sheet.width + ROUNDING;
  return lies(blank.length, blank.height) || (blank.mayTurn && lies(blank.height, blank.length));
}

function inOrder(blanks: readonly number[], problem: NestProblem, strategy: Strategy, draw: () => number): number[] {
  return blanks
    .map((kind) => ({ kind, rank: rankOf(problem.wanted[kind]!, strategy.order) * (1 - strategy.noise * draw()) }))
    .sort((a, b) => b.rank - a.rank || a.kind - b.kind)
    .map(({ kind }) => kind);
}

function rankOf({ length, height, value }: WantedBlank, order: Strategy['order']): number {
  switch (order) {
    case 'area':
      return length * height;
    case 'length':
      return length * length;
    case 'height':
      return height * height;
    case 'value':
      return value / (length * height);
    case 'long side':
      return Math.max(length, height) ** 2;
  }
}
