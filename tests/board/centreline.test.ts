import type { SectionStation } from '../../src/job/spec/board.js';
import type { BoardSpec } from '../../src/job/spec/board.js';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { kernel, solidOfMesh } from '../oracle/kernel.js';
import { evenly } from '../evenly.js';

const SEED = 20261126;
const TABLES = 5;

/** A section as someone measures it: from the keel out to the apex and back over the deck, to odd tenths. */
const section = fc
  .record({
    half: evenly(120.3, 290.7),
    thick: evenly(38.1, 120.9),
    apex: evenly(0.3, 0.6),
    rise: evenly(0.01, 0.12),
    crown: evenly(0.02, 0.15),
  })
  .map(({ half, thick, apex, rise, crown }) => {
    const at = (share: number, up: number) => ({
      y: Math.round(half * share * 10) / 10,
      z: Math.round(thick * up * 10) / 10,
      edge: false,
    });
    return [
      at(0, 0),
      at(0.37, rise / 3),
      at(0.71, rise),
      at(0.93, apex / 2),
      at(1, apex),
      at(0.94, (1 + apex) / 2),
      at(0.69, 1 - crown),
      at(0.36, 1 - crown / 3),
      at(0, 1),
    ];
  });

const boards = fc
  .tuple(fc.integer({ min: 1400, max: 3800 }), section, section, section)
  .map(([length, ...three]): BoardSpec => {
    const sections = three.map((points, i): SectionStation => ({
      kind: 'points',
      x: length * (0.2 + 0.3 * i),
      points,
    }));
    const halves = three.map((points) => Math.max(...points.map(({ y }) => y)));
    return {
      length,
      right: {
        nose: { kind: 'round' },
        tail: { kind: 'round' },
        points: sections.map(({ x }, i) => ({ x, half: halves[i]! })),
      },
      profile: [0, ...sections.map(({ x }) => x), length].map((x, i) => ({
        x,
        bottom: [61.3, 12.7, 0, 4.9, 23.3][i]!,
        thickness: i === 0 || i === 4 ? 9.7 : three[i - 1]![8]!.z,
      })),
      sections,
    };
  });

test(`measured sections (${TABLES} tables of offsets, seed ${SEED}) meet exactly on the centreline, and what a reader of triangles welds is closed (manifold-3d)`, async () => {
  const k = await kernel();
  let onCentre = 0;
  fc.assert(
    fc.property(boards, (spec) => {
      const { mesh } = boardOf(spec);
      const named = new Map<string, number>();
      const across = mesh.positions.filter((_, i) => i % 3 === 1).filter((y) => Math.abs(y) < 1e-6);
      expect(across.filter((y) => !Object.is(y, 0))).toHaveLength(0);
      onCentre += across.length;
      // Welded by what is written and by nothing else, as an exact kernel does: every edge is there once in each
      // direction.
      const edges = new Map<string, number>();
      const corner = (vertex: number) => {
        const key = mesh.positions.slice(3 * vertex, 3 * vertex + 3).join();
        if (!named.has(key)) named.set(key, named.size);
        return named.get(key)!;
      };
      for (let t = 0; t < mesh.triangles.length; t += 3) {
        const corners = [0, 1, 2].map((each) => corner(mesh.triangles[t + each]!));
        corners.forEach((a, each) => {
          const b = corners[(each + 1) % 3]!;
          const key = a < b ? `${a} ${b}` : `${b} ${a}`;
          edges.set(key, (edges.get(key) ?? 0) + (a < b ? 1 : -1));
        });
      }
      expect([...edges.values()].filter((sum) => sum !== 0)).toEqual([]);
      const solid = solidOfMesh(k, mesh);
      expect([solid.status(), solid.genus()]).toEqual(['NoError', 0]);
      solid.delete();
    }),
    { seed: SEED, numRuns: TABLES },
  );
  expect(onCentre).toBeGreaterThan(100);
}, 300_000);
