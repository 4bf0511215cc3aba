import type { Chamber } from '../../chamber/chamber.js';
import { heightAt } from '../../chamber/edges.js';
import { clearOfArcs, partWithin } from '../../contour/partWithin.js';
import type { Point } from '../../contour/point.js';
import type { Vertex } from '../../contour/vertex.js';
import { roundedAs } from '../../length/rounded.js';
import type { Row } from '../../layup/layup.js';
import type { Plan } from '../../plan.js';
import { edgesBetween } from '../../view/edgesBetween.js';
import { faceLineAt, type FaceLine } from '../../view/faceLine.js';
import { chamberEnds, reachOf } from '../face/chamberEnds.js';
import { onBench } from '../face/faceOnBench.js';
import { faceViews } from '../face/faceViews.js';
import { chambersOf } from '../mirror.js';

/** How much of the straight long lines a card shows, and how far it reaches beyond the end of its chamber, mm. */
const STRAIGHT = 27.5;
const BEYOND = [3.5, 2, 1, 0] as const;
/** Cards of both ends that would lie nearer to each other are one, mm. */
const APART = 8;
/** Cards on which no line differs by more are one card, mm. */
const SAME = 0.1;

export type End = 'nose' | 'tail';

/** A card: what lies on a face around an end of a chamber, or around both, and every end it serves. */
export interface CornerCard {
  /** The row whose face it is drawn from, and the side at which its nose is there. */
  readonly row: string;
  readonly noseAt: 'left' | 'right';
  readonly serves: readonly Served[];
  /** Its ends, nose first: one, or both where the chamber is short. */
  readonly ends: readonly End[];
  readonly shown: CardLines;
}

export interface Served {
  readonly chamber: string;
  /** Where the ends of this chamber are, from the nose, mm, as it is written: one for each of the card's ends. */
  readonly stations: readonly number[];
  readonly turnedOver: boolean;
  /** The face it is marked on, where its row is marked on two. */
  readonly face?: string;
}

/**
 * The lines of a card. `[s, z]` as seen in the face, mm, from where its first end is written to be and from the bottom
 * line there.
 */
export interface CardLines {
  readonly from: number;
  readonly to: number;
  readonly deck: readonly Point[];
  readonly bottom: readonly Point[];
  /** The line to rout: open where it leaves the card, closed where the card shows the whole chamber. */
  readonly rout: readonly Vertex[];
  readonly isWhole: boolean;
  /** The long lines to the corners as they are before easing, nose to tail. */
  readonly upper: readonly Point[];
  readonly lower: readonly Point[];
  /** Where its ends are written to be. */
  readonly stations: readonly number[];
  /** How far the corners of its ends are under the deck and over the bottom. */
  readonly heights: readonly { readonly underDeck: number; readonly overBottom: number }[];
}

/** Every different card of a plan, row by row as the face sheets come, in each from the nose. */
export function cornerCards(plan: Plan): CornerCard[] {
  const cards: (CornerCard & { readonly serves: Served[] })[] = [];
  const views = faceViews(plan);
  for (const { plan: seen, row: view } of views) {
    const { noseAt } = onBench(view.row.face, plan.board.length);
    const finished = faceLineAt(seen.board, view.row.face);
    const others = view.mirror ? chambersOf(seen, view.mirror) : [];
    const isMarkedTwice = views.filter(({ row }) => row.row.id === view.row.id).length > 1;
    const faceOf = ({ face }: Row) => (isMarkedTwice ? { face: face.id } : {});
    chambersOf(seen, view.row).forEach((chamber, i) => {
      for (const { ends, from, to } of stretchesOf(chamber, seen)) {
        const stations = ends.map((end) => stationOf(chamber, end, seen));
        const shown = linesOf(chamber, finished, from, to, ends, stations);
        const its = [
          { chamber: chamber.id, stations, turnedOver: false, ...faceOf(view.row) },
          ...(others[i] ? [{ chamber: others[i].id, stations, turnedOver: true, ...faceOf(view.mirror!) }] : []),
        ];
        const same = cards.find((card) => card.ends.join() === ends.join() && areSame(card.shown, shown));
        if (same)
          same.serves.push(...its.map((one) => ({ ...one, turnedOver: one.turnedOver !== (same.noseAt !== noseAt) })));
        else cards.push({ row: view.row.id, noseAt, serves: its, ends, shown });
      }
    });
  }
  return cards;
}

