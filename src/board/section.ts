import type { MeasuredSection } from '../job/spec/board.js';
import type { NumberedSection } from '../job/spec/board.js';
import type { SectionShape } from '../job/spec/board.js';
import { monotone, type Curve } from './monotone.js';

/**
 * A half-section freed of its size: `across` runs from 0 at the centreline to 1 at the rail apex, `up` from 0 at the
 * bottom to 1 at the deck, both on the centreline. The parameter `v` runs over three stretches, each in proportion to
 * its length: 0–1 the bottom from the keel to its edge, 1–2 on to the apex, 2–3 over the deck to the centreline. A soft
 * bottom has an edge too, where its neighbours have theirs, so that a hard edge can run out into a soft rail.
 */
export interface HalfSection {
  across(v: number): number;
  up(v: number): number;
}

/** The section's own size, by which it is freed, mm. */
interface Size {
  readonly half: number;
  readonly thickness: number;
}

interface Point {
  readonly y: number;
  readonly z: number;
}

/**
 * Points a stretch of a section given by numbers is drawn with; its curves bend gently, so this is far finer than the
 * mesh.
 */
const FINENESS = 96;

/** Where the bottom's edge lies on the way to the apex, as a share of the half-width; undefined for a soft bottom. */
export function edgeShare(section: SectionShape, half: number): number | undefined {
  if (section.kind === 'numbers')
    return section.bevel === undefined ? undefined : Math.max(0.05, 1 - section.bevel / half);
  const apex = apexOf(section);
  const edge = section.points.find((p, i) => p.edge && i > 0 && i < apex);
  return edge && edge.y / section.points[apex]!.y;
}

/**
 * The section at a station of the given half-width and thickness, mm; `softEdge` is where a soft bottom is parted, a
 * share of the half-width.
 */
export function sectionOf(shape: SectionShape, size: Size, softEdge: number | undefined): HalfSection {
  const stretches = shape.kind === 'numbers' ? fromNumbers(shape, size, softEdge) : fromPoints(shape, softEdge ?? 0.85);
  const curves = stretches.map((stretch) => byLength(stretch, size));
  const pick = (v: number) => (v < 1 ? 0 : v < 2 ? 1 : 2);
  return {
    across: (v) => curves[pick(v)]!.across(v - pick(v)),
    up: (v) => curves[pick(v)]!.up(v - pick(v)),
  };
}

/** The three stretches of a section given by numbers, as points freed of size. */
function fromNumbers(shape: NumberedSection, size: Size, softEdge: number | undefined): Point[][] {
  const contour = bottomContour(shape, size.thickness);
  const crown = shape.crown / size.thickness;
  const deckRail = superellipse(shape.above);
  const deck = [...deckRail]
    .reverse()
    .map(({ y, fall }) => ({ y, z: 1 - crown * y * y - (1 - crown - shape.apex) * fall }));

  if (shape.bevel !== undefined) {
    const edge = Math.max(0.05, 1 - shape.bevel / size.half);
    const inner = Array.from({ length: FINENESS + 1 }, (_, i) => (edge * i) / FINENESS).map((y) => ({
      y,
      z: contour(y),
    }));
    return [inner, [inner[FINENESS]!, { y: 1, z: shape.apex }], deck];
  }
  const bottom = superellipse(shape.below).map(({ y, fall }) => ({
    y,
    z: contour(y) + (shape.apex - contour(1)) * fall,
  }));
  return [...partAt(bottom, softEdge ?? shape.below), deck];
}

/**
 * The bottom from centreline to rail line before the rail turns up: over the bottom at the centreline, as a share of
 * the thickness.
 */
function bottomContour({ bottom }: NumberedSection, thickness: number): Curve {
  if (bottom.kind === 'flat') return () => 0;
  const depth = bottom.depth / thickness;
  if (bottom.kind === 'vee') return (y) => depth * y;
  return (y) => (bottom.kind === 'roll' ? depth : -depth) * y * y;
}

/**
 * A quarter of a superellipse `y^n + (1 − fall)^n = 1` from the centreline out: `fall` 0 at the centre, 1 at the rail,
 * upright there. `fullness` is where it crosses the diagonal, hence `n = ln 2 / −ln fullness`. G. Lamé, "Examen des
 * différentes méthodes" (1818).
 */
