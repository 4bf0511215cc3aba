import { describe, expect, it } from 'vitest';
import type { Drawing, Shape } from '../../../src/sheet/drawing.js';
import { cutFindings } from '../../../src/print/dxf/gate.js';
import { rounded, stripDrawing } from '../strip.js';

const drawing = (...shapes: Shape[]): Drawing => ({ id: 'guide-1', title: '', notes: [], shapes });
const guide = (vertices: Extract<Shape, { kind: 'path' }>['vertices'], closed = true): Shape => ({
  kind: 'path',
  layer: 'guide',
  closed,
  vertices,
});

describe('the gate before a cutter', () => {
  it('lets a sound drawing pass, whatever lies on layers that are not cut', () => {
    expect(cutFindings(stripDrawing())).toEqual([]);
    expect(cutFindings(drawing({ kind: 'path', layer: 'mark', closed: false, vertices: [{ x: 0, y: 0 }] }))).toEqual(
      [],
    );
  });

  it('names a contour that is open', () => {
    expect(
      cutFindings(
        drawing(
          guide(
            [
              { x: 0, y: 0 },
              { x: 9, y: 0 },
              { x: 9, y: 9 },
            ],
            false,
          ),
        ),
      ),
    ).toEqual([
      {
        where: 'guide-1, shape 1 (guide)',
        what: 'The contour is open: the part would not come free.',
        remedy: 'Close it.',
      },
    ]);
  });

  it('names a contour that crosses itself, with straight sides or with arcs', () => {
    const bow = guide([
      { x: 0, y: 0 },
      { x: 10, y: 10 },
      { x: 10, y: 0 },
      { x: 0, y: 10 },
    ]);
    // The arc over the lower side bulges up through the upper one.
    const arched = guide([
      { x: 0, y: 0, bulge: -1 },
      { x: 20, y: 0 },
      { x: 20, y: 5 },
      { x: 0, y: 5 },
    ]);
    for (const shape of [bow, arched]) expect(cutFindings(drawing(shape))[0]!.what).toBe('The contour crosses itself.');
  });

  it('finds a cut made twice, wherever it begins and whichever way it runs', () => {
    const once = rounded(0, 0, 60, 30, 5);
    const again = [...once.slice(3), ...once.slice(0, 3)];
    const back = once.map((_, i) => {
      const vertex = once[(once.length - i) % once.length]!;
      const bulge = once[(once.length - i - 1 + once.length) % once.length]!.bulge;
      return { x: vertex.x, y: vertex.y, ...(bulge === undefined ? {} : { bulge: -bulge }) };
    });
    for (const twice of [again, back]) {
      const findings = cutFindings(drawing(guide(once), guide(twice)));
      expect(findings.map(({ what }) => what)).toEqual(['The contour lies on shape 1: it would be cut twice.']);
    }
  });

  it('finds contours that cross one another, and leaves one inside another alone', () => {
    const outer = guide(rounded(0, 0, 60, 30, 5));
    expect(cutFindings(drawing(outer, { kind: 'circle', layer: 'guide', x: 60, y: 15, radius: 8 }))).toHaveLength(1);
    expect(cutFindings(drawing(outer, { kind: 'circle', layer: 'guide', x: 30, y: 15, radius: 8 }))).toEqual([]);
  });

  it('takes a contour that repeats its first point as the same contour', () => {
    const once = rounded(0, 0, 60, 30, 5);
    expect(cutFindings(drawing(guide([...once, once[0]!])))).toEqual([]);
  });
});
