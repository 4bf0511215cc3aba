import { describe, expect, test } from 'vitest';
import type { Board } from '../../src/board/board.js';
import type { Joint, Layup } from '../../src/layup/layup.js';
import { bareOf } from '../../src/weigh/bare.js';
import { boxBlank } from '../../src/weigh/blank.js';
import { skinOf } from '../../src/weigh/skin.js';
import { slicesOf } from '../../src/weigh/slices.js';
import { gridBy, surfaceBy, type Formulas } from '../board/formulas.js';

/** A board by formulas, its rows and columns close together: closed forms are missed by what lies between them. */
const every = (count: number, whole: number) => Array.from({ length: count + 1 }, (_, i) => (i * whole) / count);
const [ROWS, COLUMNS] = [every(50, 1000), every(30, 3)];
const CLOSE = 2e-3;

function boardBy(given: Formulas, xs = ROWS): Board {
  const surface = surfaceBy(given);
  const grid = { ...gridBy(surface, xs, COLUMNS), same: new Uint32Array(0), chordError: 0 };
  return { surface, grid, length: surface.length, volume: 0 } as unknown as Board;
}
const joint = (at: number, slope = 0, kind: Joint['kind'] = 'dotted'): Joint => ({
  id: 'J',
  side: 'R',
  number: 1,
  kind,
  at,
  slope,
});
/** Members between some joints, left to right. */
function joinedBy(joints: readonly Joint[]): Layup {
  const members = Array.from({ length: joints.length + 1 }, (_, m) => ({
    ...(m > 0 && { left: joints[m - 1] }),
    ...(m < joints.length && { right: joints[m] }),
  }));
  return { joints, members, pieces: [], rows: [] } as unknown as Layup;
}
const near = (value: number, exact: number, what: string) =>
  expect(Math.abs(value - exact), `${what}: ${value}, not ${exact}`).toBeLessThan(CLOSE * Math.abs(exact) + 1e-6);

/** Hollow below, crowned above, straight from its edge to the apex; 80 mm to the left and 120 mm to the right. */
const EDGE = { across: 0.8, up: 0.096 };
const APEX = { across: 1, up: 0.75 };
const lens: Formulas = {
  half: (_, side) => (side ? 120 : 80),
  bottom: (x) => 7 + x / 100,
  section: (v) => {
    if (v >= 2) return { across: 3 - v, up: 1 - 0.25 * (3 - v) ** 2 };
    if (v < 1) return { across: EDGE.across * v, up: 0.15 * (EDGE.across * v) ** 2 };
    const to = (key: 'across' | 'up') => EDGE[key] + (v - 1) * (APEX[key] - EDGE[key]);
    return { across: to('across'), up: to('up') };
  },
};

describe('a board cut along its joints', () => {
  // The trapezoid rule over very narrow strips of each member, by brute force; between columns the section is straight.
  const straight = (at: (k: number) => number, place: number) => {
    const i = Math.min(9, Math.floor(place));
    return at(i) + (place - i) * (at(i + 1) - at(i));
  };
  const height = (part: 'bottom' | 'deck', half: number, y: number, x: number) => {
    const across = Math.abs(y) / half;
    const up =
      part === 'deck'
        ? straight((k) => 1 - 0.25 * (k / 10) ** 2, 10 * across)
        : across > EDGE.across
          ? EDGE.up + ((across - EDGE.across) / (1 - EDGE.across)) * (APEX.up - EDGE.up)
          : straight((k) => 0.15 * ((EDGE.across * k) / 10) ** 2, (10 * across) / EDGE.across);
    return lens.bottom!(x) + 50 * up;
  };
  const half = (y: number) => (y < 0 ? 80 : 120);

  test.each<[string, [number, number][]]>([
    ['none', []],
    ['one along the centreline', [[0, 0]]],
    // Columns of the deck stand 12 mm apart on the right and 8 mm on the left, of the bottom 9.6 and 6.4.
    [
      'two of which stand on columns',
      [
        [-32, 0],
        [48, 0],
      ],
    ],
    [
      'slanted ones, one of which leaves the board',
      [
        [-30, 0.02],
        [-10, 0.01],
        [40, 0.1],
      ],
    ],
    [
      'several between two columns',
      [
        [13, 0],
        [15, 0],
        [17, 0],
        [22, 0],
      ],
    ],
    [
      'one that lies beside the board',
      [
        [-90, 0],
        [130, 0],
      ],
    ],
  ] as [string, [number, number][]][])('has the area, moments, heights of its members: %s', (_, lines) => {
    const slices = slicesOf(boardBy(lens, [0, 400, 1000]), joinedBy(lines.map(([at, slope]) => joint(at, slope))));
    [0, 400, 1000].forEach((x, row) => {
      const cuts = [-80, ...lines.map(([at, slope]) => Math.min(120, Math.max(-80, at + slope * x))), 120];
      cuts.slice(1).forEach((to, m) => {
        const from = cuts[m]!;
        let [area, first, second, across, top, bottom] = [0, 0, 0, 0, -Infinity, Infinity];
        const steps = 4000;
        for (let i = 0; i < steps && to > from; i++) {
          const y = from + ((i + 0.5) * (to - from)) / steps;
          const [low, high] = [height('bottom', half(y), y, x), height('deck', half(y), y, x)];
          const dy = (to - from) / steps;
          area += (high - low) * dy;
          first += ((high ** 2 - low ** 2) / 2) * dy;
          second += ((high ** 3 - low ** 3) / 3) * dy;
          across += y * y * (high - low) * dy;
          top = Math.max(top, high);
          bottom = Math.min(bottom, low);
        }
        const at = row * slices.members + m;
        near(slices.area[at]!, area, 'area');
        near(slices.firstMoment[at]!, first, 'first');
        near(slices.secondMoment[at]!, second, 'second');
        near(slices.secondMomentAcross[at]!, across, 'across');
        if (area === 0) return;
        near(slices.top[at]!, top, 'top');
        near(slices.bottom[at]!, bottom, 'bottom');
      });
      lines.forEach(([a, slope], j) => {
        const y = a + slope * x;
        const inside = y > -80 && y < 120;
        const high = inside ? height('deck', half(y), y, x) - height('bottom', half(y), y, x) : 0;
        near(slices.jointHeight[row * slices.joints + j]!, high, `joint ${j}`);
      });
    });
  });
});

