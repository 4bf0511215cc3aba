import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText } from '../readSample.js';

const sample = readFileSync('samples/beck-guard.yaml', 'utf8');
const OUTLINE = 'outline: {rake: 74, leading: 70 %, trailing: 36 %}';
const changed = (from: string, to: string) => {
  expect(sample).toContain(from);
  return readText(sample.replace(from, to));
};
const found = (from: string, to: string) =>
  changed(from, to).findings.map(({ where, what, remedy }) => [where.path.replace('fins[0].build.', ''), what, remedy]);

describe('the build of a fin in a job', () => {
  it('is read with what goes without saying', () => {
    const { job, findings } = readText(sample);
    expect(findings).toEqual([]);
    expect(job!.fins![0]!.build).toMatchObject({
      outline: { rake: 74, leading: expect.closeTo(0.7, 9), trailing: 0.36 },
      panel: { cloth: 280, layers: 10, fibre: 0.4, fibreDensity: 2540, resinDensity: 1150 },
      tab: { depth: 30, isTemporary: true },
      stands: { side: 'centre', away: 0, cant: 0, toe: 0 },
    });
  });

  it('takes degrees as they are written and counts in radians', () => {
    const { job } = changed('fillet:', 'stands: {both: 110, cant: 90e-1, toe: 3}\n      fillet:');
    const { stands } = job!.fins![0]!.build!;
    expect(stands.side).toBe('both');
    expect(stands.cant).toBeCloseTo(Math.PI / 20, 12);
    expect(stands.toe).toBeCloseTo(Math.PI / 60, 12);
  });

  it.each([
    ['the same way round', 'M0 0 L 70 215 L 140 215 L 200 0 Z'],
    ['the other way round', 'M0 0 L 200 0 L 140 215 L 70 215 Z'],
    ['begun at its tip', 'M140 215 L 200 0 L 0 0 L 70 215 Z'],
  ])('takes its edges and its tip from a drawing, %s', (_, path) => {
    const { job, findings } = readText(
      sample.replace(OUTLINE, `outline: {path: "${path}"}`).replace('    tip: 62\n', ''),
    );
    expect(findings).toEqual([]);
    const [fin] = job!.fins!;
    expect(fin!.tip).toBeCloseTo(70, 6);
    expect(fin!.build!.outline).toEqual({ rake: expect.closeTo(5, 6), leading: [], trailing: [] });
  });

  it('takes the points of a curve between base and tip, from the base up', () => {
    const path = 'M0 0 C 0 100 60 180 120 215 L 160 215 L 200 0 Z';
    const { job } = readText(sample.replace(OUTLINE, `outline: {path: "${path}"}`).replace('    tip: 62\n', ''));
    const { leading, trailing } = job!.fins![0]!.build!.outline;
    const points = leading as readonly (readonly [number, number])[];
    expect(points.length).toBeGreaterThan(4);
    expect(trailing).toEqual([]);
    // The Bézier curve of those four points, by its polynomial, at the height of each point.
    for (const [x, y] of points) {
      let [low, high] = [0, 1];
      for (let i = 0; i < 60; i++) {
        const t = (low + high) / 2;
        const height = 3 * t * (1 - t) ** 2 * 100 + 3 * t * t * (1 - t) * 180 + t ** 3 * 215;
        if (height < y) low = t;
        else high = t;
      }
      expect(x).toBeCloseTo(3 * low * low * (1 - low) * 60 + low ** 3 * 120, 1);
    }
  });

  it('is said to be wrong where it is, with what would be right', () => {
    expect(found('layers: 10}', 'layers: 10, thick: 3}')).toEqual([
      ['panel.thick', 'both layers and a thickness are given', 'keep one of them'],
    ]);
    expect(found(', layers: 10}', '}')).toEqual([
      ['panel', 'it has no thickness', 'layers:, or thick: and the layers follow'],
    ]);
    expect(found(OUTLINE, 'outline: {leading: 70 %, leadingPoints: [[10, 100]]}')[0]).toEqual([
      'outline.leading',
      'the edge is given by its points and by its fullness',
      'keep one of them',
    ]);
    expect(found(OUTLINE, 'outline: {leadingPoints: [[10, 100], [20, 90]]}')).toEqual([
      [
        'outline.leadingPoints[1]',
        'this point lies 90 mm over the base',
        'from the base up, more than 100 mm and less than the depth of 215 mm',
      ],
    ]);
    expect(found(OUTLINE, 'outline: {path: "M0 0 L 70 215 L 140 215 L 210 0 Z"}')[0]![1]).toBe(
      'the drawing has a base of 210 mm and a depth of 215 mm',
    );
    expect(found(OUTLINE, 'outline: {path: "M0 0 L 70 215 L 132 215 L 140 90 L 150 100 L 200 0 Z"}')[0]![1]).toBe(
      'an edge turns back at 90 mm over the base',
    );
    expect(found('tipThick: 5', 'tipThick: 16')[0]![1]).toBe(
      'it is thicker at its tip, 16 mm, than at its base: no taper sled makes that',
    );
    expect(found('fillet:', 'stands: {cant: 5}\n      fillet:')[0]).toEqual([
      'stands.cant',
      'a fin on the centreline has no outside to lean or turn to',
      'right:, left: or both: and how far it stands from the centreline, or leave it out',
    ]);
    expect(found('fillet:', 'stands: {right: 300}\n      fillet:')[0]![1]).toMatch(/^it stands outside the rail/);
    expect(found('wood: western-red-cedar, thickness: 7', 'wood: red-cedar, thickness: 7')[0]![0]).toBe('wood[0].wood');
  });
});
