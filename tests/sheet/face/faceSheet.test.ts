import { Clipper, EndType, FillRule, JoinType } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { cutFindings } from '../../../src/print/dxf/gate.js';
import { settled } from '../../../src/print/trace/settle.js';
import { traceOf } from '../../../src/print/trace/trace.js';
import type { Drawing, PathShape, TextShape } from '../../../src/sheet/drawing.js';
import { faceSheet } from '../../../src/sheet/face/faceSheet.js';
import { chambersOf, sheetRows } from '../../../src/sheet/mirror.js';
import { planOfSample, SAMPLES } from '../sample.js';

/*
 * Polygons are compared by clipper2-ts, a port of the Clipper2 library (Angus Johnson,
 * https://www.angusj.com/clipper2), which shares no code with the drawings.
 */

const polygonsOn = (drawing: Drawing, layer: PathShape['layer']) =>
  traceOf(drawing)
    .lines.filter((line) => line.layer === layer && line.closed)
    .map(({ points }) =>
      Array.from({ length: points.length / 2 }, (_, i) => ({ x: points[2 * i]!, y: points[2 * i + 1]! })),
    );

/** Areas below this, mm², are the chords that stand for arcs. */
const NO_AREA = 0.5;
/** Digits after the point that the comparison keeps. */
const PRECISION = 3;

describe.each(SAMPLES)('the face sheets of %s', (name) => {
  const plan = planOfSample(name);
  const sheets = sheetRows(plan).map((each) => ({ ...each, drawing: faceSheet(plan, each) }));

  test('have as many closed chamber outlines as the row has chambers', () => {
    for (const { row, drawing } of sheets) {
      expect(polygonsOn(drawing, 'chamber')).toHaveLength(chambersOf(plan, row).length);
      const open = drawing.shapes.filter((s) => s.kind === 'path' && s.layer === 'chamber' && !s.closed);
      expect(open).toEqual([]);
    }
    const rows = new Set(sheets.flatMap(({ row, mirror }) => [row.id, ...(mirror ? [mirror.id] : [])]));
    expect(rows).toEqual(new Set(plan.chambers.map(({ row }) => row)));
  });

  test('may be cut: nothing open, crossing or double', () => {
    for (const { drawing } of sheets) expect(cutFindings(drawing)).toEqual([]);
  });

  test('keep the chambers apart', () => {
    for (const { drawing } of sheets) {
      const chambers = polygonsOn(drawing, 'chamber');
      chambers.forEach((a, i) => {
        for (const b of chambers.slice(i + 1)) {
          const both = Clipper.intersectD([a], [b], FillRule.NonZero, PRECISION);
          expect(Math.abs(Clipper.areaPathsD(both))).toBe(0);
        }
      });
    }
  });

  test('keep every chamber within the finished line by at least the thinnest wall asked', () => {
    const wall = Math.min(plan.asked.deck, plan.asked.bottom, plan.asked.rail);
    for (const { drawing } of sheets) {
      const outline = polygonsOn(drawing, 'edge');
      const within = Clipper.inflatePathsD(outline, -wall, JoinType.Round, EndType.Polygon, 2, PRECISION, 0.01);
      const outside = Clipper.differenceD(polygonsOn(drawing, 'chamber'), within, FillRule.NonZero, PRECISION);
      expect(Math.abs(Clipper.areaPathsD(outside))).toBeLessThan(NO_AREA);
    }
  });

  test('write nothing over a line that is marked or cut', () => {
    for (const { drawing } of sheets) {
      const trace = traceOf(drawing);
      const lines = trace.lines.filter(({ layer }) => ['edge', 'chamber', 'web', 'keepout', 'dot'].includes(layer));
      for (const { shape, corners } of trace.texts) {
        // The corners are a wide guess; what is surely written on is narrower by a fifth.
        const written = shrunk(corners, 0.8);
        const crossing = lines.filter(({ points }) => crosses(points, written));
        expect(crossing, `${drawing.id}: "${(shape as TextShape).text}"`).toEqual([]);
      }
    }
  });

  test('say the number and depth of each chamber, at least 5 mm high, inside its own line or on a leader that ends in it', () => {
    for (const { row, mirror, drawing } of sheets) {
      const outlines = polygonsOn(drawing, 'chamber');
      const { shapes } = settled(drawing);
      const texts = shapes.filter((s): s is TextShape => s.kind === 'text');
      chambersOf(plan, row).forEach((chamber, i) => {
        const words = texts.filter(({ text }) => text.startsWith(chamber.id));
        expect(words, chamber.id).toHaveLength(1);
        expect(words[0]!.height).toBeGreaterThanOrEqual(5);
        const other = mirror && chambersOf(plan, mirror)[i]!.id;
        if (other) expect(texts.some(({ text, height }) => text.includes(other) && height >= 5)).toBe(true);
        const own = outlines[i]!;
        const { x, y } = words[0]!;
        const isPointedAt = () => {
          const at = shapes.indexOf(words[0]!);
          const leader = shapes.slice(at).find((s): s is PathShape => s.kind === 'path' && s.layer === 'dimension')!;
          return inside(own, leader.vertices[0]!.x, leader.vertices[0]!.y);
        };
        expect(inside(own, x, y) || isPointedAt(), chamber.id).toBe(true);
      });
    }
  });

  test('have a meaning in the legend for every kind of line that is on them', () => {
    for (const { drawing } of sheets) {
      const explained = drawing.legend!.map(([layer]) => layer);
      for (const shape of drawing.shapes) if (shape.kind !== 'text') expect(explained).toContain(shape.layer);
    }
  });
});

function shrunk(corners: Float64Array, share: number): Float64Array {
  const middle = [0, 1].map((axis) => (corners[axis]! + corners[4 + axis]!) / 2);
  return corners.map((value, i) => middle[i % 2]! + (value - middle[i % 2]!) * share);
}

/** Whether a run of straight pieces passes over a four-cornered figure. */
function crosses(points: Float64Array, corners: Float64Array): boolean {
  const figure = Array.from({ length: 4 }, (_, i) => ({ x: corners[2 * i]!, y: corners[2 * i + 1]! }));
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [a, b] = [
      { x: points[i]!, y: points[i + 1]! },
      { x: points[i + 2]!, y: points[i + 3]! },
    ];
    if (inside(figure, a.x, a.y)) return true;
    if (figure.some((p, k) => meet(a, b, p, figure[(k + 1) % 4]!))) return true;
  }
  return false;
}

type Spot = { readonly x: number; readonly y: number };

function meet(a: Spot, b: Spot, c: Spot, d: Spot): boolean {
  const side = (p: Spot, q: Spot, r: Spot) => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
}

function inside(polygon: readonly Spot[], x: number, y: number): boolean {
  let odd = false;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) odd = !odd;
  });
  return odd;
}
