import type { Vertex } from '../../contour/vertex.js';
import type { Drawing, Layer, Shape } from '../../sheet/drawing.js';
import { heightOf, joinBoxes, isEmpty, widthOf } from '../trace/box.js';
import { hatchOf } from '../trace/hatch.js';
import { fontSizeFor, oneLine } from '../trace/lettering.js';
import { layers, lineOf, NARROW } from '../trace/line.js';
import { pathData } from '../../contour/pathData.js';
import { svgBuilder, type SvgBuilder } from './svgBuilder.js';
import { settled } from '../trace/settle.js';
import { traceOf } from '../trace/trace.js';

/** Paper left around the drawing, mm. */
const BORDER = 5;

/** Coordinates are written to a ten-thousandth of a millimetre. */
const DECIMALS = 4;

/**
 * A drawing as SVG at true size: width and height in mm, a viewBox of the same numbers, one group a layer (named by the
 * layer) and one for the hatching, plain presentation attributes, no transforms on geometry. A cutter's program takes
 * the groups it wants and leaves the words out.
 *
 * @throws when a coordinate is not a finite number.
 */
export function svgOf(drawing: Drawing): string {
  const trace = traceOf(drawing);
  const extent = joinBoxes([...trace.lines, ...trace.texts].map((traced) => traced.box));
  const box = isEmpty(extent) ? { minX: 0, minY: 0, maxX: 0, maxY: 0 } : extent;
  const width = number(widthOf(box) + 2 * BORDER);
  const height = number(heightOf(box) + 2 * BORDER);
  const place = (v: Vertex): Vertex => ({ x: v.x - box.minX + BORDER, y: box.maxY - v.y + BORDER });

  const svg = svgBuilder.create().width(`${width}mm`).height(`${height}mm`).viewBox(`0 0 ${width} ${height}`);
  svg.title(undefined, escaped([drawing.title, ...drawing.notes].join('; ')));
  const all = settled(drawing).shapes;
  for (const layer of layers) {
    const shapes = all.filter((shape) => shape.layer === layer);
    if (shapes.length === 0) continue;
    const group = svgBuilder.create();
    for (const shape of shapes) addShape(group, shape, place);
    svg.g({ id: layer, ...strokeOf(layer) }, group);
  }
  const hatching = hatchOf(trace);
  if (hatching.length > 0) {
    const data = hatching.map((s) =>
      pathData(
        [
          { x: s.x1, y: s.y1 },
          { x: s.x2, y: s.y2 },
        ],
        false,
        place,
        number,
      ),
    );
    svg.g(
      { id: 'hatch', fill: 'none', stroke: '#000', 'stroke-width': NARROW },
      svgBuilder.create().path({ d: data.join('') }),
    );
  }
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svg.render()}\n`;
}

function addShape(group: SvgBuilder, shape: Shape, place: (v: Vertex) => Vertex): void {
  if (shape.kind === 'path') {
    group.path({ d: pathData(shape.vertices, shape.closed, place, number) });
    return;
  }
  const { x, y } = place(shape);
  if (shape.kind === 'circle') {
    group.circle({ cx: number(x), cy: number(y), r: number(shape.radius) });
    return;
  }
  const angle = shape.angleInDegrees ?? 0;
  const turn = (angle * Math.PI) / 180;
  // The anchor is the middle of the capitals; SVG places the baseline.
  const down = shape.height / 2;
  const bx = number(x + down * Math.sin(turn));
  const by = number(y + down * Math.cos(turn));
  group.text(
    {
      x: bx,
      y: by,
      fill: '#000',
      stroke: 'none',
      'font-family': 'DejaVu Sans, Verdana, sans-serif',
      'font-size': number(fontSizeFor(shape.height)),
      'text-anchor': { left: 'start', centre: 'middle', right: 'end' }[shape.align],
      ...(angle === 0 ? {} : { transform: `rotate(${number(-angle)} ${bx} ${by})` }),
    },
    escaped(shape.text),
  );
}

function strokeOf(layer: Layer): Record<string, string | number> {
  const { width, dashes } = lineOf[layer];
  return {
    fill: 'none',
    stroke: '#000',
    'stroke-width': width,
    ...(dashes.length > 0 ? { 'stroke-dasharray': dashes.map(number).join(' ') } : {}),
  };
}

/**
 * The one door for words: svg-builder takes text and attributes as they come, so nothing reaches it that XML would read
 * as markup.
 */
function escaped(text: string): string {
  return oneLine(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

/** A number as SVG takes it, rounded once. Throws for what is not a number: svg-builder would write `NaN`. */
function number(value: number): string {
  if (!Number.isFinite(value)) throw new Error('a drawing has a coordinate that is not a number');
  return String(Number(value.toFixed(DECIMALS)) + 0);
}
