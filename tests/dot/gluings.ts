import type { DrawnChamber } from '../../src/chamber/row.js';
import type { Point } from '../../src/contour/point.js';
import type { Toll } from '../../src/dot/choose.js';
import {
  isMet,
  priceOf,
  reachOf,
  standingAfter,
  standingOf,
  type Round,
  type Standing,
} from '../../src/dot/standing.js';
import type { JointOffers, TogetherRules } from '../../src/dot/together.js';
import { WORTH_OF_A_BLOCK } from '../../src/dot/together.js';
import type { Row as IntegerRow, Sum } from '../oracle/integerProgramme.js';
import { leastOf } from '../oracle/integerProgramme.js';
import { farOn, nearOn, rowTo } from './rows.js';

/** A glue-up of a few rows routed right through, one joint between each two, and places for dots on every joint. */
export interface Gluing {
  readonly joints: readonly JointOffers[];
  readonly standing: Standing;
  readonly rules: TogetherRules;
}

const LENGTH = 1300;
const DEEP = 60;

/** One drawn at random. `next` gives numbers from 0 to 1; `offers` is how many places a joint has. */
export function gluingFrom(next: () => number, offers: number, most = 3): Gluing {
  const whole = (from: number, to: number) => from + Math.floor(next() * (to - from + 1));
  const count = whole(1, most);
  const pitch = whole(160, 240);
  const web = whole(14, 40);
  const rows = Array.from({ length: count + 1 }, (_, i) => ({ ...rowTo(DEEP, 0), id: `R${i + 1}` }));
  const shapes = rows.flatMap((row, i): DrawnChamber[] => {
    const chambers: DrawnChamber[] = [];
    const shift = whole(60, 140) + (i % 2) * (next() < 0.7 ? Math.round(pitch / 2) : whole(0, pitch));
    for (let from = shift, place = 1; from + pitch - web < LENGTH - 60; from += pitch, place++) {
      const [low, high] = [whole(0, 20), whole(60, 100)];
      const to = from + pitch - web - (next() < 0.2 ? whole(0, 60) : 0);
      const profile: Point[] = [[from, low], [to, low], [to, high], [from, high]]; // prettier-ignore
      chambers.push({ row: row.id, place, profile, depth: [0, DEEP], volume: 0 });
    }
    return chambers;
  });
  const standing = standingOf(shapes);
  const joints = Array.from({ length: count }, (_, j): JointOffers => {
    const places = new Set<number>();
    for (const row of [rows[j]!, rows[j + 1]!])
      (standing.get(row.id) ?? []).forEach(({ to }, i, all) => {
        if (next() < 0.5 && all[i + 1]) places.add(Math.round((to + all[i + 1]!.from) / 2));
      });
    while (places.size < offers) places.add(whole(10, LENGTH - 10));
    const s = [...places].sort((a, b) => a - b);
    return {
      rows: [farOn(rows[j]!), nearOn(rows[j + 1]!)],
      offers: s.map((each) => ({ s: each, z: 50, radius: 6 })),
      // No two dots of a joint come into one chamber.
      spacing: { from: 0, to: LENGTH, most: whole(300, 460), least: pitch + 30, nearEnd: whole(100, 250) },
      isMade: false,
    };
  });
  const share = [0.6, 0.75, 1][whole(0, 2)]!;
  const rules: TogetherRules = {
    may: ['trim', 'split'],
    clearance: 6,
    web,
    smallest: { length: whole(30, 70), height: 70, depth: 20 },
    across: { rows, isHalf: false, length: LENGTH, share, ribs: [] },
  };
  return { joints, standing, rules };
}

/** What stands of one chamber after dots, in the order of their joints, and what they cost it. */
function cutBy({ joints, rules }: Gluing, row: string, part: Parts[number], dots: readonly Taken[]) {
  let parts: Parts = [part];
  let cost = 0;
  for (const { joint, dot } of dots) {
    const at = joints[joint]!.rows.find((each) => each.row.id === row)!;
    const price = priceOf(at, dot, parts, rules)!;
    cost += price.lost + price.splits * WORTH_OF_A_BLOCK;
    parts = standingAfter(parts, price);
  }
  return { parts, cost };
}

