import type { JointOnRow } from '../chamber/onRow.js';
import { choose, isLess, spreadOf, type Candidate, type Spacing, type Toll } from './choose.js';
import { closedBy, Stations, timesOf, type AcrossRules, type Closed } from './stations.js';
import {
  isMet,
  priceOf,
  reachOf,
  standingAfter,
  type Price,
  type PriceRules,
  type Reach,
  type Round,
  type Standing,
  type StandingPart,
} from './standing.js';

/** A joint whose dots are chosen, or are where they are. */
export interface JointOffers<O extends Round = Round> {
  readonly rows: readonly JointOnRow[];
  /** In rising `s`. */
  readonly offers: readonly O[];
  readonly spacing: Spacing;
  /** All of its offers are taken: they hold the blank already. */
  readonly isMade: boolean;
}

export interface TogetherRules extends PriceRules {
  readonly across: AcrossRules;
}

/**
 * One more block to cut, sand, number and glue is worth as much as so much more of the board routed out, mm³: a tenth
 * of a litre, some four grams of foam. Common practice, no source.
 */
export const WORTH_OF_A_BLOCK = 1e5;

/**
 * Of the places offered on all joints of a glue-up those to take: as few millimetres too far apart as can be, then as
 * little as can be solid across too many rows, then what costs least volume and blocks, then fewest dots, then evenly.
 *
 * A chamber that is open to two joints and split for both is paid once. Each joint's dots are chosen by `choose`, so
 * that none is better while those of the other joints stay; joints are chosen anew, one after the other, until none
 * gets better, from several beginnings, which differ in how much of a split they leave to the other joint of a row.
 *
 * @param earlier what was taken when more places were offered: what is left of it is the only beginning then
 */
export function chooseTogether<O extends Round>(
  joints: readonly JointOffers<O>[],
  drawn: Standing,
  rules: TogetherRules,
  earlier?: readonly (readonly O[])[],
): O[][] {
  const search = new Search(joints, drawn, rules);
  const free = joints.flatMap(({ isMade }, i) => (isMade ? [] : [i]));
  const beginnings = earlier
    ? [{ order: free, first: search.among(earlier) }]
    : [free, [...free].reverse(), alternate(free)].flatMap((order) =>
        SHARES.map((share) => ({ order, first: search.begun(order, share) })),
      );
  const found = beginnings.map(({ order, first }) => search.settled(first, order));
  const best = found.reduce((a, b) => (isLess(b.toll, a.toll) ? b : a));
  const { taken } = earlier ? best : search.shaken(best, free);
  return taken.map((places) => places.map(({ offer }) => offer));
}

/** How much of what a dot costs a row that another joint meets, whose dots are still to come, it pays itself. */
const SHARES = [1, 0.5, 0];

const alternate = (order: readonly number[]) => [
  ...order.filter((_, i) => i % 2 === 1),
  ...order.filter((_, i) => i % 2 === 0),
];

interface Choice<O> {
  readonly taken: Place<O>[][];
  readonly toll: Toll;
}

/** What a place costs a row that has these parts standing where the dot would lie. */
interface Met {
  readonly parts: readonly StandingPart[];
  /** Undefined where nothing makes room for it. */
  readonly price: Price | undefined;
  readonly cost: number;
  readonly closed: readonly Closed[];
}

/** A place on one row beside its joint, with all that it was found to cost there. */
interface Side {
  readonly at: JointOnRow;
  readonly reach: Reach;
  readonly known: Met[];
}

interface Place<O> {
  readonly offer: O;
  readonly sides: readonly Side[];
}

const NO_SHARES = [1, 1];
/** The dots of a joint are chosen no oftener while dots are forbidden one by one: the time it may take. */
const MOST_CHOSEN = 150;

/** On a side of a joint where nothing is routed. */
const NOTHING_MET: Met = {
  parts: [],
  price: { lost: 0, splits: 0, cut: [], swallowed: false, keepOff: [Infinity, -Infinity] },
  cost: 0,
  closed: [],
};

class Search<O extends Round> {
  private readonly places: readonly (readonly Place<O>[])[];
  private readonly stations: Stations;
  /** The best dots of a joint, by what is taken on all others. */
  private readonly known = new Map<string, Place<O>[]>();
  /** How often the dots of a joint were chosen. */
  private chosen = 0;

  constructor(
    private readonly joints: readonly JointOffers<O>[],
    private readonly drawn: Standing,
    private readonly rules: TogetherRules,
  ) {
    const beside = joints.map(({ rows }) => rows.map(({ row }) => row));
    this.stations = new Stations(drawn, beside, rules.across);
    this.places = joints.map(({ rows, offers }) =>
      offers.map((offer) => ({
        offer,
        sides: rows.map((at) => ({ at, reach: reachOf(at, offer, rules), known: [] })),
      })),
    );
  }

  /** Of an earlier choice what is offered still. */
  among(earlier: readonly (readonly O[])[]): Place<O>[][] {
    return this.places.map((places, j) => places.filter(({ offer }) => earlier[j]!.includes(offer)));
  }

  /** A first choice, joint by joint. */
  begun(order: readonly number[], share: number): Place<O>[][] {
    const taken = this.joints.map(({ isMade }, j) => (isMade ? [...this.places[j]!] : []));
    order.forEach((j, i) => {
      const later = new Set(order.slice(i + 1).flatMap((k) => this.joints[k]!.rows.map(({ row }) => row.id)));
      taken[j] = this.bestBeside(
        j,
        taken,
        this.joints[j]!.rows.map(({ row }) => (later.has(row.id) ? share : 1)),
      );
    });
    return taken;
  }

