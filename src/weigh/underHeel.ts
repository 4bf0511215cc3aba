import type { Chamber } from '../chamber/chamber.js';
import { stretchOf } from '../chamber/stretch.js';
import { goesThrough } from '../chamber/through.js';
import { spanAt } from '../contour/span.js';
import type { Job } from '../job/job.js';
import { USUAL_GLASS } from '../job/usual-glass.js';
import { toBoard } from '../layup/frame.js';
import type { Layup, Row } from '../layup/layup.js';
import { bendingOf, rectangle } from './bending.js';
import { depthsOf, within } from './cuts.js';
import { laminateOf, modulusOf } from './modulus.js';
import { bentInTheMiddle, givesInTheMiddle, POISSON } from './plate.js';

/**
 * How the deck bears a small hard load over a chamber. It compares places of one board; it is no promise that a skin
 * bears a heel.
 */
export interface UnderHeel {
  readonly chamber: string;
  /** Chambers that the skin spans there, left to right: this one, and those that it opens into across joints. */
  readonly over: readonly string[];
  /** Where the skin is thinnest, board frame, mm. */
  readonly at: readonly [number, number, number];
  /** How thick it is there, without its glass, mm. */
  readonly skin: number;
  /** What is not held up, in plan, the long side first, mm. */
  readonly sides: readonly [number, number];
  /** How far its middle gives under `HEEL.load` over the empty chamber, mm. */
  readonly empty: number;
  /** The same over its block, which lies under it as loose springs do. */
  readonly filled: number;
  /** Of the skin's inside over the empty chamber, as a share of its length. */
  readonly strain: number;
}

/** The edge of a heel: N, on a circle of so many mm. */
export const HEEL = { load: 100, radius: 10 } as const;

/** A load is small for a plate where its circle is no wider than half of it. */
const SMALL = 1 / 4;
/** A chamber that begins nearer to its face than this is open there, mm. */
const OPEN = 0.05;

/**
 * What the deck does over each chamber, in their order: a plate held up along four edges, free to turn there, by webs,
 * floor and neighbour. Where chambers open into each other across joints, the skin over them together is looked at too,
 * as long as they all lie beside each other; the worst is told.
 */
export function underHeelOf(
  { rows }: Layup,
  chambers: readonly Chamber[],
  job: Pick<Job, 'glass' | 'fill'>,
): UnderHeel[] {
  const rowOf = new Map(rows.map((row) => [row.id, row]));
  const pockets = chambers.map((chamber) => pocketOf(chamber, rowOf.get(chamber.row)!));
  const glass = job.glass ?? USUAL_GLASS;
  const cloth = [...glass.deck, glass.hotCoatCloth].reduce((sum, each) => sum + each, 0);
  const laminate = laminateOf(cloth, glass.resin);
  const bed = modulusOf(job.fill);
  const worst = new Map<Pocket, ReturnType<typeof givingWay>>();
  for (const first of pockets) {
    for (const { over, length } of spansFrom(first, pockets)) {
      const wide = over.reduce((sum, { deep }) => sum + deep, 0);
      const found = givingWay(over, [length, wide], laminate, bed);
      for (const pocket of over) if (found.empty > (worst.get(pocket)?.empty ?? 0)) worst.set(pocket, found);
    }
  }
  return pockets.map((pocket) => {
    const { filled, ...found } = worst.get(pocket)!;
    return { chamber: pocket.chamber.id, ...found, filled: filled() };
  });
}

/** A chamber as the deck lies over it. */
interface Pocket {
  readonly chamber: Chamber;
  /** Along the board, mm. */
  readonly from: number;
  readonly to: number;
  /** Into the piece, mm. */
  readonly deep: number;
  /** Of its block in the middle, mm. */
  readonly high: number;
  /** Of the softest member that it goes through, MPa. */
  readonly modulus: number;
  /** The joints that it opens at, where it does. */
  readonly left?: string;
  readonly right?: string;
}

/** Chambers that open into each other, left to right, and along how much of the board they all do, mm. */
interface Span {
  readonly over: readonly Pocket[];
  readonly length: number;
}

function pocketOf(chamber: Chamber, row: Row): Pocket {
  const { from, to } = stretchOf(chamber.profile);
  const middle = (from + to) / 2;
  const isToTheRight = row.face.inward[1] > 0;
  const [low, high] = spanAt(chamber.profile, middle)!;
  const [near, far] = [from, to].map((s) => toBoard(row.face, s, 0, chamber.depth[0])[0]) as [number, number];
  const through = row.members.filter((member) => {
    const [begins, ends] = within(chamber.depth, depthsOf(member, row, middle));
    return ends > begins;
  });
  return {
    chamber,
    from: Math.min(near, far),
    to: Math.max(near, far),
    deep: chamber.depth[1] - chamber.depth[0],
    high: high - low,
    modulus: Math.min(...through.map(({ material }) => modulusOf(material))),
    ...(chamber.depth[0] <= OPEN && { [isToTheRight ? 'left' : 'right']: row.face.joint }),
    ...(row.through && goesThrough(chamber, row) && { [isToTheRight ? 'right' : 'left']: row.through.joint }),
  };
}

/** What the skin spans from a chamber on to the right, across no joint, one, two … */
function spansFrom(first: Pocket, pockets: readonly Pocket[]): Span[] {
  const grown = (over: readonly Pocket[], from: number, to: number): Span[] => {
    const { right } = over.at(-1)!;
    const next = right === undefined ? [] : pockets.filter((each) => each.left === right);
    return [
      { over, length: to - from },
      ...next.flatMap((each) => {
        const [begins, ends] = [Math.max(from, each.from), Math.min(to, each.to)];
        return ends > begins ? grown([...over, each], begins, ends) : [];
      }),
    ];
  };
  return grown([first], first.from, first.to);
}

function givingWay(
  over: readonly Pocket[],
  sides: readonly [number, number],
  laminate: ReturnType<typeof laminateOf>,
  bed: number,
) {
  const thinnest = over.reduce((a, b) => (b.chamber.wall.deck < a.chamber.wall.deck ? b : a)).chamber;
  const skin = thinnest.wall.deck;
  const modulus = Math.min(...over.map((pocket) => pocket.modulus));
  const strip = bendingOf([
    rectangle(modulus, 1, 0, skin),
    rectangle(laminate.modulus, 1, skin, skin + laminate.thickness),
  ]);
  const stiffness = strip.stiffness / (1 - POISSON ** 2);
  const short = Math.min(...sides);
  const bent = HEEL.load * bentInTheMiddle(sides, Math.min(HEEL.radius, SMALL * short));
  const bedding = bed / Math.max(...over.map(({ high }) => high));
  return {
    over: over.map(({ chamber }) => chamber.id),
    at: thinnest.at.deck,
    skin,
    sides: [Math.max(...sides), short] as const,
    empty: HEEL.load * givesInTheMiddle({ sides, stiffness, bedding: 0 }),
    filled: () => HEEL.load * givesInTheMiddle({ sides, stiffness, bedding }),
    // Bent alike both ways in the middle, a plate is curved by M / D (1 + ν).
    strain: (bent * strip.axis) / (stiffness * (1 + POISSON)),
  };
}