/** ∫ over a straight stretch from a to b: length, first and second moment. */
const stretch = (a: number, b: number) => [b - a, (b * b - a * a) / 2, (b ** 3 - a ** 3) / 3] as const;

describe('the skin of a slab is its faces, exact', () => {
  const slab: Formulas = { half: (_, side) => (side ? 120 : 80), bottom: () => 7 };
  const [length, lengthX, lengthXX] = stretch(0, 1000);
  const [width, , widthYY] = stretch(-80, 120);
  // Half of each end goes with the deck and half with the bottom, on the centreline.
  const end = (200 * 50) / 2;

  test('deck, bottom with the sides below the apex, both ends', () => {
    const board = boardBy(slab);
    const { deck, bottom, apexLine } = skinOf(board.grid, slicesOf(board, joinedBy([])));
    near(deck.amount * 1e6, width * length + 2 * end, 'deck');
    near(deck.x * 1e6, width * lengthX + end * 1000, 'deck x');
    near(deck.xx * 1e6, width * lengthXX + end * 1e6, 'deck xx');
    near(deck.yy * 1e6, widthYY * length, 'deck yy');
    // The apex of the box is its upper edge: both sides hang under it.
    near(bottom.amount * 1e6, (width + 2 * 50) * length + 2 * end, 'bottom');
    near(bottom.x * 1e6, (width + 2 * 50) * lengthX + end * 1000, 'bottom x');
    near(bottom.xx * 1e6, (width + 2 * 50) * lengthXX + end * 1e6, 'bottom xx');
    near(bottom.yy * 1e6, (widthYY + 50 * (80 ** 2 + 120 ** 2)) * length, 'bottom yy');
    near(apexLine.amount, 2, 'apex');
    near(apexLine.x, 1000, 'apex x');
    near(apexLine.xx, (2 * lengthXX) / 1000, 'apex xx');
    near(apexLine.yy, 80 ** 2 + 120 ** 2, 'apex yy');
  });

  test('parted between several members as in one', () => {
    const board = boardBy(slab);
    const [one, many] = [[], [joint(-20), joint(10, 0.02)]].map((joints) =>
      skinOf(board.grid, slicesOf(board, joinedBy(joints))),
    );
    near(many!.deck.amount, one!.deck.amount, 'deck');
    near(many!.bottom.xx, one!.bottom.xx, 'bottom');
  });

  test('a slanting plan and a rocker make it longer, a notch takes from both and adds its sides to the bottom', () => {
    // Both rails run in from 100 to 40, the bottom up by 300.
    const wedge = boardBy({ half: (x) => 100 - 0.06 * x, bottom: (x) => 0.3 * x });
    const skin = skinOf(wedge.grid, slicesOf(wedge, joinedBy([])));
    near(skin.apexLine.amount, 2 * Math.hypot(1, 0.06, 0.3), 'apex');
    near(skin.deck.amount * 1e6, 140 * 1000 * Math.hypot(1, 0.3) + (200 * 50) / 2 + (80 * 50) / 2, 'deck');
    const notchAt = 700;
    const inner = (x: number) => (x > notchAt ? (60 * (x - notchAt)) / 300 : 0);
    const board = boardBy({ stations: [0, 700, 1000], notchAt, inner });
    const { deck, bottom } = skinOf(board.grid, slicesOf(board, joinedBy([])));
    const plan = 200 * 1000 - 60 * 300;
    const ends = (200 * 50 + 80 * 50) / 2;
    near(deck.amount * 1e6, plan + ends, 'deck');
    near(bottom.amount * 1e6, plan + 2 * 50 * 1000 + 2 * 50 * Math.hypot(300, 60) + ends, 'bottom');
  });
});

