import { describe, expect, it } from 'vitest';
import { areaOf } from '../../../src/contour/area.js';
import { labelStocks } from '../../../src/print/paper/labelStock.js';
import { printLength } from '../../../src/length/length.js';
import type { Vertex } from '../../../src/contour/vertex.js';
import { placesOf } from '../../../src/sheet/moved.js';
import type { Part, PathShape, TextShape } from '../../../src/sheet/drawing.js';
import { choosePapers } from '../../../src/papers/choose.js';
import { drawingsOf, papersOf } from '../../../src/papers/papers.js';
import { gaugeStations } from '../../../src/sheet/template/stations.js';
import { templateSheets } from '../../../src/sheet/template/templateSheets.js';
import { kernel } from '../../oracle/kernel.js';
import { areaWithin, boardAcross } from '../../view/kernelOutline.js';
import { offBy, READERS } from '../readBack.js';
import { setOf } from '../../papers/wholeSet.js';
import { planOfSample } from '../sample.js';

const plan = planOfSample('mere-prone');
const { board: spec } = plan.job;
const [outline, rocker, gauges] = templateSheets(plan) as [never, never, never];
/** What a steel rule shows, mm. */
const TOLERANCE = 0.05;

describe.each(Object.entries(READERS))('templates read back from %s', (_format, read) => {
  // The builder's own figures in the job: half-widths along the board.
  it('have every half-width of the job on the outline', async () => {
    const off = offBy(await read(outline), outline);
    for (const { x, half } of spec.right.points) expect(off(x, half), `${x}`).toBeLessThan(TOLERANCE);
    expect(off(spec.length / 2, 0)).toBeLessThan(TOLERANCE);
    expect(off(130, 40)).toBeGreaterThan(5);
  });

  // The same: rocker and thickness at the stations.
  it('have every height of the job on the rocker', async () => {
    const off = offBy(await read(rocker), rocker);
    for (const { x, bottom, thickness } of spec.profile) {
      expect(off(x, bottom), `bottom at ${x}`).toBeLessThan(TOLERANCE);
      expect(off(x, bottom + thickness), `deck at ${x}`).toBeLessThan(TOLERANCE);
    }
  });

  it('have each gauge as it was drawn', async () => {
    const { apart } = gauges as unknown as { apart: Part[] };
    for (const part of [apart[0]!, apart.at(-1)!]) {
      for (const shape of part.shapes) {
        const drawing = { id: 'gauge', title: 'gauge', notes: [], shapes: [shape] };
        const off = offBy(await read(drawing), drawing);
        for (const { x, y } of (shape as PathShape).vertices) expect(off(x, y)).toBeLessThan(TOLERANCE);
      }
    }
  });
});

describe('gauges', () => {
  // Reference: half of manifold-3d's cross-section and the two gauges fill the rectangle around them, to what the mesh
  // lies off the smooth surface along the section.
  it('leave out the board’s cross-section and nothing else', async () => {
    const wasm = await kernel();
    const { apart } = gauges as { apart: { shapes: [PathShape, PathShape] }[] };
    const stations = gaugeStations(spec.length, plan.job.units);
    expect(apart.length).toBe(stations.length);
    stations.forEach((x, i) => {
      const [bottom, deck] = apart[i]!.shapes.map(({ vertices }) => vertices) as [Vertex[], Vertex[]];
      const high = (of: typeof bottom) => Math.max(...of.map(({ y }) => y)) - Math.min(...of.map(({ y }) => y));
      const wide = Math.max(...bottom.map((v) => v.x)) - Math.min(...bottom.map((v) => v.x));
      const section = boardAcross(wasm, plan, x).toPolygons()[0]!;
      const zs = section.map(([z]) => -z!);
      // Both reach 25 mm beyond the board; they meet at the rail, where each ends.
      const rectangle = wide * (Math.max(...zs) - Math.min(...zs) + 50);
      const half = Math.abs(areaWithin(section.map(([z, y]) => [-z!, y!]))) / 2;
      expect(high(bottom) + high(deck)).toBeGreaterThan(Math.max(...zs) - Math.min(...zs));
      const left = rectangle - Math.abs(areaOf(bottom)) - Math.abs(areaOf(deck));
      expect(Math.abs(left - half)).toBeLessThan(0.05 * (wide + 2 * (Math.max(...zs) - Math.min(...zs))));
    });
  });

  // Two gauges of different stations held to one board give it a section that no line has.
  it('of one station lie together, the deck over the bottom, each with its station in large letters', () => {
    const { apart } = gauges as unknown as { apart: Part[] };
    gaugeStations(spec.length, plan.job.units).forEach((x, i) => {
      const { shapes, captions, name } = apart[i]!;
      const [bottom, deck] = (shapes as PathShape[]).map(({ vertices }) => vertices.map(({ y }) => y));
      expect(Math.min(...deck!)).toBeGreaterThan(Math.min(...bottom!));
      expect(Math.max(...deck!)).toBeGreaterThan(Math.max(...bottom!));
      expect(name).toBe(`station ${printLength(x, plan.job.units)}`);
      for (const [side, ys] of [
        ['BOTTOM', bottom!],
        ['DECK', deck!],
      ] as const) {
        const said = captions.find(({ places }) => JSON.stringify([...places]).includes(side))!;
        const [first] = [...placesOf(said)][0] as [TextShape];
        expect(first.text).toBe(`${printLength(x, plan.job.units)} ${side}`);
        expect(first.height).toBe(10);
        expect(first.y).toBeGreaterThan(Math.min(...ys));
        expect(first.y).toBeLessThan(Math.max(...ys));
      }
    });
  });
});

describe('the paper of templates', () => {
  it('is printed on request alone where the job lists no stock, and then is no file of the usual set', () => {
    const { toPrint, leftOut } = choosePapers(papersOf(plan, { labelStock: labelStocks[0]! }));
    expect(leftOut.map(({ name }) => name)).toContain('templates');
    expect(drawingsOf(toPrint).map(({ id }) => id)).not.toContain('rocker');
    const set = setOf(plan, { only: ['templates'] });
    expect(set.pages.map(({ kind }) => kind)).toEqual(['tiled']);
  });

  it('of a board that differs from side to side has both halves', () => {
    const { right } = spec;
    const left = { ...right, points: right.points.map(({ x, half }) => ({ x, half: half - 5 })) };
    const uneven = { ...plan, job: { ...plan.job, board: { ...spec, left } } };
    expect(templateSheets(uneven).map(({ id }) => id)).toEqual([
      'outline-right',
      'outline-left',
      'rocker',
      'gauges-right',
      'gauges-left',
    ]);
  });
});
