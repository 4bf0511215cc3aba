import type { PlanPoint } from '../job/spec/board.js';
import type { OutlineSpec } from '../job/spec/board.js';
import { monotone, type Curve } from './monotone.js';

/**
 * One side of the outline in plan, mm. `outer` is the half-width at the rail, `inner` the half-width of a swallow's
 * notch (0 elsewhere).
 */
export interface Outline {
  outer(x: number): number;
  inner(x: number): number;
  /** Where a notch begins, `x`; the board's length where there is none. */
  readonly notchAt: number;
}

/**
 * The outline as a curve in the plane: `x` and half-width each run on a monotone cubic over the length of the chain of
 * points, so that the curve can stand up at a round tip, where no function of `x` can.
 */
export function outlineOf(spec: OutlineSpec, length: number): Outline {
  const { nose, tail } = spec;
  const first = nose.kind === 'square' ? nose.half : 0;
  const last = 'half' in tail ? tail.half : 0;
  const chain: PlanPoint[] = [
    { x: 0, half: first },
    ...spec.points.filter((p) => p.x > 0 && p.x < length),
    { x: length, half: last },
  ];
  const along = new Float64Array(chain.length);
  for (let i = 1; i < chain.length; i++) {
    along[i] = along[i - 1]! + Math.hypot(chain[i]!.x - chain[i - 1]!.x, chain[i]!.half - chain[i - 1]!.half);
  }
  const x = monotone(
    along,
    chain.map((p) => p.x),
    {
      ...(nose.kind === 'round' && { first: 0 }),
      ...(tail.kind === 'round' && { last: 0 }),
    },
  );
  const half = monotone(
    along,
    chain.map((p) => p.half),
  );
  const notchAt = tail.kind === 'swallow' ? length - tail.depth : length;

  return {
    outer(at) {
      const width = half(lengthAlong(x, along, chain, at));
      return tail.kind === 'squash' ? Math.max(0, width - cornerCut(at - (length - tail.corner), tail.corner)) : width;
    },
    inner: (at) => (tail.kind === 'swallow' && at > notchAt ? (tail.half * (at - notchAt)) / tail.depth : 0),
    notchAt,
  };
}

/** How far a corner eased over `radius` draws the outline in, `past` mm beyond where it begins. */
function cornerCut(past: number, radius: number): number {
  if (past <= 0 || radius <= 0) return 0;
  return radius - Math.sqrt(Math.max(0, radius * radius - past * past));
}

/**
 * The length along the chain at which it reaches `at`, between the two points around it: by false position, the kept
 * end's value halved (M. Dowell and P. Jarratt, "A modified regula falsi method", BIT 11, 1971), because the curve may
 * stand still in `x` at a round tip.
 */
function lengthAlong(x: Curve, along: Float64Array, chain: readonly PlanPoint[], at: number): number {
  const next = chain.findIndex((p) => p.x >= at);
  if (next < 0) return along[along.length - 1]!;
  if (next === 0) return 0;
  let low = along[next - 1]!;
  let high = along[next]!;
  let below = chain[next - 1]!.x - at;
  let above = chain[next]!.x - at;
  if (above === 0) return high;
  for (let i = 0; high - low > ALONG && i < MOST; i++) {
    const guess = low + ((high - low) * below) / (below - above);
    const off = x(guess) - at;
    if (Math.abs(off) < ALONG) return guess;
    if (off < 0) {
      low = guess;
      below = off;
      above /= 2;
    } else {
      high = guess;
      above = off;
      below /= 2;
    }
  }
  return (low + high) / 2;
}

/** How near the length along the chain is found, mm, and in how many steps at most. */
const ALONG = 1e-8;
const MOST = 100;
