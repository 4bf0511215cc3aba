import type { MillingSpec, PlankSpec } from '../../job/spec/stock.js';
import { laidPart, nested, type LaidPart, type Part, type Placed } from './nest.js';
import { scarfed } from './scarf.js';
import { areaOf } from '../../contour/area.js';
import type { Profile } from './profile.js';

/** A plank that is bought or taken from stock, and what is sawn from it: one leaf, or several where it is resawn. */
export interface SawnPlank {
  readonly plank: PlankSpec;
  /** Place of its size in the list of the job. */
  readonly size: number;
  readonly leaves: readonly (readonly Placed[])[];
}

/** A part that no plank gives: what is missing, and by how much, mm or planks. */
export interface Lack {
  readonly part: string;
  readonly why: 'material' | 'thickness' | 'width' | 'length' | 'count';
  readonly material: string;
  readonly needs: number;
  readonly has: number;
  /** The narrowest straight board that holds the part, mm. */
  readonly size: { readonly length: number; readonly width: number; readonly thickness: number };
}

/** What to buy and how to saw it. */
export interface LumberList {
  readonly planks: readonly SawnPlank[];
  readonly lacks: readonly Lack[];
  /** Of all planks; absent where one has no price. */
  readonly cost?: number;
  readonly boardFeet?: number;
  /** Of the planks' volume, what becomes no part, 0..1. */
  readonly waste: number;
}

/** The planks that all profiles are sawn from, bought as cheaply as the search finds, else with little waste. */
export function lumberList(
  profiles: readonly Profile[],
  planks: readonly PlankSpec[],
  milling: MillingSpec,
): LumberList {
  const lacks: Lack[] = [];
  const bought: SawnPlank[] = [];
  const left = planks.map(({ count }) => count ?? Infinity);
  const groups = new Map<string, { material: string; thickness: number; parts: LaidPart[] }>();
  profiles.forEach((profile, i) => {
    const { member, thickness } = profile;
    const material = member.material.name;
    const parts = partsOf(profile, planks, milling, i % 2 === 0 ? 0 : 1);
    for (const laid of parts.map(laidPart)) {
      const lack = lackOf(laid, material, planks, milling);
      if (lack) {
        lacks.push(lack);
        continue;
      }
      const key = `${material} ${thickness.toFixed(2)}`;
      const group = groups.get(key) ?? { material, thickness, parts: [] };
      group.parts.push(laid);
      groups.set(key, group);
    }
  });
  for (const { material, thickness, parts } of groups.values()) {
    const sizes = planks.flatMap((plank, size) =>
      plank.material.name === material && plank.thickness >= thickness - ROUNDING ? [{ plank, size }] : [],
    );
    const found = cheapest(parts, sizes, left, thickness, milling);
    for (const each of found.planks) left[each.size]!--;
    bought.push(...found.planks);
    for (const laid of found.rest)
      lacks.push({
        part: laid.part.name,
        why: 'count',
        material,
        needs: parts.length,
        has: parts.length - found.rest.length,
        size: sizeOf(laid),
      });
  }
  return { planks: bought, lacks, ...totals(bought) };
}

const ROUNDING = 1e-6;

function partsOf(
  { member, outline, thickness }: Profile,
  planks: readonly PlankSpec[],
  { scarf }: MillingSpec,
  turn: 0 | 1,
): Part[] {
  const whole: Part = { name: member.id, outline, thickness };
  const fit = planks.filter(
    ({ material, thickness: thick }) => material.name === member.material.name && thick >= thickness - ROUNDING,
  );
  const longest = Math.max(0, ...fit.map(({ length }) => length));
  if (fit.length === 0 || laidPart(whole).length <= longest || member.kind === 'strip') return [whole];
  // A part turned to best advantage may be a little longer than it is along the board.
  return scarfed(whole, longest * SHORTER, scarf, turn);
}

const SHORTER = 0.99;

const sizeOf = ({ part: { thickness }, length, width }: LaidPart): Lack['size'] => ({ length, width, thickness });

/** What keeps a part from being sawn from any plank, whatever there is of it. */
function lackOf(
  laid: LaidPart,
  material: string,
  planks: readonly PlankSpec[],
  milling: MillingSpec,
): Lack | undefined {
  const { part, length, width } = laid;
  const lack = (why: Lack['why'], needs: number, has: number): Lack => ({
    part: part.name,
    why,
    material,
    needs,
    has,
    size: sizeOf(laid),
  });
  const ofIt = planks.filter((plank) => plank.material.name === material);
  if (ofIt.length === 0) return lack('material', 1, 0);
  const thick = ofIt.filter((plank) => leavesOf(plank, part.thickness, milling) > 0);
  if (thick.length === 0) return lack('thickness', part.thickness, Math.max(...ofIt.map(({ thickness }) => thickness)));
  const long = thick.filter((plank) => plank.length >= length - ROUNDING);
  if (long.length === 0) return lack('length', length, Math.max(...thick.map((plank) => plank.length)));
  const wide = long.filter((plank) => plank.width >= width - ROUNDING);
  if (wide.length === 0) return lack('width', width, Math.max(...long.map((plank) => plank.width)));
  return undefined;
}

