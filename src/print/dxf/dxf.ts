import type { Drawing, Shape } from '../../sheet/drawing.js';
import type { Vertex } from '../../contour/vertex.js';
import { isEmpty, joinBoxes } from '../trace/box.js';
import { cleanVertices, cutLayers } from '../trace/contour.js';
import { DxfFile } from './dxfFile.js';
import { dxfLayers } from './dxfLayer.js';
import type { Finding } from '../../finding/finding.js';
import { cutFindings } from './gate.js';
import { settled } from '../trace/settle.js';
import { traceOf } from '../trace/trace.js';

/** Side of the square that proves the scale, and its distance from the drawing, mm. */
const SQUARE = 100;
const APART = 20;

/**
 * A drawing as DXF of 2000 (AC1015), millimetres (`$INSUNITS` 4), in the drawing's own frame. One closed polyline a
 * contour, its arcs true (bulges); circles as circles; words on a layer of their own; a square of 100 mm beside the
 * drawing, on a layer that is not cut, to prove the scale. No hatching: a machine would cut it.
 *
 * @returns findings instead, when a contour is open, crosses itself or another, or would be cut twice.
 * @throws when a coordinate is not a finite number.
 */
export function dxfOf(
  drawing: Drawing,
): { readonly dxf: string; readonly findings: readonly [] } | { readonly findings: readonly Finding[] } {
  const trace = traceOf(drawing);
  const findings = cutFindings(drawing);
  if (findings.length > 0) return { findings };
  const box = joinBoxes([...trace.lines, ...trace.texts].map((traced) => traced.box));
  const [left, bottom] = isEmpty(box) ? [0, 0] : [box.minX, box.minY - APART - SQUARE];
  const file = new DxfFile(Object.values(dxfLayers));
  for (const shape of settled(drawing).shapes) {
    const isUncut = drawing.isNotCut && cutLayers.includes(shape.layer);
    addShape(file, shape, dxfLayers[isUncut ? 'uncut' : shape.layer].name);
  }
  const scale = dxfLayers.scale.name;
  file.polyline(scale, square(left, bottom), true);
  file.text(scale, {
    text: '100 mm',
    x: left + SQUARE / 2,
    y: bottom + SQUARE / 2,
    height: 10,
    align: 'centre',
    angle: 0,
  });
  const extent = isEmpty(box) ? { ...box, minX: 0, maxX: SQUARE, maxY: SQUARE } : box;
  const dxf = file.write({
    minX: extent.minX,
    minY: bottom,
    maxX: Math.max(extent.maxX, left + SQUARE),
    maxY: extent.maxY,
  });
  return { dxf, findings: [] };
}

function addShape(file: DxfFile, shape: Shape, layer: string): void {
  switch (shape.kind) {
    case 'circle':
      file.circle(layer, shape.x, shape.y, shape.radius);
      return;
    case 'text':
      file.text(dxfLayers.text.name, { ...shape, angle: shape.angleInDegrees ?? 0 });
      return;
    case 'path': {
      const vertices = cleanVertices(shape);
      if (vertices.length > 1) file.polyline(layer, vertices, shape.closed);
    }
  }
}

const square = (x: number, y: number): readonly Vertex[] => [
  { x, y },
  { x: x + SQUARE, y },
  { x: x + SQUARE, y: y + SQUARE },
  { x, y: y + SQUARE },
];
