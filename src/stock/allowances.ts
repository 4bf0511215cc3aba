import type { Depths } from './nearest.js';
import { placed, type Placement } from './placement.js';
import type { SawnStrip } from './sawn.js';
import type { Skin } from './skin.js';

/**
 * What stock stands over each point of the skin at some placement: `over` its least thickness, mm, negative where the
 * stock falls short; `toward` the unit vector in which it is measured, three numbers a point, frame of the stock.
 */
export interface Allowances {
  readonly over: Float64Array;
  readonly toward: Float64Array;
}

/** Before anything is measured. */
export function noAllowances({ side: { length } }: Skin): Allowances {
  return { over: new Float64Array(length), toward: new Float64Array(3 * length) };
}

export type Measure = (placement: Placement, into: Allowances, points: Uint32Array) => void;

/**
 * Remembers for each point where its stock was thinnest, so that the next placement is measured sooner; the first time
 * it begins where the point before it was thinnest.
 */
export function measuring(skin: Skin, strips: readonly SawnStrip[], length: number, depths: Depths): Measure {
  const near = new Int32Array(skin.side.length).fill(-1);
  const point = new Float64Array(3);
  const toward = new Float64Array(3);
  return (placement, into, points) => {
    const lies = placed(placement, length);
    for (const i of points) {
      const x = skin.at[3 * i]!;
      const { moved } = strips[skin.strip[i]!]!;
      [point[0], point[2]] = lies(x, skin.at[3 * i + 2]!);
      point[1] = skin.at[3 * i + 1]! - moved.at - moved.slope * x;
      into.over[i] = depths.depth(point, toward, near[i]! < 0 ? depths.triangle() : near[i]!);
      near[i] = depths.triangle();
      into.toward.set(toward, 3 * i);
    }
  };
}