describe('a slab between its joints', () => {
  const joints = [joint(-30, 0, 'bonded'), joint(20, 0.05), joint(100, 0, 'bonded')];
  const bare = bareOf(boardBy({ half: (_, side) => (side ? 120 : 80), bottom: () => 7 }), joinedBy(joints));
  const [length, lengthX, lengthXX] = stretch(0, 1000);

  test('has members of their widths, exact', () => {
    const left = bare.members[0]!;
    near(left.amount * 1e6, 50 * 50 * length, 'left');
    near(left.x * 1e6, 50 * 50 * lengthX, 'left x');
    near(left.xx * 1e6, 50 * 50 * lengthXX, 'left xx');
    near(left.yy * 1e6, 50 * stretch(-80, -30)[2] * length, 'left yy');
    // From −30 to 20 + x / 20: wider by a twentieth of x.
    const next = bare.members[1]!;
    near(next.amount * 1e6, 50 * (50 * length + lengthX / 20), 'next');
    near(next.x * 1e6, 50 * (50 * lengthX + lengthXX / 20), 'next x');
  });

  test('has joints of its thickness, longer where they slant', () => {
    near(bare.bondedJoints.amount * 1e6, 2 * 50 * length, 'bonded');
    near(bare.bondedJoints.yy * 1e6, 50 * length * (30 ** 2 + 100 ** 2), 'bonded yy');
    const slant = Math.hypot(1, 0.05);
    near(bare.dottedJoints.amount * 1e6, slant * 50 * length, 'dotted');
    near(bare.dottedJoints.x * 1e6, slant * 50 * lengthX, 'dotted x');
    // ∫ (20 + x / 20)² dx.
    near(bare.dottedJoints.yy * 1e6, slant * 50 * (400 * length + 2 * lengthX + lengthXX / 400), 'dotted yy');
  });

  test('is sawn from strips as high as it is, and a millimetre all around is its faces', () => {
    expect(bare.blank.widest).toEqual({ left: 80, right: 120 });
    bare.blank.members.forEach((each, m) => {
      near(each.amount, bare.members[m]!.amount, `${m}`);
      near(each.xx, bare.members[m]!.xx, `${m} xx`);
    });
    near(bare.blank.members[0]!.yy, bare.members[0]!.yy, 'yy');
    // Deck and bottom, and the rail of the outermost.
    near(bare.blank.perMm[0]!.amount * 1e6, (2 * 50 + 50) * length, 'left');
    near(bare.blank.perMm[1]!.amount * 1e6, 2 * (50 * length + lengthX / 20), 'next');
    near(bare.blank.perMm[3]!.amount * 1e6, (2 * 20 + 50) * length, 'right');
    near(bare.blank.perMm[3]!.yy * 1e6, (2 * 20 + 50) * length * (110 ** 2 + 20 ** 2 / 12), 'right yy');
  });

  test('of a board that narrows a strip stays as wide as the board at its widest, as high as where it last was', () => {
    // Half as wide at the tail: the right strip from y = 80 on is left at x = 400; thickness 50 throughout.
    const board = boardBy({ half: (x) => (x < 200 ? 100 : 100 - (x - 200) / 10), thickness: 50 });
    const { blank } = bareOf(board, joinedBy([joint(80)]));
    near(blank.members[1]!.amount * 1e6, 20 * 50 * 1000, 'right');
    near(blank.members[0]!.amount * 1e6, 180 * 50 * 1000, 'left');
    // A strip that no part of the board lies in has no height.
    const none = bareOf(board, joinedBy([joint(150)]));
    expect(none.blank.members[1]!.amount).toBe(0);
  });

  test('of a board that lies in a box is as thick as the box, and as much longer', () => {
    const layup = joinedBy(joints);
    const spec = { nose: 20, tail: 30 } as Parameters<typeof boxBlank>[4];
    const [left, next] = boxBlank(layup, 1000, bare.blank, 70, spec);
    const [long, longX, longXX] = stretch(-20, 1030);
    near(left!.amount * 1e6, 50 * 70 * long, 'left');
    near(left!.x * 1e6, 50 * 70 * longX, 'left x');
    near(left!.xx * 1e6, 50 * 70 * longXX, 'left xx');
    near(left!.yy * 1e6, 70 * stretch(-80, -30)[2] * long, 'left yy');
    near(next!.amount * 1e6, 70 * (50 * long + longX / 20), 'next');
    near(next!.x * 1e6, 70 * (50 * longX + longXX / 20), 'next x');
  });
});