function superellipse(fullness: number): { y: number; fall: number }[] {
  const n = Math.LN2 / -Math.log(fullness);
  const other = (a: number) => (1 - a ** n) ** (1 / n);
  const points: { y: number; fall: number }[] = [];
  for (let i = 0; i <= FINENESS; i++) {
    const y = (fullness * i) / FINENESS;
    points.push({ y, fall: 1 - other(y) });
  }
  for (let i = FINENESS - 1; i >= 0; i--) {
    const height = (fullness * i) / FINENESS;
    points.push({ y: other(height), fall: 1 - height });
  }
  return points;
}

/**
 * The three stretches of a measured section: a smooth curve through its points, broken at hard edges, upright at the
 * apex.
 */
function fromPoints(shape: MeasuredSection, softEdge: number): Point[][] {
  const { points } = shape;
  const apex = apexOf(shape);
  const half = points[apex]!.y;
  const base = points[0]!.z;
  const thickness = points[points.length - 1]!.z - base;
  const free = points.map((p) => ({ y: p.y / half, z: (p.z - base) / thickness, edge: p.edge }));

  const bends: number[] = [
    0,
    ...free.flatMap((p, i) => (p.edge && i > 0 && i < free.length - 1 ? [i] : [])),
    free.length - 1,
  ];
  const steps = free.length > MANY_POINTS ? FEW_STEPS : STEPS_PER_GAP;
  const drawn: Point[] = [free[0]!];
  const at: number[] = [0];
  for (let b = 0; b + 1 < bends.length; b++) {
    const run = free.slice(bends[b], bends[b + 1]! + 1);
    const u = Float64Array.from(run, () => 0);
    for (let i = 1; i < run.length; i++) {
      u[i] = u[i - 1]! + Math.hypot((run[i]!.y - run[i - 1]!.y) * half, (run[i]!.z - run[i - 1]!.z) * thickness);
    }
    const level = (p: { edge: boolean; y: number }) => !p.edge && p.y === 0;
    const y = monotone(
      u,
      run.map((p) => p.y),
    );
    const z = monotone(
      u,
      run.map((p) => p.z),
      { ...(level(run[0]!) && { first: 0 }), ...(level(run[run.length - 1]!) && { last: 0 }) },
    );
    for (let i = 1; i < run.length; i++) {
      for (let k = 1; k <= steps; k++) {
        const here = u[i - 1]! + ((u[i]! - u[i - 1]!) * k) / steps;
        drawn.push({ y: y(here), z: z(here) });
      }
      at[bends[b]! + i] = drawn.length - 1;
    }
  }
  const bottom = drawn.slice(0, at[apex]! + 1);
  const deck = drawn.slice(at[apex]);
  const edge = free.findIndex((p, i) => p.edge && i > 0 && i < apex);
  return edge < 0
    ? [...partAt(bottom, softEdge), deck]
    : [bottom.slice(0, at[edge]! + 1), bottom.slice(at[edge]), deck];
}

/** Points drawn between two measured ones; fewer where so many are measured that they lie close together. */
const STEPS_PER_GAP = 24;
const MANY_POINTS = 60;
const FEW_STEPS = 4;

/** The widest of the measured points. */
function apexOf({ points }: MeasuredSection): number {
  let apex = 0;
  points.forEach((p, i) => {
    if (p.y > points[apex]!.y) apex = i;
  });
  return apex;
}

/** Parts a bottom in two where it reaches the given share of the half-width. */
function partAt(bottom: readonly Point[], share: number): [Point[], Point[]] {
  const last = bottom.length - 2;
  const i = Math.min(
    Math.max(
      bottom.findIndex((p) => p.y > share),
      1,
    ),
    last,
  );
  return [bottom.slice(0, i + 1), bottom.slice(i)];
}

/** A stretch by its length, 0 to 1, lengths measured at true size. */
function byLength(points: readonly Point[], size: Size): { across: Curve; up: Curve } {
  const u: number[] = [0];
  const kept: Point[] = [points[0]!];
  for (const p of points.slice(1)) {
    const q = kept[kept.length - 1]!;
    const step = Math.hypot((p.y - q.y) * size.half, (p.z - q.z) * size.thickness);
    if (step < SAME_POINT) continue;
    u.push(u[u.length - 1]! + step);
    kept.push(p);
  }
  kept[kept.length - 1] = points[points.length - 1]!;
  const total = u[u.length - 1]! || 1;
  const share = u.map((each) => each / total);
  return {
    across: monotone(
      share,
      kept.map((p) => p.y),
    ),
    up: monotone(
      share,
      kept.map((p) => p.z),
    ),
  };
}

/** Points nearer than this, mm, are one. */
const SAME_POINT = 1e-9;