type Parts = NonNullable<ReturnType<Standing['get']>>;
interface Taken {
  readonly joint: number;
  readonly dot: Round;
}

const isOpen = (parts: Parts, x: number) => parts.some(({ from, to }) => x >= from && x < to);
/** The middle of each millimetre. */
const stations = Array.from({ length: LENGTH }, (_, i) => i + 0.5);

/** How many rows may be solid at each station, as the rule says. */
function mostAt({ joints, standing, rules }: Gluing): number[] {
  return stations.map((x) => {
    const state = (row: string) => {
      const all = standing.get(row) ?? [];
      const runs = all.length > 0 && x >= all[0]!.from && x < all[all.length - 1]!.to;
      return { runs, solid: runs && !isOpen(all, x) };
    };
    const all = rules.across.rows.map(({ id }) => state(id));
    const solid = all.filter((each) => each.solid).length;
    const more = joints
      .map(({ rows }) => rows.map(({ row }) => state(row.id)).filter((each) => each.runs && !each.solid).length)
      .filter((n) => n > 0);
    const share = Math.floor(rules.across.share * all.filter(({ runs }) => runs).length + 1e-9);
    return Math.max(share, solid + (more.length > 0 ? Math.min(...more) : 0));
  });
}

/** The toll of a choice, worked out chamber by chamber and millimetre by millimetre. */
export function tollOf(gluing: Gluing, taken: readonly (readonly Round[])[]): Toll {
  const { joints, standing, rules } = gluing;
  let cost = 0;
  const left = new Map<string, Parts>();
  for (const { id } of rules.across.rows) {
    const parts: Parts[number][] = [];
    for (const part of standing.get(id) ?? []) {
      const dots = taken.flatMap((all, joint) => {
        const at = joints[joint]!.rows.find(({ row }) => row.id === id);
        return at ? all.filter((dot) => isMet(reachOf(at, dot, rules), part)).map((dot) => ({ joint, dot })) : [];
      });
      const cut = cutBy(gluing, id, part, dots);
      cost += cut.cost;
      parts.push(...cut.parts);
    }
    left.set(id, parts);
  }
  const most = mostAt(gluing);
  const across = stations.reduce((sum, x, i) => {
    const solid = rules.across.rows.filter(({ id }) => {
      const all = standing.get(id) ?? [];
      return all.length > 0 && x >= all[0]!.from && x < all[all.length - 1]!.to && !isOpen(left.get(id)!, x);
    }).length;
    return sum + Math.max(0, solid - most[i]!);
  }, 0);
  let [excess, unevenness] = [0, 0];
  taken.forEach((all, j) => {
    const { from, to, most: apart, nearEnd } = joints[j]!.spacing;
    if (all.length === 0) excess += to - from;
    else excess += Math.max(0, all[0]!.s - from - nearEnd) + Math.max(0, to - all[all.length - 1]!.s - nearEnd);
    all.slice(1).forEach(({ s }, i) => (excess += Math.max(0, s - all[i]!.s - apart)));
    const marks = [from, ...all.map(({ s }) => s), to];
    unevenness += marks.slice(1).reduce((sum, s, i) => sum + (s - marks[i]!) ** 2, 0);
  });
  return { excess, across, cost, dots: taken.flat().length, unevenness };
}

/**
 * The least excess, with that the least solid across, and with both the least cost, as an integer programme: a way from
 * nose to tail on every joint, and for every chamber one of the sets of dots that may come into it, one of either
 * joint at most.
 */
