import type { ChamberSpec } from '../job/job.js';
import { areaBetween, edgesWithin, leastHeight, type Edges, type HeightBounds } from './edges.js';
import { lettersOf } from './letters.js';
import type { Blocked, Obstacle } from './obstacle.js';
import { boundAt, type Room } from './room.js';
import { partedBy, without, type Stretch } from './stretch.js';

/** Two corners take no more than this many cutter diameters of an edge, also where they are sharper than square. */
const CORNER_ROOM = 1.25;
/** Obstacles a place may pass in every way; more are gone around. */
const MOST_CHOICES = 4;

/**
 * A way to fill one place: a depth and, beside each other, the profiles that fit, none of them lower than `low` nor
 * higher than `high`.
 */
export interface Filling extends Band {
  readonly depth: number;
  /** Whether it comes out at the far face. */
  readonly through: boolean;
  readonly parts: readonly Edges[];
  /** Behind the place's name, for each part. */
  readonly letters: readonly string[];
  /** What each part has to itself, along the face. */
  readonly stretches: readonly Stretch[];
  readonly volume: number;
  /** What took something away: gone around, or passed under or over. */
  readonly around: readonly Obstacle[];
  readonly past: readonly Obstacle[];
}

export interface Band {
  readonly low: number;
  readonly high: number;
}

/** An obstacle and the rectangle it blocks. */
export interface Met {
  readonly obstacle: Obstacle;
  readonly blocked: Blocked;
}

/** How deep the chambers of a place may go, mm. */
export interface Ends {
  /** Those that do not come out: before the rail or a floor. */
  readonly blind: number;
  /** Those that come out at the far face, where there is one. Nothing goes to a depth between. */
  readonly through?: number;
}

/** Of all depths that end as they may, and all ways past what is met there, the one that takes most out. */
export function bestFilling(
  within: (deep: number) => Stretch | undefined,
  ends: Ends,
  room: Room,
  met: (deep: number) => readonly Met[],
  spec: ChamberSpec,
): Filling | undefined {
  let best: Filling | undefined;
  for (const { j, depth, through } of depthsTo(ends, room)) {
    const stretch = depth >= spec.smallest.depth ? within(depth) : undefined;
    if (!stretch) continue;
    const whole = reachAlong(stretch, room, j);
    for (const way of waysPast(met(depth))) {
      const filling = fillingAt(stretch, whole, room, j, depth, way, spec);
      if (filling && filling.volume > (best?.volume ?? 0)) best = { ...filling, through };
    }
  }
  return best;
}

/** Depths worth trying, and the number of the room's first depth that is not before each. */
function depthsTo({ blind, through }: Ends, { layer, layers }: Room) {
  const depths: { j: number; depth: number; through: boolean }[] = [];
  for (let j = 1; j < layers; j++) {
    depths.push({ j, depth: Math.min(j * layer, blind), through: false });
    if (j * layer >= blind) break;
  }
  const j = through === undefined ? layers : Math.ceil(through / layer - ROUNDING);
  if (j < layers) depths.push({ j, depth: through!, through: true });
  return depths;
}

/** Depths nearer to each other than this, as a share of a layer, are the same but for rounding. */
const ROUNDING = 1e-9;

interface Way extends Band {
  readonly around: readonly Met[];
  readonly past: readonly Obstacle[];
}

/** Every choice of going around, under or over each obstacle. */
function waysPast(met: readonly Met[]): Way[] {
  let ways: Way[] = [{ around: [], past: [], low: -Infinity, high: Infinity }];
  met.forEach((one, i) => {
    const { low, high } = one.blocked;
    const choices = i < MOST_CHOICES;
    ways = ways.flatMap((way): Way[] => [
      { ...way, around: [...way.around, one] },
      ...(choices && low > way.low
        ? [{ ...way, past: [...way.past, one.obstacle], high: Math.min(way.high, low) }]
        : []),
      ...(choices && high < way.high
        ? [{ ...way, past: [...way.past, one.obstacle], low: Math.max(way.low, high) }]
        : []),
    ]);
  });
  return ways;
}

function fillingAt(
  stretch: Stretch,
  whole: HeightBounds,
  room: Room,
  j: number,
  depth: number,
  { around, past, low, high }: Way,
  spec: ChamberSpec,
): Omit<Filling, 'through'> | undefined {
  const corner = CORNER_ROOM * spec.cutterDiameter;
  const height = Math.max(spec.smallest.height, corner);
  if (high - low < height) return undefined;
  const free = without(
    stretch,
    around.map(({ blocked }) => blocked),
  );
  const stretches = around.length === 0 ? free : partedBy(spec.web, free, spec.smallest.length);
  const parts: Edges[] = [];
  const own: Stretch[] = [];
  const drawn: Stretch[] = [];
  let volume = 0;
  for (const each of stretches) {
    const reached = each === stretch ? whole : reachAlong(each, room, j);
    const run = longestRun(past.length > 0 ? within(reached, low, high) : reached, height);
    if (!run || run.s[run.s.length - 1]! - run.s[0]! < spec.smallest.length) continue;
    const edges = edgesWithin(spec.shape, run, corner);
    const { from, to } = spanOf(edges);
    if (to - from < spec.smallest.length || leastHeight(edges) < spec.smallest.height) continue;
    parts.push(edges);
    own.push(each);
    drawn.push({ from, to });
    volume += areaBetween(edges) * depth;
  }
  if (parts.length === 0) return undefined;
  const letters = lettersOf(around.length > 0 ? drawnIn(whole, height, corner, spec) : undefined, drawn, spec);
  return {
    depth,
    parts,
    letters,
    stretches: own,
    volume,
    low,
    high,
    past,
    around: around.map(({ obstacle }) => obstacle),
  };
}

/** The room's reach at the ends of a stretch and at the even steps between them. */
function reachAlong({ from, to }: Stretch, room: Room, j: number): HeightBounds {
  const s = [from];
  for (let i = Math.floor(from / room.step) + 1; i * room.step < to; i++) s.push(i * room.step);
  s.push(to);
  return {
    s,
    top: s.map((each) => boundAt(room, room.top, j, each)),
    bottom: s.map((each) => boundAt(room, room.bottom, j, each)),
  };
}

function within({ s, top, bottom }: HeightBounds, low: number, high: number): HeightBounds {
  return { s, top: top.map((z) => Math.min(z, high)), bottom: bottom.map((z) => Math.max(z, low)) };
}

/** From where to where a chamber would be drawn in a reach; undefined where it is nowhere high enough. */
function drawnIn(reached: HeightBounds, height: number, corner: number, { shape }: ChamberSpec): Stretch | undefined {
  const run = longestRun(reached, height);
  return run && spanOf(edgesWithin(shape, run, corner));
}

function spanOf({ bottom }: Edges): Stretch {
  return { from: bottom[0]![0], to: bottom[bottom.length - 1]![0] };
}

/** The longest stretch of a reach over which it is at least so high. */
function longestRun({ s, top, bottom }: HeightBounds, height: number): HeightBounds | undefined {
  let best: [number, number] = [0, -1];
  let start = 0;
  for (let i = 0; i <= s.length; i++) {
    if (i < s.length && top[i]! - bottom[i]! >= height) continue;
    if (i - start > best[1] - best[0] + 1) best = [start, i - 1];
    start = i + 1;
  }
  const [from, to] = best;
  if (to <= from) return undefined;
  return { s: s.slice(from, to + 1), top: top.slice(from, to + 1), bottom: bottom.slice(from, to + 1) };
}
