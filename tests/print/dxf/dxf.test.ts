import { Helper } from 'dxf';
import DxfParserModule from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../../src/sheet/drawing.js';
import { dxfOf } from '../../../src/print/dxf/dxf.js';
import { dxfText } from '../../../src/print/dxf/dxfText.js';
import { AWKWARD } from '../printed.js';
import { rounded, stripDrawing } from '../strip.js';

// Its types put the class one step further in than its file does.
const DxfParser = DxfParserModule as unknown as typeof DxfParserModule.default;

const sheet: Drawing = {
  id: 'guide-1',
  title: 'Guide',
  notes: [],
  shapes: [
    { kind: 'path', layer: 'guide', closed: true, vertices: rounded(100, 20, 400, 100, 8) },
    { kind: 'circle', layer: 'guide', x: 50, y: 50, radius: 12.5 },
    { kind: 'text', layer: 'label', text: AWKWARD, x: 250, y: 60, height: 10, align: 'centre' },
  ],
};

interface Entity {
  type: string;
  layer: string;
  shape?: boolean;
  closed?: boolean;
  radius?: number;
  text?: string;
  vertices?: { x: number; y: number; bulge?: number }[];
}

function dxf(drawing: Drawing): string {
  const made = dxfOf(drawing);
  if (!('dxf' in made)) throw new Error(JSON.stringify(made.findings));
  return made.dxf;
}

function entities(drawing: Drawing): Entity[] {
  return new DxfParser().parseSync(dxf(drawing))!.entities as unknown as Entity[];
}

describe('DXF, read by dxf-parser', () => {
  it('is in millimetres ($INSUNITS 4, DXF reference) and of the release of 2000', () => {
    const { header } = new DxfParser().parseSync(dxf(sheet))!;
    expect(header).toMatchObject({ $ACADVER: 'AC1015', $INSUNITS: 4, $MEASUREMENT: 1 });
  });

  it('has one closed polyline for a contour, corners as bulges of a quarter circle: tan 22.5°', () => {
    const contour = entities(sheet).filter(({ layer, type }) => layer === 'CUT_GUIDE' && type === 'LWPOLYLINE');
    expect(contour).toHaveLength(1);
    const { vertices, shape } = contour[0]!;
    expect(shape).toBe(true);
    expect(vertices).toHaveLength(8);
    const bulges = vertices!.map(({ bulge }) => bulge ?? 0).filter((bulge) => bulge !== 0);
    expect(bulges).toHaveLength(4);
    for (const bulge of bulges) expect(bulge).toBeCloseTo(Math.SQRT2 - 1, 5);
    const xs = vertices!.map(({ x }) => x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(300, 6);
  });

  it('carries a square of 100 mm on a layer that is not cut', () => {
    const square = entities(sheet).find(({ layer, type }) => layer === 'SCALE_100_MM' && type === 'LWPOLYLINE')!;
    const [xs, ys] = [square.vertices!.map(({ x }) => x), square.vertices!.map(({ y }) => y)];
    expect(Math.max(...xs) - Math.min(...xs)).toBe(100);
    expect(Math.max(...ys) - Math.min(...ys)).toBe(100);
    // Clear of the drawing.
    expect(Math.max(...ys)).toBeLessThan(20);
  });

  it('keeps words on a layer of their own, circles as circles', () => {
    const found = entities(sheet);
    expect(found.filter(({ type, layer }) => type === 'TEXT' && layer === 'TEXT')).toHaveLength(1);
    expect(found.find(({ type }) => type === 'CIRCLE')).toMatchObject({ layer: 'CUT_GUIDE', radius: 12.5 });
  });

  it('is plain ASCII, other letters written as \\U+XXXX (DXF reference)', () => {
    expect(dxf(sheet)).toMatch(/^[\r\n -~]*$/);
    expect(dxfText('č ≥')).toBe('\\U+010D \\U+2265');
    expect(dxfText('5 % ^ %%d')).toBe('5 % ^  %%%%%%d');
  });

  it('reads the same in a second reader', () => {
    const { entities: found } = new Helper(dxf(stripDrawing())).parsed as { entities: Entity[] };
    const first = entities(stripDrawing());
    const count = (list: Entity[], layer: string): number => list.filter((entity) => entity.layer === layer).length;
    for (const layer of ['OUTLINE', 'CUT_CHAMBER', 'DOT', 'MARK', 'TEXT', 'SCALE_100_MM']) {
      expect(count(found, layer)).toBe(count(first, layer));
    }
    const outline = found.find(({ layer }) => layer === 'OUTLINE')!;
    expect(outline.closed).toBe(true);
    const xs = outline.vertices!.map(({ x }) => x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(3500, 6);
  });

  it('is not written when a cutter would spoil the part', () => {
    const open: Drawing = {
      ...sheet,
      shapes: [
        {
          kind: 'path',
          layer: 'guide',
          closed: false,
          vertices: [
            { x: 0, y: 0 },
            { x: 9, y: 0 },
          ],
        },
      ],
    };
    expect(dxfOf(open).findings).toHaveLength(1);
    expect('dxf' in dxfOf(open)).toBe(false);
  });
});