/** Where an end is, as it is written: toward more wall. */
function stationOf(chamber: Chamber, end: End, { job: { units } }: Plan): number {
  const { from, to } = reachOf(chamber);
  return end === 'nose' ? roundedAs('noseEnd', from, units) : roundedAs('tailEnd', to, units);
}

/** What cards of a chamber show of it: from each end as far as its long lines are straight and a little further. */
function stretchesOf(chamber: Chamber, { job }: Plan): { ends: End[]; from: number; to: number }[] {
  const { contour } = chamber;
  const { from, to } = reachOf(chamber);
  const { upper, lower } = chamberEnds(contour);
  const inward = job.chambers.cutterDiameter / 2 + STRAIGHT;
  const nose = clearOfArcs(contour, Math.max(upper[0]![0], lower[0]![0]) + inward, 1);
  const tail = clearOfArcs(contour, Math.min(upper.at(-1)![0], lower.at(-1)![0]) - inward, -1);
  if (tail - nose < APART) return [{ ends: ['nose', 'tail'], from, to }];
  return [
    { ends: ['nose'], from, to: nose },
    { ends: ['tail'], from: tail, to },
  ];
}

function linesOf(
  { contour }: Chamber,
  finished: FaceLine,
  first: number,
  last: number,
  ends: readonly End[],
  stations: readonly number[],
): CardLines {
  const reach = (s: number, way: 1 | -1): number =>
    s + way * (BEYOND.find((far) => finished.heightsAt(s + way * far) !== undefined) ?? 0);
  const from = ends.includes('nose') ? reach(first, -1) : first;
  const to = ends.includes('tail') ? reach(last, 1) : last;
  const { deck, bottom } = edgesBetween(finished, from, to);
  const { upper, lower } = chamberEnds(contour);
  const [s0, z0] = [stations[0]!, finished.heightsAt(stations[0]!)!.bottom];
  const moved = ([s, z]: Point): Point => [s - s0, z - z0];
  const corner = (end: End) => (end === 'nose' ? 0 : -1);
  return {
    from: from - s0,
    to: to - s0,
    deck: deck.map(moved),
    bottom: bottom.map(moved),
    rout: partWithin(contour, from, to).map((v) => ({ ...v, x: v.x - s0, y: v.y - z0 })),
    isWhole: ends.length > 1,
    upper: partOf(upper, from, to).map(moved),
    lower: partOf(lower, from, to).map(moved),
    stations: stations.map((s) => s - s0),
    heights: ends.map((end) => {
      const [[su, zu], [sl, zl]] = [upper.at(corner(end))!, lower.at(corner(end))!];
      return { underDeck: finished.heightsAt(su)!.deck - zu, overBottom: zl - finished.heightsAt(sl)!.bottom };
    }),
  };
}

/** What of a line, nose to tail, lies on a card. */
function partOf(line: readonly Point[], from: number, to: number): Point[] {
  const at = (s: number): Point => [s, heightAt(line, s)];
  const [first, last] = [line[0]![0], line.at(-1)![0]];
  return [
    ...(first < from ? [at(from)] : []),
    ...line.filter(([s]) => s >= from && s <= to),
    ...(last > to ? [at(to)] : []),
  ];
}

function areSame(a: CardLines, b: CardLines): boolean {
  const near = (p: number, q: number) => Math.abs(p - q) <= SAME;
  const points = (p: readonly Point[], q: readonly Point[]) =>
    p.length === q.length && p.every(([s, z], i) => near(s, q[i]![0]) && near(z, q[i]![1]));
  const rout = ({ rout: vertices }: CardLines) => vertices.map(({ x, y }): Point => [x, y]);
  const ends = ({ from, to, stations, heights }: CardLines) => [
    ...[from, to, ...stations].map((s): Point => [s, 0]),
    ...heights.map(({ underDeck, overBottom }): Point => [underDeck, overBottom]),
  ];
  const follows = (p: readonly Point[], q: readonly Point[]) => p.every(([s, z]) => near(heightAt(q, s), z));
  return (
    points(ends(a), ends(b)) &&
    points(rout(a), rout(b)) &&
    [a.deck, a.bottom].every(
      (line, i) => follows(line, [b.deck, b.bottom][i]!) && follows([b.deck, b.bottom][i]!, line),
    )
  );
}
