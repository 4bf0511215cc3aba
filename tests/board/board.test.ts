import { describe, expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { boardBy, cosineShares, everywhere, outlineBy } from './bodies.js';

/**
 * What the published or exact figure may be missed by: a table of offsets is read, not the formula (one in a thousand,
 * as asked).
 */
const WITHIN = 1e-3;

const relative = (value: number, exact: number) => Math.abs(value / exact - 1);
const shares = Array.from({ length: 41 }, (_, i) => i / 40);

describe('a board read from a table of offsets has the volume of its closed form', () => {
  // Wigley hull: V = 4/9 L B T. D. Hally, "Representation of Wigley hulls by HLLSRF", DREA TC 89/308 (1989), and exact.
  test('the Wigley hull', () => {
    const [L, B, T] = [3000, 300, 150];
    const outline = outlineBy(L, (u) => (B / 2) * (1 - (2 * u - 1) ** 2), { kind: 'pointed' }, { kind: 'pin' });
    const profile = [0, L].map((x) => ({ x, bottom: 0, thickness: T }));
    const section = [
      ...shares.map((h) => ({ y: (B / 2) * (1 - (1 - h) ** 2), z: h * T, edge: h === 1 || h === 0 })),
      { y: 0, z: T, edge: false },
    ];
    const { volume, area } = boardOf(boardBy(L, outline, profile, everywhere(section, L)));
    expect(relative(volume, ((4 / 9) * L * B * T) / 1e6)).toBeLessThan(WITHIN);
    // Waterplane 2/3 L B (same source).
    expect(relative(area, ((2 / 3) * L * B) / 1e6)).toBeLessThan(WITHIN);
  });

  // J. M. J. Journée, TU Delft report 0909 (1992), hull III (alpha = 0): C_B = 0.4622222 exact, 0.0780000 m³ for L 3, B
  // 0.3, d 0.1875 m.
  test('the modified Wigley hull III', () => {
    const [L, B, T] = [3000, 300, 187.5];
    const half = (u: number) => (B / 2) * (1 - (2 * u - 1) ** 2) * (1 + 0.2 * (2 * u - 1) ** 2);
    const outline = outlineBy(L, half, { kind: 'pointed' }, { kind: 'pin' });
    const profile = [0, L].map((x) => ({ x, bottom: 0, thickness: T }));
    const section = [
      ...shares.map((h) => ({ y: (B / 2) * (1 - (1 - h) ** 2), z: h * T, edge: h === 1 || h === 0 })),
      { y: 0, z: T, edge: false },
    ];
    const { volume } = boardOf(boardBy(L, outline, profile, everywhere(section, L)));
    expect(relative(volume, 78.0)).toBeLessThan(WITHIN);
  });

  // Closed form: parabolic plan and a constant thickness with a parabolic section, 4/9 L W t0, exact.
  test('the body with parabolic plan and parabolic section', () => {
    const [L, W, t] = [2000, 500, 60];
    const outline = outlineBy(L, (u) => (W / 2) * (1 - (2 * u - 1) ** 2), { kind: 'pointed' }, { kind: 'pin' });
    const section = [
      { y: 0, z: 0, edge: true },
      { y: W / 2, z: 0, edge: true },
      ...[...shares]
        .reverse()
        .map((v) => ({ y: (v * W) / 2, z: t * (1 - v * v), edge: false }))
        .slice(1),
    ];
    const profile = [0, L].map((x) => ({ x, bottom: 0, thickness: t }));
    const { volume, area } = boardOf(boardBy(L, outline, profile, everywhere(section, L)));
    expect(relative(volume, ((4 / 9) * L * W * t) / 1e6)).toBeLessThan(WITHIN);
    expect(relative(area, 0.66666667)).toBeLessThan(WITHIN);
  });

  // 4/3 π a b c, exact; the outline stands up at both tips.
  test('the ellipsoid', () => {
    const [L, W, t] = [2000, 500, 120];
    const root = (u: number) => Math.sqrt(Math.max(0, 1 - (2 * u - 1) ** 2));
    const outline = outlineBy(L, (u) => (W / 2) * root(u), { kind: 'round' }, { kind: 'round' });
    const profile = cosineShares(60).map((u) => ({
      x: u * L,
      bottom: (t / 2) * (1 - root(u)),
      thickness: t * root(u),
    }));
    const section = Array.from({ length: 41 }, (_, i) => -Math.PI / 2 + (Math.PI * i) / 40).map((angle) => ({
      y: Math.max(0, (W / 2) * Math.cos(angle) - (Math.abs(angle) > 1.57 ? 1e-9 : 0)),
      z: (t / 2) * (1 + Math.sin(angle)),
      edge: false,
    }));
    section[0]!.y = 0;
    section[40]!.y = 0;
    const { volume, area } = boardOf(boardBy(L, outline, profile, everywhere(section, L)));
    expect(relative(volume, ((4 / 3) * Math.PI * (L / 2) * (W / 2) * (t / 2)) / 1e6)).toBeLessThan(WITHIN);
    expect(relative(area, 0.78539816)).toBeLessThan(WITHIN);
  });

  // Superellipse in plan: area L W Γ(1+1/n)² / Γ(1+2/n), by the beta integral (NIST DLMF 5.12.1).
  test.each([
    [2, 0.785398],
    [2.5, 0.845234],
    [3, 0.883319],
    [4, 0.927037],
  ])('superellipse plans, n = %d', (n, factor) => {
    const [L, W] = [2000, 500];
    const outline = outlineBy(
      L,
      (u) => (W / 2) * (1 - Math.abs(2 * u - 1) ** n) ** (1 / n),
      { kind: 'round' },
      { kind: 'round' },
      60,
    );
    const flat = {
      x: L / 2,
      kind: 'numbers',
      apex: 0.5,
      above: 0.9,
      below: 0.9,
      crown: 0,
      bottom: { kind: 'flat' },
    } as const;
    const { area } = boardOf(
      boardBy(
        L,
        outline,
        [0, L].map((x) => ({ x, bottom: 0, thickness: 50 })),
        [flat],
      ),
    );
    expect(relative(area, (factor * L * W) / 1e6)).toBeLessThan(WITHIN);
  });
});

describe('the tails of the trade', () => {
  const flat = {
    x: 500,
    kind: 'numbers',
    apex: 0.5,
    above: 0.9,
    below: 0.9,
    crown: 0,
    bottom: { kind: 'flat' },
  } as const;
  const points = [
    { x: 300, half: 200 },
    { x: 600, half: 200 },
  ];
  const profile = [0, 1000].map((x) => ({ x, bottom: 0, thickness: 50 }));

  test('a square tail ends straight across at its half-width', () => {
    const { surface } = boardOf(
      boardBy(1000, { nose: { kind: 'round' }, tail: { kind: 'square', half: 150 }, points }, profile, [flat]),
    );
    expect(surface.outlines[1].outer(1000)).toBeCloseTo(150, 6);
  });

  test('a squash tail loses a quarter circle at each corner', () => {
    const whole = boardOf(
      boardBy(1000, { nose: { kind: 'round' }, tail: { kind: 'square', half: 150 }, points }, profile, [flat]),
    );
    const eased = boardOf(
      boardBy(1000, { nose: { kind: 'round' }, tail: { kind: 'squash', half: 150, corner: 40 }, points }, profile, [
        flat,
      ]),
    );
    // Between a square of side r and a quarter circle of radius r: (1 − π/4) r², on both sides; exact.
    expect((whole.area - eased.area) * 1e6).toBeCloseTo(2 * (1 - Math.PI / 4) * 40 ** 2, 0);
  });

  test('a swallow tail loses the triangle of its notch', () => {
    const whole = boardOf(
      boardBy(1000, { nose: { kind: 'round' }, tail: { kind: 'square', half: 150 }, points }, profile, [flat]),
    );
    const notched = boardOf(
      boardBy(1000, { nose: { kind: 'round' }, tail: { kind: 'swallow', half: 150, depth: 80 }, points }, profile, [
        flat,
      ]),
    );
    expect(relative((whole.area - notched.area) * 1e6, 150 * 80)).toBeLessThan(WITHIN);
  });

  test('a round nose stands up at the tip: near it the half-width grows as the root of the distance', () => {
    const radius = 120;
    const arc = [10, 30, 60, 90].map((x) => ({ x, half: Math.sqrt(2 * radius * x - x * x) }));
    const { surface } = boardOf(
      boardBy(
        1000,
        { nose: { kind: 'round' }, tail: { kind: 'pin' }, points: [...arc, { x: 400, half: 200 }] },
        profile,
        [flat],
      ),
    );
    for (const x of [1, 3, 20, 45])
      expect(Math.abs(surface.outlines[1].outer(x) - Math.sqrt(2 * radius * x - x * x))).toBeLessThan(1);
    arc.forEach(({ x, half }) => expect(surface.outlines[1].outer(x)).toBeCloseTo(half, 5));
  });
});
