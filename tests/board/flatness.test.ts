import { describe, expect, test } from 'vitest';
import { bentOf } from '../../src/board/flatness.js';
import { fromTurn, toTurn } from '../../src/board/spacing.js';
import type { Surface } from '../../src/board/surface.js';
import { boxSection, gridBy, surfaceBy } from './formulas.js';

const bent = (surface: Surface, xs: readonly number[], vs: readonly number[], limit: number) => {
  const { rows, columns } = bentOf(gridBy(surface, xs, vs), surface, limit);
  return { rows: [...rows].sort((a, b) => a - b), columns: [...columns].sort((a, b) => a - b) };
};
const none = { rows: [], columns: [] };
/** Within a hundredth of what a cell is off by it is told from one that keeps. */
const [under, over] = [0.99, 1.01];
const sagitta = (radius: number, angle: number) => radius * (1 - Math.cos(angle / 2));

describe('what is split of a grid', () => {
  // A chord over an angle a of a circle lies R (1 − cos a/2) off it (any geometry text).
  test('of a round section are the columns whose chord is off by more than the limit', () => {
    const angle = (v: number) => -Math.PI / 2 + (v * Math.PI) / 3;
    const section = (v: number) => ({ across: Math.cos(angle(v)), up: (1 + Math.sin(angle(v))) / 2 });
    const surface = surfaceBy({ half: () => 100, thickness: 200, section });
    const vs = [0, 0.25, 1, 1.2, 1.9, 2, 2.45, 3];
    const off = vs.slice(1).map((v, i) => sagitta(100, ((v - vs[i]!) * Math.PI) / 3));
    for (const limit of off.flatMap((each) => [under * each, over * each])) {
      const columns = off.flatMap((each, i) => (each > limit ? [i] : []));
      expect(bent(surface, [0, 300, 1000], vs, limit), `${limit}`).toEqual({ rows: [], columns });
    }
  });

  test('of a rocker round as a circle are the rows whose chord is off by more than the limit', () => {
    const length = 1000;
    const bottom = (x: number) => 500 - Math.sqrt(Math.max(0, 500 ** 2 - (x - 500) ** 2));
    const turns = [0, 0.3, 0.5, 1.4, 2.2, Math.PI];
    const xs = turns.map((turn) => fromTurn(turn, length));
    const off = turns.slice(1).map((turn, i) => sagitta(500, turn - turns[i]!));
    for (const limit of off.flatMap((each) => [under * each, over * each])) {
      const rows = off.flatMap((each, i) => (each > limit ? [i] : []));
      expect(bent(surfaceBy({ length, bottom }), xs, [0, 1, 2, 3], limit), `${limit}`).toEqual({ rows, columns: [] });
    }
  });

  // z = k x y is straight along both; its middle lies a quarter of what a corner is out of plane off either diagonal.
  test('of a twisted cell is its row or its column', () => {
    const k = 1e-6;
    const surface = surfaceBy({ raised: (x, y, up) => (up === 1 ? k * x * y : 0) });
    const off = (k * 1000 * 100) / 4;
    expect(bent(surface, [0, 1000], [0, 1, 2, 3], over * off)).toEqual(none);
    expect(bent(surface, [0, 1000], [0, 1, 2, 3], under * off)).not.toEqual(none);
  });

  // The middle lies on one diagonal and off the other by half of what its one corner is raised.
  test('of a cell folded along a diagonal is its row or its column, along whichever the fold runs', () => {
    for (const turned of [false, true]) {
      const raised = (x: number, y: number, up: number) =>
        up === 1 ? 0.2 * Math.min(x / 1000, (turned ? 100 - Math.abs(y) : Math.abs(y)) / 100) : 0;
      expect(bent(surfaceBy({ raised }), [0, 1000], [0, 1, 2, 3], over * 0.1)).toEqual(none);
      expect(bent(surfaceBy({ raised }), [0, 1000], [0, 1, 2, 3], under * 0.1)).not.toEqual(none);
    }
  });

  test('is found where the section itself stands out, at the nose and behind it', () => {
    for (const [from, to] of [
      [0, 50],
      [150, 250],
      [950, 1000],
    ] as const) {
      const section = (v: number, x: number) =>
        v === 0.25 && x >= from && x <= to ? { across: 0.25, up: 0.02 } : boxSection(v);
      expect(bent(surfaceBy({ section }), [0, 200, 500, 1000], [0, 0.5, 1, 2, 3], 0.9)).toEqual({
        rows: [],
        columns: [0],
      });
    }
  });

  // On a saddle the middle of a cell lies where its corners do, and what it is off by along and across adds up.
  test('of a cell bent both ways is what bends more, where both together are over the limit', () => {
    // A parabola lies a quarter of its rise over the chord's half off it in the middle: h² / 4 a unit of bend.
    const saddle = (along: number, across: number) =>
      surfaceBy({
        raised: (x, y, up) => (up === 1 ? along * ((x - 500) / 500) ** 2 - across * ((Math.abs(y) - 50) / 50) ** 2 : 0),
      });
    const vs = [0, 1, 2, 3];
    expect(bent(saddle(0.03, 0.02), [0, 1000], vs, over * 0.05)).toEqual(none);
    expect(bent(saddle(0.03, 0.02), [0, 1000], vs, under * 0.05)).toEqual({ rows: [0], columns: [] });
    expect(bent(saddle(0.02, 0.03), [0, 1000], vs, over * 0.05)).toEqual(none);
    expect(bent(saddle(0.02, 0.03), [0, 1000], vs, under * 0.05)).toEqual({ rows: [], columns: [2] });
    expect(bent(saddle(0.025, 0.025), [0, 1000], vs, under * 0.05)).toEqual({ rows: [0], columns: [] });
  });

  /** A tent of a millimetre over one place of one side of the box, and nothing elsewhere. */
  const tent = (x: number, v: number, side: number) => {
    const at = boxSection(v);
    return surfaceBy({
      raised: (px, y, up) => {
        const far = Math.hypot((px - x) / 20, (Math.abs(y) - 100 * at.across) / 3, (up - at.up) / 0.03);
        return Math.sign(y) === side ? Math.max(0, 1 - far) : 0;
      },
    });
  };
  const xs = [0, 200, 500, 800, 1000];
  const vs = [0, 0.5, 1, 2, 2.4, 3];
  const halfway = (row: number) => fromTurn((toTurn(xs[row]!, 1000) + toTurn(xs[row + 1]!, 1000)) / 2, 1000);

  test.each([-1, 1])(
    'is found by the one place that stands out, row by row and column by column, on side %d',
    (side) => {
      for (let row = 0; row + 1 < xs.length; row++) {
        for (const column of [0, 1, 4]) {
          const v = (share: number) => vs[column]! + share * (vs[column + 1]! - vs[column]!);
          const asked = (x: number, share: number) => bent(tent(x, v(share), side), xs, vs, 0.5);
          // The middle of a cell: off both diagonals, and nothing of its sides.
          expect(asked(halfway(row), 0.5)).toEqual({ rows: [row], columns: [] });
          // Between two columns, on the row and in its quarters: both rows of cells that meet there split that column.
          for (const share of [0.5, 0.25, 0.75])
            if (row > 0) expect(asked(xs[row]!, share), `${row} ${share}`).toEqual({ rows: [], columns: [column] });
        }
        // In the middle between two rows, on a column.
        expect(bent(tent(halfway(row), 0.5, side), xs, vs, 0.5)).toEqual({ rows: [row], columns: [] });
        expect(bent(tent(halfway(row), 2.4, side), xs, vs, 0.5)).toEqual({ rows: [row], columns: [] });
      }
      // The last row has no cells behind it: its middles are measured by those before it.
      expect(bent(tent(1000, 0.25, side), xs, vs, 0.5)).toEqual({ rows: [], columns: [0] });
      expect(bent(tent(0, 0.25, side), xs, vs, 0.5)).toEqual({ rows: [], columns: [0] });
      // Beyond a limit of a millimetre nothing is.
      expect(bent(tent(500, 0.25, side), xs, vs, 1.01)).toEqual(none);
    },
  );

  test('is asked of no cell without area', () => {
    // Of a board of no thickness the side has none, whatever is raised there.
    const raised = (_: number, __: number, up: number) => (up > 0.3 && up < 0.7 ? 5 : 0);
    expect(bent(surfaceBy({ thickness: 0, raised }), [0, 400, 1000], [0, 1, 2, 3], 0.1)).toEqual(none);
  });

  describe('where a notch parts the halves', () => {
    const [length, from, half, crown] = [1000, 400, 100, 3];
    const inner = (x: number) => (x > from ? ((x - from) * 80) / (length - from) : 0);
    const rows = [0, from, 620, length];
    const fine = Array.from({ length: 301 }, (_, i) => i / 100);

    // The edge climbs the crown c (y / half)², y = inner (x): its chord between two rows against the middle of them.
    test.each(['bottom', 'deck'])(
      'is a row whose edge over a crowned %s is off by more than half the limit',
      (where) => {
        const crowned = (v: number) => {
          const { across, up } = boxSection(v);
          const isBent = where === 'bottom' ? v <= 1 : v >= 2;
          return { across, up: isBent ? (where === 'bottom' ? 0 : 1) + 0.06 * across * across : up };
        };
        const surface = surfaceBy({ length, stations: rows, half: () => half, section: crowned, inner, notchAt: from });
        const edge = (x: number) => [x, inner(x), crown * (inner(x) / half) ** 2] as const;
        const off = [1, 2].map((row) => {
          const x = fromTurn((toTurn(rows[row]!, length) + toTurn(rows[row + 1]!, length)) / 2, length);
          const [p, a, b] = [edge(x), edge(rows[row]!), edge(rows[row + 1]!)];
          // Distance of a point from a line: |(p − a) × (b − a)| / |b − a|.
          const [u, w] = [a, b].map((q) => (q === a ? p : b).map((value, i) => value - a[i]!)) as [number[], number[]];
          const cross = Math.hypot(
            u[1]! * w[2]! - u[2]! * w[1]!,
            u[2]! * w[0]! - u[0]! * w[2]!,
            u[0]! * w[1]! - u[1]! * w[0]!,
          );
          return cross / Math.hypot(...w);
        });
        expect(Math.min(...off)).toBeGreaterThan(0.05);
        for (const limit of off.flatMap((each) => [2 * 0.98 * each, 2 * 1.02 * each])) {
          const asked = off.flatMap((each, i) => (2 * each > limit ? [i + 1] : []));
          expect(bent(surface, rows, fine, limit).rows, `${limit}`).toEqual(asked);
        }
      },
    );

    test.each([0, 1])(
      'is nothing of the cells that it cuts, and the cells beside it as everywhere (%d up)',
      (level) => {
        const wide = [0, 0.25, 0.5, 1, 2, 2.5, 2.75, 3];
        const at = (x: number, y: number) =>
          surfaceBy({
            length,
            stations: rows,
            inner,
            notchAt: from,
            raised: (px, py, up) => (up === level ? Math.max(0, 1 - Math.hypot((px - x) / 20, (py - y) / 3)) : 0),
          });
        const middle = fromTurn((toTurn(620, length) + toTurn(length, length)) / 2, length);
        // The notch is 80 mm wide to each side at the tail: of the cells 0–25, 25–50, 50–100 all meet it there.
        for (const y of [12.5, 37.5, 75]) expect(bent(at(middle, y), rows, wide, 0.5)).toEqual(none);
        // It is 29 mm at 620: in the rows before that the outermost cell keeps clear.
        const before = fromTurn((toTurn(from, length) + toTurn(620, length)) / 2, length);
        expect(bent(at(before, 37.5), rows, wide, 0.5)).toEqual(none);
        expect(bent(at(before, -75), rows, wide, 0.5)).toEqual({ rows: [1], columns: [] });
        // Before the notch every cell is.
        const fore = fromTurn((toTurn(0, length) + toTurn(from, length)) / 2, length);
        for (const y of [12.5, 37.5, 75])
          expect(bent(at(fore, y), rows, wide, 0.5)).toEqual({ rows: [0], columns: [] });
      },
    );
  });
});