/** How many leaves of so much a plank gives: one as it is, more by resawing, each planed to thickness after the saw. */
export function leavesOf({ thickness: thick }: PlankSpec, thickness: number, { kerf, planing }: MillingSpec): number {
  if (thick < thickness - ROUNDING) return 0;
  return Math.max(1, Math.floor((thick + kerf + ROUNDING) / (thickness + planing + kerf)));
}

interface Size {
  readonly plank: PlankSpec;
  readonly size: number;
}
interface Found {
  readonly planks: SawnPlank[];
  readonly rest: LaidPart[];
}

/**
 * Plank by plank the one that gives most for its price, until one alone gives all the rest: then the cheapest that
 * does. Tried with each size first, and the cheapest of those is taken; of two as cheap the one with less wood.
 */
function cheapest(
  parts: readonly LaidPart[],
  sizes: readonly Size[],
  left: readonly number[],
  thickness: number,
  milling: MillingSpec,
): Found {
  const largestFirst = [...parts].sort((a, b) => b.width - a.width || b.length - a.length);
  let best: Found | undefined;
  for (const first of [undefined, ...sizes]) {
    const counts = [...left];
    const found: Found = { planks: [], rest: largestFirst };
    let { rest } = found;
    while (rest.length > 0) {
      const choices = (found.planks.length === 0 && first ? [first] : sizes)
        .filter(({ size }) => counts[size]! > 0)
        .map((size) => sawn(size, rest, thickness, milling))
        .filter(({ leaves }) => leaves.some((leaf) => leaf.length > 0));
      const [choice] = choices.sort((a, b) => worth(a, rest) - worth(b, rest));
      if (!choice) break;
      counts[choice.size]!--;
      found.planks.push(choice);
      const taken = new Set(choice.leaves.flat().map(({ laid }) => laid));
      rest = rest.filter((laid) => !taken.has(laid));
    }
    const now = { planks: found.planks, rest };
    if (
      !best ||
      now.rest.length < best.rest.length ||
      (now.rest.length === best.rest.length && price(now) < price(best))
    )
      best = now;
  }
  return best!;
}

function sawn({ plank, size }: Size, parts: readonly LaidPart[], thickness: number, milling: MillingSpec): SawnPlank {
  let rest = parts;
  const leaves = Array.from({ length: leavesOf(plank, thickness, milling) }, () => {
    const placed = nested(rest, plank.length, plank.width, milling.kerf);
    const taken = new Set(placed.map(({ laid }) => laid));
    rest = rest.filter((laid) => !taken.has(laid));
    return placed;
  });
  return { plank, size, leaves: leaves.filter((leaf, i) => i === 0 || leaf.length > 0) };
}

/** The smaller the better: a plank's price by what it gives; one that gives all there is left counts by its price. */
function worth({ plank, leaves }: SawnPlank, rest: readonly LaidPart[]): number {
  const given = leaves.flat();
  const most = rest.reduce((sum, laid) => sum + laid.width * laid.length, 0);
  const area = given.reduce((sum, { laid }) => sum + laid.width * laid.length, 0);
  return (priceOf(plank) * most) / area;
}

/** A plank without a price counts by its wood; any price outweighs that. */
const priceOf = ({ price, length, width, thickness }: PlankSpec) => (price ?? 0) + (length * width * thickness) / 1e12;
const price = ({ planks }: Found) => planks.reduce((sum, { plank }) => sum + priceOf(plank), 0);

function totals(planks: readonly SawnPlank[]): Pick<LumberList, 'cost' | 'boardFeet' | 'waste'> {
  const sum = (of: (each: SawnPlank) => number) => planks.reduce((all, each) => all + of(each), 0);
  const bought = sum(({ plank: { length, width, thickness } }) => length * width * thickness);
  const used = sum(({ leaves }) =>
    leaves.flat().reduce((all, { laid }) => all + areaWithin(laid) * laid.part.thickness, 0),
  );
  return {
    ...(planks.every(({ plank }) => plank.price !== undefined) && { cost: sum(({ plank }) => plank.price!) }),
    ...(planks.every(({ plank }) => plank.boardFeet !== undefined) && {
      boardFeet: sum(({ plank }) => plank.boardFeet!),
    }),
    waste: bought > 0 ? 1 - used / bought : 0,
  };
}

const areaWithin = ({ outline }: LaidPart) => areaOf(outline.map(([x, y]) => ({ x, y })));