  /** What a choice comes to when joint after joint is chosen anew, until none gets better by itself. */
  settled(first: Place<O>[][], order: readonly number[]): Choice<O> {
    let best: Choice<O> = { taken: first, toll: this.tollOf(first) };
    for (let still = 0, i = 0; still < order.length; i++, still++) {
      const j = order[i % order.length]!;
      const dots = this.bestBeside(j, best.taken, NO_SHARES);
      if (dots.length === best.taken[j]!.length && dots.every((dot, k) => dot === best.taken[j]![k])) continue;
      const taken = best.taken.with(j, dots);
      const toll = this.tollOf(taken);
      if (!isLess(toll, best.toll)) continue;
      best = { taken, toll };
      still = 0;
    }
    return best;
  }

  /** What becomes of a choice when one dot after the other is forbidden and all joints answer, as long as it pays. */
  shaken(from: Choice<O>, order: readonly number[]): Choice<O> {
    let best = from;
    for (let i = 0; i < order.length;) {
      const j = order[i]!;
      let better: Choice<O> | undefined;
      for (const place of best.taken[j]!) {
        if (this.chosen > MOST_CHOSEN) return best;
        if (place.sides.every((side) => side.known.every(({ cost }) => cost === 0))) continue;
        const first = best.taken.with(j, this.bestBeside(j, best.taken, NO_SHARES, place));
        const answered = [...order.slice(i + 1), ...order.slice(0, i), j];
        const found = this.settled(first, answered);
        if (isLess(found.toll, best.toll)) {
          better = found;
          break;
        }
      }
      if (better) {
        best = better;
        i = 0;
      } else i++;
    }
    return best;
  }

  /**
   * The dots of one joint, while those of the others stay.
   *
   * @param shares how much of what it costs each of its rows it pays itself
   */
  private bestBeside(
    j: number,
    taken: readonly Place<O>[][],
    shares: readonly number[],
    without?: Place<O>,
  ): Place<O>[] {
    const others = taken.map((dots, i) => (i === j ? '*' : dots.map(({ offer: { s } }) => s).join()));
    const key = [...shares, without?.offer.s ?? '', ...others].join(';');
    const best = this.known.get(key) ?? this.bestOf(j, taken, shares, without);
    this.known.set(key, best);
    return best;
  }

  private bestOf(
    j: number,
    taken: readonly Place<O>[][],
    [first = 1, second = 1]: readonly number[],
    without?: Place<O>,
  ): Place<O>[] {
    this.chosen++;
    const { rows, spacing } = this.joints[j]!;
    const { standing } = this.after(taken, j);
    this.stations.count(standing);
    const [one, other] = rows.map(({ row }) => standing.get(row.id) ?? []);
    const candidates: (Candidate & { readonly place: Place<O> })[] = [];
    for (const place of this.places[j]!) {
      if (place === without) continue;
      const { offer, sides } = place;
      const a = one ? this.metBy(offer, sides[0]!, one) : NOTHING_MET;
      const b = other ? this.metBy(offer, sides[1]!, other) : NOTHING_MET;
      if (!a.price || !b.price) continue;
      const cost = Math.round(first * a.cost + second * b.cost);
      candidates.push({ s: offer.s, across: this.stations.more(a.closed, b.closed), cost, place });
    }
    return choose(candidates, spacing).map(({ place }) => place);
  }

  /** What a place costs a row as it stands. */
  private metBy(offer: O, { at, reach, known }: Side, standing: readonly StandingPart[]): Met {
    for (const met of known) if (isAll(met.parts, reach, standing)) return met;
    const parts = standing.filter((part) => isMet(reach, part));
    const price = priceOf(at, offer, parts, this.rules);
    const { across } = this.rules;
    const lost = price ? price.lost + price.splits * WORTH_OF_A_BLOCK : 0;
    const met = {
      parts,
      price,
      cost: timesOf(across, at.row) * lost,
      closed: price ? closedBy(price, at.row, across) : [],
    };
    known.push(met);
    return met;
  }

  private tollOf(taken: readonly Place<O>[][]): Toll {
    const { standing, cost } = this.after(taken);
    this.stations.count(standing);
    const spreads = taken.flatMap((places, j) => {
      const { isMade, spacing } = this.joints[j]!;
      const offers = places.map(({ offer }) => offer);
      return isMade ? [] : [spreadOf(offers, spacing)];
    });
    return {
      excess: spreads.reduce((sum, { excess }) => sum + excess, 0),
      across: this.stations.excess(),
      cost,
      dots: taken.reduce((sum, { length }) => sum + length, 0),
      unevenness: spreads.reduce((sum, { unevenness }) => sum + unevenness, 0),
    };
  }

  /** What stands after the dots of all joints but one are taken, and what they cost. */
  private after(taken: readonly Place<O>[][], without?: number): { standing: Standing; cost: number } {
    const standing: Standing = new Map(this.drawn);
    let cost = 0;
    this.joints.forEach(({ isMade }, j) => {
      if (j === without) return;
      for (const { offer, sides } of taken[j]!)
        for (const side of sides) {
          const { id } = side.at.row;
          const parts = standing.get(id) ?? [];
          const met = this.metBy(offer, side, parts);
          if (met.price) standing.set(id, standingAfter(parts, met.price));
          cost += met.price || isMade ? met.cost : Infinity;
        }
    });
    return { standing, cost };
  }
}

/** Whether these parts are all that a dot of this reach meets. */
function isAll(parts: readonly StandingPart[], reach: Reach, standing: readonly StandingPart[]): boolean {
  let next = 0;
  for (const part of standing) if (isMet(reach, part) && part !== parts[next++]) return false;
  return next === parts.length;
}
