import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { BufferAttribute, BufferGeometry, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { describe, expect, it } from 'vitest';
import { parseLength } from '../../src/length/length.js';
import { printAs } from '../../src/length/rounded.js';
import { planOf } from '../../src/plan.js';
import { passesFor } from '../../src/stock/passes.js';
import { SIDES } from '../../src/stock/skin.js';
import { placed, unplaced } from '../../src/stock/placement.js';
import { stripMaps } from '../../src/stock/stripMap.js';
import { stockLineAt } from '../../src/view/stockLine.js';
import { readText } from '../job/readSample.js';
import { evenly } from '../evenly.js';
import { plumb } from './plumb.js';

const plan = planOf(readText(readFileSync('samples/beck-guard.yaml', 'utf8')).job!);
const blank = plan.stock!.blank!;

describe('the passes of a planer', () => {
  // By hand: 7.1 mm over the board, 2 mm to stay: 5.1 mm are two passes of 2 mm and one of 1.1 mm.
  it('take off all but what is to stay', () => {
    expect(passesFor(7.1, 2, 2, 'mm')).toEqual({ full: 2, last: 1.1 });
    expect(passesFor(6, 2, 2, 'mm')).toEqual({ full: 2, last: 0 });
    expect(passesFor(1.1, 2, 2, 'mm')).toEqual({ full: 0, last: 0 });
  });

  // 1/2 in over the board, 1/16 in to stay, 1/16 in a pass: seven passes; 0.49 in are 31/64 in: six passes and 3/64 in.
  it('are never deeper than what there is, in sixty-fourths of an inch too', () => {
    expect(passesFor(12.7, 25.4 / 16, 25.4 / 16, 'in')).toEqual({ full: 7, last: 0 });
    const { full, last } = passesFor(0.49 * 25.4, 25.4 / 16, 25.4 / 16, 'in');
    expect([full, last / 25.4]).toEqual([6, expect.closeTo(3 / 64, 6)]);
  });

  // A job in inches with 2 mm to stay: 6/64 in is left, for 5/64 in are less than was asked.
  it('and what stays add up to what stands over, as it is written', () => {
    fc.assert(
      fc.property(
        evenly(0, 40),
        evenly(0, 5),
        evenly(0.5, 4),
        fc.constantFrom('mm' as const, 'in' as const),
        (over, stays, cut, units) => {
          const { full, last } = passesFor(over, stays, cut, units);
          const said = (kind: 'over' | 'stays' | 'pass', mm: number) => {
            const read = parseLength(printAs(kind, mm, units), units);
            return read.ok ? read.value : NaN;
          };
          const left = said('over', over) - full * said('pass', cut) - said('pass', last);
          expect(left).toBeCloseTo(Math.min(said('over', over), said('stays', stays)), 4);
          expect(left).toBeGreaterThan(Math.min(stays, over - 0.4) - 1e-4);
        },
      ),
      { seed: 11, numRuns: 300 },
    );
  });
});

describe('what comes off each strip', () => {
  // Reference: three-mesh-bvh, every 37th knot; on the knots the deck is where a plumb line meets the board's mesh.
  it('is as far as the blank from the finished surface', () => {
    const tree = (mesh: typeof plan.board.mesh) => {
      const geometry = new BufferGeometry();
      geometry.setAttribute('position', new BufferAttribute(Float32Array.from(mesh.positions), 3));
      geometry.setIndex(new BufferAttribute(mesh.triangles.slice(), 1));
      return new MeshBVH(geometry);
    };
    const [board, stock] = [tree(plan.board.mesh), tree(blank.moulded.mesh)];
    const lies = placed(blank.fits[0]!.placement, plan.board.length);
    let compared = 0;
    for (const { strip, side, x, y, value } of stripMaps(plan.board, blank)) {
      const { moved } = blank.strips[strip]!;
      value.forEach((over, k) => {
        if (Number.isNaN(over) || k % 37 !== 0) return;
        const heights = plumb(plan.board.mesh, x[k]!, y[k]!);
        const z = side === 'deck' ? Math.max(...heights) : Math.min(...heights);
        if (!Number.isFinite(z)) return;
        expect(board.closestPointToPoint(new Vector3(x[k], y[k], z))!.distance).toBeLessThan(0.001);
        const [px, pz] = lies(x[k]!, z);
        const { distance } = stock.closestPointToPoint(new Vector3(px, y[k]! - moved.at - moved.slope * x[k]!, pz))!;
        expect(Math.abs(Math.abs(over) - distance)).toBeLessThan(0.005);
        compared++;
      });
    }
    expect(compared).toBeGreaterThan(60);
  });

  it('is least where the fit says, as nearly as the lattice is fine', () => {
    const least = Math.min(...stripMaps(plan.board, blank).flatMap(({ value }) => [...value].filter((v) => v === v)));
    expect(Math.abs(least - Math.min(...blank.least.map(({ over }) => over)))).toBeLessThan(0.5);
  });
});

describe('the blank as the board lies in it', () => {
  it('comes back to where it was', () => {
    const placement = { along: 13, up: -4, noseUp: 31 };
    const [there, back] = [placed(placement, 2900), unplaced(placement, 2900)];
    for (const [x, z] of [
      [0, 120],
      [1450, 0],
      [2900, 54],
    ] as const)
      expect(back(...there(x, z))).toEqual([expect.closeTo(x, 9), expect.closeTo(z, 9)]);
  });

  // Measured square to the surface there is hardly less than upright.
  it('stands over the finished deck along a joint by what the fit found there', () => {
    const strip = blank.strips.findIndex(({ member }) => member.id === 'MR1');
    const { left } = blank.strips[strip]!.member;
    const [{ skin, over }] = blank.fits as [(typeof blank.fits)[number]];
    const onJoint = [...over.keys()].filter(
      (i) =>
        skin.strip[i] === strip && SIDES[skin.side[i]!] === 'deck' && Math.abs(skin.at[3 * i + 1]! - left!.at) < 1e-3,
    );
    const least = onJoint.reduce((a, b) => (over[b]! < over[a]! ? b : a));
    const x = skin.at[3 * least]!;
    const heights = stockLineAt(blank, strip, left!, plan.board.length).heightsAt(x)!;
    const finished = plumb(plan.board.mesh, x, left!.at + 1e-4);
    expect(Math.abs(heights.deck - Math.max(...finished) - over[least]!)).toBeLessThan(0.1);
  });
});