export async function leastToll(gluing: Gluing): Promise<Pick<Toll, 'excess' | 'across' | 'cost'>> {
  const { joints, standing, rules } = gluing;
  const rows: IntegerRow[] = [];
  const whole: string[] = [];
  const [excess, across, cost] = [new Map<string, number>(), new Map<string, number>(), new Map<string, number>()];
  const takenAs: string[][] = [];
  joints.forEach(({ offers, spacing: { from, to, most, least, nearEnd } }, j) => {
    const [into, out] = [offers, offers].map((all) => all.map(() => new Map<string, number>()));
    const [first, last] = [new Map<string, number>(), new Map<string, number>()];
    offers.forEach(({ s }, a) => {
      const begins = `b${j}_${a}`;
      const ends = `e${j}_${a}`;
      whole.push(begins, ends);
      first.set(begins, 1);
      last.set(ends, 1);
      into![a]!.set(begins, 1);
      out![a]!.set(ends, 1);
      if (s - from > nearEnd) excess.set(begins, s - from - nearEnd);
      if (to - s > nearEnd) excess.set(ends, to - s - nearEnd);
      offers.forEach((next, b) => {
        if (next.s - s < least) return;
        const goes = `g${j}_${a}_${b}`;
        whole.push(goes);
        out![a]!.set(goes, 1);
        into![b]!.set(goes, 1);
        if (next.s - s > most) excess.set(goes, next.s - s - most);
      });
    });
    rows.push({ sum: first, is: '=', to: 1 }, { sum: last, is: '=', to: 1 });
    takenAs.push(
      offers.map((_, a) => {
        const name = `x${j}_${a}`;
        whole.push(name);
        rows.push({ sum: new Map([...into![a]!, [name, -1]]), is: '=', to: 0 });
        rows.push({ sum: new Map([...out![a]!, [name, -1]]), is: '=', to: 0 });
        return name;
      }),
    );
  });
  const closes = stations.map(() => [] as string[]);
  for (const { id } of rules.across.rows)
    (standing.get(id) ?? []).forEach((part, k) => {
      const beside = joints.flatMap((joint, j) => {
        const at = joint.rows.find(({ row }) => row.id === id);
        if (!at) return [];
        return [joint.offers.flatMap((dot, a) => (isMet(reachOf(at, dot, rules), part) ? [{ joint: j, dot, a }] : []))];
      });
      const [one = [], other = []] = beside;
      const sets = [[], ...one.map((each) => [each]), ...other.map((each) => [each])];
      for (const a of one) for (const b of other) sets.push([a, b]);
      const links = new Map<string, Map<string, number>>();
      const states = new Map<string, number>();
      sets.forEach((set, n) => {
        const name = `w${id}_${k}_${n}`;
        states.set(name, 1);
        const cut = cutBy(gluing, id, part, set);
        if (cut.cost !== 0) cost.set(name, cut.cost);
        stations.forEach((x, i) => {
          if (isOpen([part], x) && !isOpen(cut.parts, x)) closes[i]!.push(name);
        });
        for (const { joint, a } of set) {
          const taken = takenAs[joint]![a]!;
          const link = links.get(taken) ?? new Map([[taken, -1]]);
          links.set(taken, link.set(name, 1));
        }
      });
      rows.push({ sum: states, is: '=', to: 1 });
      for (const sum of links.values()) rows.push({ sum, is: '=', to: 0 });
    });
  const most = mostAt(gluing);
  const alike = new Map<string, { sum: Map<string, number>; spare: number; times: number }>();
  stations.forEach((x, i) => {
    const solid = rules.across.rows.filter(({ id }) => {
      const all = standing.get(id) ?? [];
      return all.length > 0 && x >= all[0]!.from && x < all[all.length - 1]!.to && !isOpen(all, x);
    }).length;
    const key = `${closes[i]!.join()} ${most[i]! - solid}`;
    const known = alike.get(key) ?? {
      sum: new Map(closes[i]!.map((name) => [name, 1])),
      spare: most[i]! - solid,
      times: 0,
    };
    alike.set(key, { ...known, times: known.times + 1 });
  });
  [...alike.values()].forEach(({ sum, spare, times }, i) => {
    if (sum.size === 0) return;
    across.set(`o${i}`, times);
    rows.push({ sum: new Map([...sum, [`o${i}`, -1]]), is: '<=', to: spare });
  });
  const found: number[] = [];
  for (const aim of [excess, across, cost] as Sum[]) {
    const least = aim.size === 0 ? 0 : (await leastOf(aim, rows, whole))!;
    found.push(Math.round(least * 1000) / 1000);
    if (aim.size > 0) rows.push({ sum: aim, is: '<=', to: least + 1e-3 });
  }
  return { excess: found[0]!, across: found[1]!, cost: found[2]! };
}
