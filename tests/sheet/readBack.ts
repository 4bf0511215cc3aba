import DxfParserModule from 'dxf-parser';
import type { Drawing } from '../../src/sheet/drawing.js';
import { dxfOf } from '../../src/print/dxf/dxf.js';
import { rollOf } from '../../src/print/paper/paper.js';
import { svgOf } from '../../src/print/svg/svg.js';
import { printed } from '../print/printed.js';
import { readPdf } from '../print/readPdf.js';

type Line = readonly (readonly [x: number, y: number])[];

const pair = ({ x, y }: { readonly x: number; readonly y: number }): [number, number] => [x, y];

// Its types put the class one step further in than its file does.
const DxfParser = DxfParserModule as unknown as typeof DxfParserModule.default;

/** What a reader of each format finds of a drawing without arcs: its lines, mm, from wherever the drawing lies. */
export const READERS: Readonly<Record<'PDF' | 'SVG' | 'DXF', (drawing: Drawing) => Promise<Line[]>>> = {
  // On a roll so wide that nothing is cut apart; pdf.js.
  async PDF(drawing) {
    const { bytes } = await printed([{ kind: 'tiled', title: drawing.title, drawings: [drawing] }], {
      paper: rollOf(1500),
    });
    return (await readPdf(bytes)).flatMap(({ lines }) => lines.map(({ points }) => points.map(pair)));
  },
  SVG: async (drawing) =>
    [...svgOf(drawing).matchAll(/ d="([^"]*)"/g)].map(([, d]) => {
      const numbers = d!.match(/-?[\d.]+(?:e-?\d+)?/g)!.map(Number);
      const points = Array.from({ length: numbers.length / 2 }, (_, i): [number, number] => [
        numbers[2 * i]!,
        -numbers[2 * i + 1]!,
      ]);
      return /z$/i.test(d!) ? [...points, points[0]!] : points;
    }),
  DXF: async (drawing) => {
    const made = dxfOf(drawing);
    if (!('dxf' in made)) throw new Error(JSON.stringify(made.findings));
    const found = new DxfParser().parseSync(made.dxf)!.entities as unknown as Polyline[];
    return found.flatMap(({ vertices, shape }) =>
      vertices ? [(shape ? [...vertices, vertices[0]!] : vertices).map(pair)] : [],
    );
  },
};

interface Polyline {
  readonly vertices?: { x: number; y: number }[];
  /** Closed. */
  readonly shape?: boolean;
}

/**
 * How far a point of the drawing lies from the nearest line that was read back, mm. Where the drawing lies on its page
 * is told by its longest line, whose left and lower ends are known.
 */
export function offBy(lines: readonly Line[], drawing: Drawing): (x: number, y: number) => number {
  const drawn = drawing.shapes.flatMap((shape) => (shape.kind === 'path' ? [shape.vertices.map(pair)] : []));
  const most = drawn.reduce((a, b) => (b.length > a.length ? b : a));
  const read = lines.filter(({ length }) => length >= most.length).reduce((a, b) => (b.length < a.length ? b : a));
  const low = (line: Line, axis: 0 | 1) => Math.min(...line.map((point) => point[axis]));
  const [dx, dy] = [low(read, 0) - low(most, 0), low(read, 1) - low(most, 1)];
  return (x, y) => {
    const [px, py] = [x + dx, y + dy];
    let least = Infinity;
    for (const line of lines) {
      for (let i = 1; i < line.length; i++) {
        const [[ax, ay], [bx, by]] = [line[i - 1]!, line[i]!];
        const long = (bx - ax) ** 2 + (by - ay) ** 2;
        const t = long === 0 ? 0 : Math.max(0, Math.min(1, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / long));
        least = Math.min(least, Math.hypot(px - ax - t * (bx - ax), py - ay - t * (by - ay)));
      }
    }
    return least;
  };
}
