import { areaOf } from '../../contour/area.js';
import { straight } from '../../contour/straight.js';
import { fitsInside } from './containment.js';
import type { Foam, MadeShape, Outline, TrackedBlock } from '../log/trackedBlock.js';

/** How a block is turned before it is put in: `round` end for end, `over` with its deck edge down. */
export type Turn = 'round' | 'over' | 'round and over';

/** How closely a sawn and sanded block of foam is made and its chamber routed, mm. Common practice, no source. */
export const FIT_TOLERANCE = 0.5;
/**
 * Foams of one name whose densities differ by no more than this share are one foam: sheets of it vary as much. Common
 * practice, no source.
 */
const SAME_DENSITY = 0.1;

/** Every way to put a block in, the one it was made for first. */
export const TURNS: readonly (Turn | undefined)[] = [undefined, 'round', 'over', 'round and over'];

/** Two blocks as they are cut, or, where one is from a plan that did not record that, as their chambers are. */
export function shapesOf(a: TrackedBlock, b: TrackedBlock): readonly [Shape, Shape] {
  if (a.made && b.made) return [a.made, b.made];
  return [chamberOf(a), chamberOf(b)];
}

export type Shape = Omit<MadeShape, 'foam'> & { readonly foam?: Foam };

export function isSameFoam(a: Shape, b: Shape): boolean {
  if (!a.foam || !b.foam) return true;
  const off = Math.abs(a.foam.density - b.foam.density);
  return a.foam.name === b.foam.name && off <= SAME_DENSITY * Math.max(a.foam.density, b.foam.density);
}

/** The turn in which one block is as good as the other; `false` where there is none. */
export function turnThatSuits(made: Shape, asked: Shape): Turn | undefined | false {
  if (Math.abs(made.thickness - asked.thickness) > FIT_TOLERANCE) return false;
  const turn = TURNS.findIndex((each) => {
    const outline = turned(made.outline, each);
    return isWithin(outline, asked.outline) && isWithin(asked.outline, outline);
  });
  return turn >= 0 && TURNS[turn];
}

/** The turn in which one block can be trimmed to the other; `false` where there is none. */
export function turnToTrim(made: Shape, asked: Shape): Turn | undefined | false {
  if (asked.thickness > made.thickness + FIT_TOLERANCE) return false;
  const turn = TURNS.findIndex((each) => isWithin(asked.outline, turned(made.outline, each)));
  return turn >= 0 && TURNS[turn];
}

/** mm³. */
export function volumeOf({ outline, thickness }: Shape): number {
  return Math.abs(areaOf(straight(outline))) * thickness;
}

function chamberOf({ outline, sizes }: TrackedBlock): Shape {
  return { outline, thickness: sizes.thickness };
}

/**
 * A block is a prism: turned over, its other face is put in first, so each of the four ways is a turn in the hand and
 * no mirror image.
 */
function turned(outline: Outline, turn: Turn | undefined): Outline {
  if (turn === undefined) return outline;
  const along = turn === 'over' ? 1 : -1;
  const across = turn === 'round' ? 1 : -1;
  return outline.map(([s, z]) => [along * s, across * z]);
}

/** The same two outlines are asked about whenever a page is opened. */
const known = new Map<string, boolean>();
const MOST_KNOWN = 20_000;

function isWithin(small: Outline, large: Outline): boolean {
  const pair = `${key(small)} ${key(large)}`;
  const before = known.get(pair);
  if (before !== undefined) return before;
  if (known.size >= MOST_KNOWN) known.clear();
  const within = fitsInside(small, large, FIT_TOLERANCE);
  known.set(pair, within);
  return within;
}

/** Outlines that differ only in where they lie have one key; to 0.001 mm, as they are compared. */
function key(outline: Outline): string {
  const [s0, z0] = [Math.min(...outline.map(([s]) => s)), Math.min(...outline.map(([, z]) => z))];
  return outline.map(([s, z]) => `${(s - s0).toFixed(3)},${(z - z0).toFixed(3)}`).join(';');
}
